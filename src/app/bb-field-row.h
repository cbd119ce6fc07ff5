/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <adwaita.h>

#include "bb-problem.h"
#include "bb-session.h"

G_BEGIN_DECLS

/**
 * BbFieldRow:
 *
 * One field of a form: its title, an editor, its unit, and below them a line that shows the help and the limits
 * while the keyboard is in the row, or what is wrong with the value. Subclasses bring the editor.
 */
#define BB_TYPE_FIELD_ROW (bb_field_row_get_type ())
G_DECLARE_DERIVABLE_TYPE (BbFieldRow, bb_field_row, BB, FIELD_ROW, AdwPreferencesRow)

/**
 * BbFieldRowClass:
 * @build: makes the editor and hands it to the row
 * @load: shows a record's value in the editor
 * @store: writes the editor's value into a record; a text that can't be read gives a sentence in @message
 * @dup_state: what is typed, as a text that @set_state can bring back
 * @set_state: shows what was typed earlier, when numbers without a unit were understood in @system
 * @refresh: shows numbers in the units that hold now
 * @judge: for a row that has rows of its own: says at each what is wrong with its value; without it, it has none
 * @find_nested: for the same: the row at the end of a path, like `[0].wet_g`
 * @find_faulty: for the same: the first that says something is wrong
 */
struct _BbFieldRowClass
{
  AdwPreferencesRowClass parent_class;

  void     (*build)     (BbFieldRow    *self);
  void     (*load)      (BbFieldRow    *self,
                         gconstpointer  record);
  gboolean (*store)     (BbFieldRow    *self,
                         gpointer       record,
                         char         **message);
  char    *(*dup_state) (BbFieldRow    *self);
  void     (*set_state) (BbFieldRow    *self,
                         const char    *state,
                         BbUnitSystem   system);
  void     (*refresh)   (BbFieldRow    *self);

  gboolean    (*judge)       (BbFieldRow *self,
                              gboolean    even_if_untouched);
  BbFieldRow *(*find_nested) (BbFieldRow *self,
                              const char *path);
  BbFieldRow *(*find_faulty) (BbFieldRow *self);
};

BbFieldRow    *bb_field_row_new          (BbSession     *session,
                                          const BbTable *table,
                                          const BbField *field);
const BbField *bb_field_row_get_field    (BbFieldRow    *self);
const BbTable *bb_field_row_get_table    (BbFieldRow    *self);
BbSession     *bb_field_row_get_session  (BbFieldRow    *self);
void           bb_field_row_load         (BbFieldRow    *self,
                                          gconstpointer  record);
gboolean       bb_field_row_store        (BbFieldRow    *self,
                                          gpointer       record,
                                          char         **message);
char          *bb_field_row_dup_state    (BbFieldRow    *self);
void           bb_field_row_set_state    (BbFieldRow    *self,
                                          const char    *state,
                                          BbUnitSystem   system);
void           bb_field_row_refresh      (BbFieldRow    *self);
void           bb_field_row_set_message  (BbFieldRow    *self,
                                          const char    *message);
void           bb_field_row_set_advice   (BbFieldRow    *self,
                                          const char    *advice);
gboolean       bb_field_row_is_faulty    (BbFieldRow    *self);
gboolean       bb_field_row_is_touched   (BbFieldRow    *self);
void           bb_field_row_set_touched  (BbFieldRow    *self,
                                          gboolean       touched);

/* Rows within a row. */
gboolean       bb_field_row_judge_nested (BbFieldRow    *self,
                                          gboolean       even_if_untouched);
BbFieldRow    *bb_field_row_find_nested  (BbFieldRow    *self,
                                          const char    *path);
BbFieldRow    *bb_field_row_find_faulty  (BbFieldRow    *self);

/* For subclasses. */
void           bb_field_row_edited       (BbFieldRow    *self);

/* bb-field-row-look.c */
gboolean       bb_field_row_focus        (BbFieldRow    *self);
void           bb_field_row_align        (BbFieldRow    *self,
                                          GtkSizeGroup  *controls);
void           bb_field_row_set_compact  (BbFieldRow    *self,
                                          GtkBox        *hints);
void           bb_field_row_set_stacked  (BbFieldRow    *self);

/* bb-field-row-look.c, for subclasses. */
void           bb_field_row_set_editor   (BbFieldRow    *self,
                                          GtkWidget     *editor,
                                          GtkWidget     *focus);
void           bb_field_row_set_below    (BbFieldRow    *self,
                                          GtkWidget     *editor,
                                          GtkWidget     *focus);
void           bb_field_row_set_unit     (BbFieldRow    *self,
                                          const char    *unit);

G_END_DECLS
