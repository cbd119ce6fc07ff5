/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-exchange"

#include "bb-history.h"

#include <string.h>

#include "bb-json.h"

/**
 * bb_history_dup_record:
 * @table: the table of a record that refers to no other
 * @text: (nullable): the record as an event of the book has it in #BbEvent's `detail`
 *
 * Returns: (transfer full) (nullable): the record as it was written then; %NULL where the event has none, or one that
 *   an older program wrote and this one can't read
 */
gpointer
bb_history_dup_record (const BbTable *table,
                       const char    *text)
{
  const BbJsonReading reading = { .null_is_none = TRUE };
  g_autoptr (JsonNode) node = text != NULL ? bb_json_parse (text, strlen (text), NULL) : NULL;
  gpointer record = NULL;

  g_return_val_if_fail (table != NULL, NULL);

  if (node == NULL)
    return NULL;

  record = bb_record_new (table);
  if (bb_json_read_record (table, node, &reading, record, NULL))
    return record;
  bb_record_free (table, record);

  return NULL;
}
