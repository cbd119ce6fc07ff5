/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>
#include <math.h>
#include <stddef.h>

#include "bb-choices.h"
#include "bb-quantity.h"

G_BEGIN_DECLS

/**
 * BbKind:
 * @BB_KIND_NUMBER: `double`; NaN where there is none
 * @BB_KIND_INTEGER: `gint64`; %BB_INTEGER_NONE where there is none
 * @BB_KIND_TEXT: owned `char *`; %NULL where there is none
 * @BB_KIND_CHOICE: `int`, an index into the field's choices; %BB_CHOICE_NONE where there is none
 * @BB_KIND_DATE: owned `char *`, ISO 8601 `YYYY-MM-DD` or `YYYY-MM-DDThh:mm:ssZ`; %NULL where there is none
 * @BB_KIND_FLAG: `int`, 0 or 1; %BB_FLAG_NONE where there is none
 * @BB_KIND_REFERENCE: `gint64`, the key of a record of table @target; 0 where there is none
 * @BB_KIND_LIST: `GArray *` of structs of table @item; %NULL where there is none
 * @BB_KIND_NUMBERS: `GArray *` of `double`; %NULL where there is none
 * @BB_KIND_TEXTS: `GStrv`; %NULL where there is none
 * @BB_KIND_OBJECT: owned pointer to one struct of table @item; %NULL where there is none
 *
 * What a field holds, and the C type that holds it.
 */
typedef enum {
  BB_KIND_NUMBER = 1,
  BB_KIND_INTEGER,
  BB_KIND_TEXT,
  BB_KIND_CHOICE,
  BB_KIND_DATE,
  BB_KIND_FLAG,
  BB_KIND_REFERENCE,
  BB_KIND_LIST,
  BB_KIND_NUMBERS,
  BB_KIND_TEXTS,
  BB_KIND_OBJECT,
} BbKind;

#define BB_INTEGER_NONE G_MININT64
#define BB_FLAG_NONE (-1)

/* The C type of each kind, used by BB_MEMBER. */
#define BB_CTYPE_NUMBER double
#define BB_CTYPE_INTEGER gint64
#define BB_CTYPE_TEXT char *
#define BB_CTYPE_CHOICE int
#define BB_CTYPE_DATE char *
#define BB_CTYPE_FLAG int
#define BB_CTYPE_REFERENCE gint64
#define BB_CTYPE_LIST GArray *
#define BB_CTYPE_NUMBERS GArray *
#define BB_CTYPE_TEXTS GStrv
#define BB_CTYPE_OBJECT gpointer

typedef struct _BbTable BbTable;
typedef struct _BbField BbField;

/**
 * BbLimits:
 *
 * What a value may be: minimum ≤ value ≤ maximum, or strictly beyond where @open_minimum or
 * @open_maximum. Written with BB_BETWEEN, BB_ABOVE, BB_AT_LEAST, BB_ABOVE_TO; a field without them has no limits.
 * For a text the limits are of its length in characters.
 */
typedef struct {
  gboolean set;
  double minimum;
  double maximum;
  gboolean open_minimum;
  gboolean open_maximum;
} BbLimits;

#define BB_BETWEEN(low, high) { .set = TRUE, .minimum = (low), .maximum = (high) }
#define BB_ABOVE_TO(low, high) { .set = TRUE, .minimum = (low), .maximum = (high), .open_minimum = TRUE }
#define BB_FROM_BELOW(low, high) { .set = TRUE, .minimum = (low), .maximum = (high), .open_maximum = TRUE }
#define BB_INSIDE(low, high) \
  { .set = TRUE, .minimum = (low), .maximum = (high), .open_minimum = TRUE, .open_maximum = TRUE }

/**
 * BbDefault:
 *
 * What an optional field holds when nothing is given: a number, an integer, the index of a choice or a flag.
 */
typedef struct {
  gboolean set;
  double value;
} BbDefault;

#define BB_DEFAULT(number) { .set = TRUE, .value = (number) }

/**
 * BbStation:
 *
 * The place of a field in a recipe's chain, in the order of the chain; %BB_STATION_NONE for fields of no station.
 */
typedef enum {
  BB_STATION_NONE = 0,
  BB_STATION_PRETREAT,
  BB_STATION_DRY,
  BB_STATION_PRINT,
  BB_STATION_CURE,
  BB_STATION_PROOF,
  BB_N_STATIONS
} BbStation;

/**
 * BbSettled:
 * @BB_SETTLED_NEVER: the value can be changed at any time
 * @BB_SETTLED_BY_USE: it stays once something was done by the record
 * @BB_SETTLED_BY_METHOD: it also stays where a published method says it
 *
 * When a value is settled, so that what rests on it stays true.
 */
