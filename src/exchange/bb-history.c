/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-exchange"

#include "bb-history.h"

#include <string.h>

#include "bb-json.h"

/**
 * bb_event_dup_record:
 * @self: an event of a book
 * @table: the table of the record that it is about, which refers to no other
 *
 * Returns: (transfer full) (nullable): the record as it was written then; %NULL where the event has none, or one that
 *   an older program wrote and this one can't read
 */
gpointer
bb_event_dup_record (const BbEvent *self,
                     const BbTable *table)
{
  const BbJsonReading reading = { .null_is_none = TRUE };
  g_autoptr (JsonNode) node = NULL;
  gpointer record = NULL;

  g_return_val_if_fail (self != NULL && table != NULL, NULL);

  if (self->detail != NULL)
    node = bb_json_parse (self->detail, strlen (self->detail), NULL);
  if (node == NULL)
    return NULL;

  record = bb_record_new (table);
  if (bb_json_read_record (table, node, &reading, record, NULL))
    return record;
  bb_record_free (table, record);

  return NULL;
}
