/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-store"

#include "bb-recall.h"

#include "bb-book-private.h"

static gboolean
query_revision (BbBook      *self,
                const char  *sql,
                gint64       customer,
                gint64       colourway,
                gint64      *revision,
                gint64      *run,
                GError     **error)
{
  g_autoptr (BbStatement) statement = bb_db_prepare (self->db, sql, error);
  BbStep step = BB_STEP_ERROR;

  if (statement == NULL)
    return FALSE;

  bb_statement_bind_integer (statement, 1, colourway);
  if (customer != 0)
    bb_statement_bind_integer (statement, 2, customer);
  step = bb_statement_step (statement, error);
  if (step == BB_STEP_ROW)
    {
      *revision = bb_statement_get_integer (statement, 0);
      *run = bb_statement_get_integer (statement, 1);
    }

  return step != BB_STEP_ERROR;
}

/**
 * bb_book_find_last_revision:
 * @self: a book
 * @customer: the key of a customer, or 0 for anybody
 * @colourway: the key of a garment in a colour
 * @run: (out) (optional): the key of the run that it was printed in; 0 where it never was
 * @error: return location for a #GError
 *
 * Finds by which proven revision this garment was last printed for a customer. Where it never was, that by which it
 * was last printed for anybody; and where that never was, the newest proven revision of a recipe for this garment in
 * this colour, or in no one colour.
 *
 * Returns: the revision's key, 0 where there is none, and -1 with an error
 */
gint64
bb_book_find_last_revision (BbBook  *self,
                            gint64   customer,
                            gint64   colourway,
                            gint64  *run,
                            GError **error)
{
  gint64 revision = 0;
  gint64 found_in = 0;

  g_return_val_if_fail (BB_BOOK_IS_USABLE (self), -1);

  if (customer != 0 &&
      !query_revision (self, "SELECT l.revision, l.run FROM last_run l JOIN standing s ON s.revision = l.revision "
                       "WHERE l.customer = ?2 AND l.colourway = ?1 AND s.state = 'proven' ORDER BY l.run DESC LIMIT 1",
                       customer, colourway, &revision, &found_in, error))
    return -1;
  if (revision == 0 &&
      !query_revision (self, "SELECT l.revision, l.run FROM last_run l JOIN standing s ON s.revision = l.revision "
                       "WHERE l.colourway = ?1 AND s.state = 'proven' ORDER BY l.run DESC LIMIT 1", 0, colourway,
                       &revision, &found_in, error))
    return -1;
  if (revision == 0 &&
      !query_revision (self, "SELECT v.id, 0 FROM recipe r JOIN revision v ON v.recipe = r.id "
                       "JOIN standing s ON s.revision = v.id WHERE s.state = 'proven' AND r.withdrawn_at IS NULL "
                       "AND (r.colourway = ?1 OR (r.colourway IS NULL AND r.blank = "
                       "(SELECT blank FROM colourway WHERE id = ?1))) "
                       "ORDER BY r.colourway IS NULL, v.id DESC LIMIT 1", 0, colourway, &revision, &found_in, error))
    return -1;

  if (run != NULL)
    *run = found_in;

  return revision;
}
