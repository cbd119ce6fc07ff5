/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-store"

#include "bb-book-private.h"

#include "bb-equipment.h"

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

static int
compare_due (gconstpointer a,
             gconstpointer b,
             gpointer      today)
{
  return bb_equipment_compare_due (*(const BbEquipment *const *) a, *(const BbEquipment *const *) b, today);
}

/**
 * bb_book_find_machines:
 * @self: a book
 * @today: a day as `YYYY-MM-DD`
 * @error: return location for a #GError
 *
 * Finds the machines in use, those that have to be calibrated first: see bb_equipment_compare_due().
 *
 * Returns: (transfer full) (nullable) (element-type gint64): their keys, of machines that are not due the newest
 *   first; %NULL with an error
 */
GArray *
bb_book_find_machines (BbBook      *self,
                       const char  *today,
                       GError     **error)
{
  g_autoptr (GArray) ids = NULL;
  g_autoptr (GPtrArray) machines = NULL;
  g_autofree char *day = g_strdup (today);

  g_return_val_if_fail (BB_BOOK_IS_USABLE (self) && today != NULL, NULL);

  ids = bb_book_search (self, &bb_equipment_table, &(BbQuery) { .text = NULL }, error);
  if (ids != NULL)
    machines = bb_book_load_lines (self, &bb_equipment_table, (const gint64 *) (gpointer) ids->data, ids->len, error);
  if (machines == NULL)
    return NULL;

  /* The sort is stable. */
  g_ptr_array_sort_with_data (machines, compare_due, day);
  g_array_set_size (ids, 0);
  for (guint i = 0; i < machines->len; i++)
    g_array_append_val (ids, ((const BbEquipment *) machines->pdata[i])->id);

  return g_steal_pointer (&ids);
}