typedef enum {
  BB_SETTLED_NEVER = 0,
  BB_SETTLED_BY_USE,
  BB_SETTLED_BY_METHOD,
} BbSettled;

/**
 * BbField:
 * @name: the key in C, SQL, JSON, CSV and on the command line; carries the unit
 * @title: what a person reads, marked for translation
 * @help: one sentence that says what to enter and why, marked for translation
 * @kind: what it holds
 * @quantity: what a number measures
 * @offset: where it stands in the record's struct
 * @limits: what it may be; of a list of numbers, what each may be
 * @count: how many items a list may have
 * @fallback: what it is when not given
 * @choices: the words of a choice
 * @target: the table that a reference points to
 * @among: of a reference, the `kind` that the target must be of
 * @item: the table of a list's or object's structs
 * @required: %TRUE if it must be given
 * @wanted: (nullable): why a person who writes a new record has to give it, marked for translation; a record that comes
 *   from elsewhere may lack it
 * @derived: %TRUE if the program sets it: it is stored and exported, but no form asks for it
 * @stepwise: %TRUE if only a step of its own changes it, like withdrawing: saving the record again does not
 * @owner: %TRUE of a reference if the record is a part of what it refers to, and nothing without it
 * @unsealed: %TRUE if it is no part of the record's canonical text
 * @multiline: %TRUE for a text of several lines
 * @beside: %TRUE if a form leaves it to what stands beside the form
 * @names: (nullable): of a text that is the name of a setting, the table whose field it names
 * @colour: %TRUE for a text that is an sRGB colour, `#rrggbb`
 * @quick: %TRUE of a choice, or an integer of few values, that is entered at the bench in a hurry: a form shows its
 *   values beside each other, one key each
 * @absent_is_null: %TRUE for a list of an output that is written as `null`, not `[]`, where it was not determined
 * @settled: when it can't be changed any more
 * @of_standard: %TRUE if only a published method says it: the shop's own has no need of it
 * @parts_with: the field that is entered together with this one as `a : b`
 * @station: its place in a recipe's chain
 * @group: (nullable): heading under which a form shows it, with others that have the same, marked for translation
 *
 * The one description of a field, from which validation, SQL, JSON, CSV, forms, the command line and the docs follow.
 */
struct _BbField {
  const char *name;
  const char *title;
  const char *help;
  BbKind kind;
  BbQuantity quantity;
  gsize offset;
  BbLimits limits;
  BbLimits count;
  BbDefault fallback;
  const BbChoices *choices;
  const BbTable *target;
  BbDefault among;
  const BbTable *item;
  const BbTable *names;
  gboolean required;
  const char *wanted;
  gboolean derived;
  gboolean stepwise;
  gboolean owner;
  gboolean unsealed;
  gboolean multiline;
  gboolean beside;
  gboolean colour;
  gboolean quick;
  gboolean absent_is_null;
  BbSettled settled;
  gboolean of_standard;
  const char *parts_with;
  BbStation station;
  const char *group;
};

/**
 * BbTable:
 * @name: the table's name in SQL and in files
 * @title: what a person calls one such record, marked for translation
 * @size: size of the record's struct
 * @fields: the fields, in the order in which they are shown
 * @n_fields: how many
 * @check: (nullable): rules that hold between fields; its message names the field
 * @check_written: (nullable): what is asked besides of whoever writes a record, while one that is stored or comes
 *   from elsewhere need not hold to it; its message names the field
 * @free_record: frees one record of the table, for containers
 *
 * A record's struct, described.
 */
struct _BbTable {
  const char *name;
  const char *title;
  gsize size;
  const BbField *fields;
  guint n_fields;
  gboolean (*check) (gconstpointer record,
                     GError      **error);
  gboolean (*check_written) (gconstpointer record,
                             GError      **error);
  GDestroyNotify free_record;
};

/*
 * A record's fields are listed once, as a macro
 *
 *     #define BB_THING_FIELDS(F, T) \
 *       F (T, KIND, name, N_("Title"), .help = N_("…"), .required = TRUE)
 *
 * BB_DECLARE_TABLE makes the struct `BbThing`, its table's declaration and its `_new` and `_free`;
 * BB_DEFINE_TABLE the table itself, or BB_DEFINE_TABLE_WRITTEN where more is asked of whoever writes such a record.
 */
