/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bb-field.h"

G_BEGIN_DECLS

/* The text of every statement on a record follows from its field table. */

/**
 * BbColumns:
 * @BB_COLUMNS_ALL: every field that is a column
 * @BB_COLUMNS_SAVED: those that saving a record again writes: not the key, nor what only a step of its own changes
 * @BB_COLUMNS_STEPS: those that only a step of their own changes, like when the record was withdrawn
 *
 * Which columns of a table.
 */
typedef enum {
  BB_COLUMNS_ALL = 1,
  BB_COLUMNS_SAVED,
  BB_COLUMNS_STEPS,
} BbColumns;

gboolean bb_field_is_column  (const BbField *self,
                              BbColumns      scope);
char    *bb_sql_columns      (const BbTable *table);
char    *bb_sql_select       (const BbTable *table,
                              const char    *rest);
char    *bb_sql_insert       (const BbTable *table);
char    *bb_sql_update       (const BbTable *table,
                              BbColumns      scope);
char    *bb_sql_list_select  (const BbTable *table,
                              const BbField *list);
char    *bb_sql_list_insert  (const BbTable *table,
                              const BbField *list);
char    *bb_sql_list_delete  (const BbTable *table,
                              const BbField *list);

G_END_DECLS
