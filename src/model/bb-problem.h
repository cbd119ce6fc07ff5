/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bb-field.h"
#include "bb-text.h"

G_BEGIN_DECLS

/**
 * BbProblemKind:
 *
 * What can be wrong with one value.
 */
typedef enum {
  BB_PROBLEM_NONE = 0,
  BB_PROBLEM_MISSING,
  BB_PROBLEM_NOT_FINITE,
  BB_PROBLEM_BELOW,
  BB_PROBLEM_ABOVE,
  BB_PROBLEM_TOO_FEW,
  BB_PROBLEM_TOO_MANY,
  BB_PROBLEM_TOO_LONG,
  BB_PROBLEM_TOO_SHORT,
  BB_PROBLEM_BAD_TEXT,
  BB_PROBLEM_BAD_DATE,
  BB_PROBLEM_BAD_CHOICE,
} BbProblemKind;

/**
 * BbProblem:
 * @field: the field that is wrong
 * @kind: what is wrong with it
 * @value: the number that was given, or how many items or characters
 * @index: which item of a list of numbers or texts, or -1
 *
 * One value that a record may not hold.
 */
typedef struct {
  const BbField *field;
  BbProblemKind kind;
  double value;
  int index;
} BbProblem;

gboolean bb_field_find_problem  (const BbField       *self,
                                 gconstpointer        record,
                                 BbProblem           *problem);
char    *bb_problem_to_key_text (const BbProblem     *self);
char    *bb_problem_to_text     (const BbProblem     *self,
                                 const BbUnitContext *context);
gboolean bb_record_validate     (const BbTable       *table,
                                 gconstpointer        record,
                                 GError             **error);
gboolean bb_field_is_wanting    (const BbField       *self,
                                 gconstpointer        record);
gboolean bb_record_check_wanted (const BbTable       *table,
                                 gconstpointer        record,
                                 GError             **error);

/* What is said of a field, by the checks and by the book. */
const char *bb_fault_split      (const char          *message,
                                 char               **path);
char    *bb_fault_to_text       (const BbTable       *table,
                                 const char          *message);

G_END_DECLS
