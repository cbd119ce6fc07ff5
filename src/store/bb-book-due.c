/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-store"

#include "bb-book-private.h"

/**
 * bb_book_find_open_tests:
 * @self: a book
 * @error: return location for a #GError
 *
 * Finds the specimens that may have to be read again: all in use that have not come to their end, and did not fail so
 * that it counts. Among them can be some that failed by another method than their revision asks for: only a verdict
 * tells those.
 *
 * Returns: (transfer full) (nullable) (element-type gint64): their keys, in the order in which they were added; %NULL
 *   with an error
 */
GArray *
bb_book_find_open_tests (BbBook  *self,
                         GError **error)
{
  g_autoptr (BbStatement) statement = NULL;

  g_return_val_if_fail (BB_BOOK_IS_USABLE (self), NULL);

  statement = bb_db_prepare (self->db,
                             "SELECT t.id FROM wash_test t WHERE t.withdrawn_at IS NULL "
                             "AND NOT EXISTS (SELECT 1 FROM ending_reading e WHERE e.wash_test = t.id) "
                             "AND NOT EXISTS (SELECT 1 FROM failed_reading f WHERE f.wash_test = t.id) "
                             "ORDER BY t.id", error);

  return statement != NULL ? _bb_statement_collect_keys (statement, error) : NULL;
}