#define BB_MEMBER(T, KIND, name, ...) BB_CTYPE_##KIND name;
#define BB_FIELD_ENTRY(T, KIND, name_, title_, ...) \
  { .name = #name_, .title = title_, .kind = BB_KIND_##KIND, .offset = offsetof (T, name_), __VA_ARGS__ },

#define BB_DECLARE_TABLE(Type, prefix, LIST) \
  typedef struct { LIST (BB_MEMBER, Type) } Type; \
  void prefix##_free (Type *self); \
  G_DEFINE_AUTOPTR_CLEANUP_FUNC (Type, prefix##_free) \
  Type *prefix##_new (void); \
  extern const BbTable prefix##_table

#define BB_DEFINE_TABLE(Type, prefix, name_, title_, LIST, check_) \
  BB_DEFINE_TABLE_WRITTEN (Type, prefix, name_, title_, LIST, check_, NULL)

#define BB_DEFINE_TABLE_WRITTEN(Type, prefix, name_, title_, LIST, check_, check_written_) \
  static const BbField prefix##_fields[] = { LIST (BB_FIELD_ENTRY, Type) }; \
  const BbTable prefix##_table = { \
    .name = name_, .title = title_, .size = sizeof (Type), .fields = prefix##_fields, \
    .n_fields = G_N_ELEMENTS (prefix##_fields), .check = check_, .check_written = check_written_, \
    .free_record = (GDestroyNotify) prefix##_free, \
  }; \
  Type * \
  prefix##_new (void) \
  { \
    return bb_record_new (&prefix##_table); \
  } \
  void \
  prefix##_free (Type *self) \
  { \
    bb_record_free (&prefix##_table, self); \
  }

/* Fields: reading and writing one value of a record. */

#define BB_FIELD_AT(self, Type, record) (*(Type *) ((char *) (record) + (self)->offset))
#define BB_FIELD_IN(self, Type, record) (*(Type const *) ((const char *) (record) + (self)->offset))

gboolean    bb_field_is_set         (const BbField *self,
                                     gconstpointer  record);
gboolean    bb_field_equal          (const BbField *self,
                                     gconstpointer  record_a,
                                     gconstpointer  record_b);
void        bb_field_clear          (const BbField *self,
                                     gpointer       record);
void        bb_field_reset          (const BbField *self,
                                     gpointer       record);
void        bb_field_copy           (const BbField *self,
                                     gconstpointer  from,
                                     gpointer       to);
double      bb_field_get_number     (const BbField *self,
                                     gconstpointer  record);
gint64      bb_field_get_integer    (const BbField *self,
                                     gconstpointer  record);
const char *bb_field_get_text       (const BbField *self,
                                     gconstpointer  record);
int         bb_field_get_choice     (const BbField *self,
                                     gconstpointer  record);
GArray     *bb_field_get_array      (const BbField *self,
                                     gconstpointer  record);
void        bb_field_set_number     (const BbField *self,
                                     gpointer       record,
                                     double         value);
void        bb_field_set_integer    (const BbField *self,
                                     gpointer       record,
                                     gint64         value);
void        bb_field_set_text       (const BbField *self,
                                     gpointer       record,
                                     const char    *value);
void        bb_field_set_choice     (const BbField *self,
                                     gpointer       record,
                                     int            value);
GArray     *bb_field_ensure_array   (const BbField *self,
                                     gpointer       record);
gpointer    bb_field_append_item    (const BbField *self,
                                     gpointer       record);

/* Records: whole structs. */

const BbField *bb_table_find_field  (const BbTable *self,
                                     const char    *name);
gboolean    bb_table_is_second_part (const BbTable *self,
                                     const BbField *field);
const BbField *bb_table_find_owner  (const BbTable *self);
gint64      bb_record_get_key       (const BbTable *table,
                                     gconstpointer  record);
gboolean    bb_record_is_withdrawn  (const BbTable *table,
                                     gconstpointer  record);
char       *bb_part_make_code       (const char    *owner,
                                     gint64         number);
const char *bb_station_get_title    (BbStation      station);
gpointer    bb_record_new           (const BbTable *table);
void        bb_record_free          (const BbTable *table,
                                     gpointer       record);
gpointer    bb_record_copy          (const BbTable *table,
                                     gconstpointer  record);
gboolean    bb_record_equal         (const BbTable *table,
                                     gconstpointer  record_a,
                                     gconstpointer  record_b);
void        bb_records_sort         (const BbTable *table,
                                     const char    *name,
                                     GPtrArray     *records);
void        bb_record_init          (const BbTable *table,
                                     gpointer       record);
void        bb_record_clear         (const BbTable *table,
                                     gpointer       record);

G_END_DECLS
