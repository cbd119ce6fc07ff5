/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-remark"

#include "bb-remark.h"

#include "bb-wash-evidence.h"

/**
 * bb_remark_dup:
 * @table: a table
 * @record: a record of it, which may be half typed
 *
 * Returns: (transfer full) (nullable): what a person should look at again before they save the record, although it may
 *   be saved; %NULL for nothing
 */
char *
bb_remark_dup (const BbTable *table,
               gconstpointer  record)
{
  g_return_val_if_fail (table != NULL && record != NULL, NULL);

  return table == &bb_reading_table ? bb_reading_describe_dispute (record) : NULL;
}
