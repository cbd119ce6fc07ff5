/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-store"

#include "bb-trace.h"

#include "bb-book-private.h"

/* By what the runs are found that a record had a part in; ?1 is its key. */
static const struct {
  const BbTable *table;
  const char *condition;
} traces[] = {
  { &bb_lot_table, "r.id IN (SELECT run FROM lot_entry WHERE lot = ?1)" },
  { &bb_supply_table, "r.id IN (SELECT e.run FROM lot_entry e JOIN lot l ON l.id = e.lot WHERE l.supply = ?1)" },
  { &bb_revision_table, "r.revision = ?1" },
  { &bb_recipe_table, "r.revision IN (SELECT id FROM revision WHERE recipe = ?1)" },
  { &bb_equipment_table, "(r.sprayer = ?1 OR r.dryer = ?1 OR r.printer = ?1 OR r.curer = ?1)" },
  { &bb_person_table, "r.person = ?1" },
  { &bb_job_line_table, "r.line = ?1" },
  { &bb_job_table, "r.line IN (SELECT id FROM job_line WHERE job = ?1)" },
  { &bb_customer_table,
    "r.line IN (SELECT l.id FROM job_line l JOIN job j ON j.id = l.job WHERE j.customer = ?1)" },
  { &bb_colourway_table, "r.line IN (SELECT id FROM job_line WHERE colourway = ?1)" },
  { &bb_blank_table,
    "r.line IN (SELECT l.id FROM job_line l JOIN colourway c ON c.id = l.colourway WHERE c.blank = ?1)" },
  { &bb_run_table, "r.id = ?1" },
};

static const char *
find_condition (const BbTable *table)
{
  for (guint i = 0; i < G_N_ELEMENTS (traces); i++)
    if (traces[i].table == table)
      return traces[i].condition;

  return NULL;
}

/**
 * bb_book_is_traced:
 * @table: a table of the book
 *
 * Returns: whether its records can have a part in runs, so that bb_book_trace_runs() finds them
 */
gboolean
bb_book_is_traced (const BbTable *table)
{
  return find_condition (table) != NULL;
}

/**
 * bb_book_trace_runs:
 * @self: a book
 * @table: the table of what had a part in runs: of lots, supplies, recipes, revisions, machines, people, jobs, lines,
 *   customers, blanks, colourways, or of runs
 * @id: its key
 * @error: return location for a #GError
 *
 * Finds the runs that something had a part in. bb_book_load_lines() with the table of runs tells of each for whom it
 * was, on what, by what and from what.
 *
 * Returns: (transfer full) (nullable) (element-type gint64): the keys of the runs, the newest first; %NULL with an
 *   error
 */
GArray *
bb_book_trace_runs (BbBook         *self,
                    const BbTable  *table,
                    gint64          id,
                    GError        **error)
{
  const char *condition = find_condition (table);
  g_autofree char *sql = NULL;
  g_autoptr (BbStatement) statement = NULL;

  g_return_val_if_fail (BB_BOOK_IS_USABLE (self) && condition != NULL, NULL);

  sql = g_strdup_printf ("SELECT r.id FROM run r WHERE %s ORDER BY r.started_at DESC, r.id DESC", condition);
  statement = bb_db_prepare (self->db, sql, error);
  if (statement == NULL)
    return NULL;
  bb_statement_bind_integer (statement, 1, id);

  return _bb_statement_collect_keys (statement, error);
}

/**
 * bb_book_list_runs:
 * @self: a book
 * @limit: how many at most; 0 for all
 * @error: return location for a #GError
 *
 * Returns: (transfer full) (nullable) (element-type gint64): the keys of the runs, the last that was entered first;
 *   %NULL with an error
 */
GArray *
bb_book_list_runs (BbBook  *self,
                   guint    limit,
                   GError **error)
{
  g_autoptr (BbStatement) statement = NULL;

  g_return_val_if_fail (BB_BOOK_IS_USABLE (self), NULL);

  statement = bb_db_prepare (self->db, "SELECT id FROM run ORDER BY id DESC LIMIT ?1", error);
  if (statement == NULL)
    return NULL;
  bb_statement_bind_integer (statement, 1, limit > 0 ? limit : G_MAXINT64);

  return _bb_statement_collect_keys (statement, error);
}

/**
 * bb_book_list_run_lots:
 * @self: a book
 * @run: the key of a run
 * @error: return location for a #GError
 *
 * Returns: (transfer full) (nullable) (element-type gint64): the keys of the lots that had a part in it, each once;
 *   %NULL with an error
 */
GArray *
bb_book_list_run_lots (BbBook  *self,
                       gint64   run,
                       GError **error)
{
  g_autoptr (BbStatement) statement = NULL;

  g_return_val_if_fail (BB_BOOK_IS_USABLE (self), NULL);

  statement = bb_db_prepare (self->db, "SELECT DISTINCT lot FROM lot_entry WHERE run = ?1 ORDER BY lot", error);
  if (statement == NULL)
    return NULL;
  bb_statement_bind_integer (statement, 1, run);

  return _bb_statement_collect_keys (statement, error);
}
