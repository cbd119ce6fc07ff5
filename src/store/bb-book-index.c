/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-store"

#include "bb-book-index.h"

#include "bb-book-private.h"

/* Keeping the search: which recipes a write touches, and their words, written once before the transaction ends. */

/**
 * bb_book_index_select:
 *
 * Returns: (transfer none): a statement that gives the key and the words of every recipe that can be found, in the
 *   order of the search's columns
 */
const char *
bb_book_index_select (void)
{
  return BB_SQL_INDEX "WHERE r.withdrawn_at IS NULL";
}

/* Which recipes are found by other words once a record of the table is written; ?1 is its key, ?2 what it refers to. */
static const char *
find_recipes_sql (const BbTable *table)
{
  if (table == &bb_blank_table)
    return "SELECT id FROM recipe WHERE blank = ?1 "
           "UNION SELECT r.id FROM recipe r JOIN colourway c ON c.id = r.colourway WHERE c.blank = ?1";
  if (table == &bb_colourway_table)
    return "SELECT id FROM recipe WHERE colourway = ?1 OR blank = ?2 "
           "OR blank = (SELECT blank FROM colourway WHERE id = ?1)";

  return NULL;
}

static void
mark (BbBook *self,
      gint64  recipe)
{
  g_hash_table_add (self->stale, g_memdup2 (&recipe, sizeof recipe));
}

/**
 * _bb_book_mark_stale:
 * @self: a book, within a transaction
 * @table: a table of the book
 * @record: a record of it that is, or was just, written
 * @error: return location for a #GError
 *
 * Notes which recipes are found by other words once this record is written.
 *
 * Returns: %FALSE with an error
 */
gboolean
_bb_book_mark_stale (BbBook         *self,
                     const BbTable  *table,
                     gconstpointer   record,
                     GError        **error)
{
  const char *sql = find_recipes_sql (table);
  g_autoptr (BbStatement) statement = NULL;
  BbStep step = BB_STEP_ROW;

  if (table == &bb_revision_table)
    mark (self, ((const BbRevision *) record)->recipe);
  else if (table == &bb_recipe_table && ((const BbRecipe *) record)->id != BB_INTEGER_NONE)
    mark (self, ((const BbRecipe *) record)->id);
  if (sql == NULL)
    return TRUE;

  statement = bb_db_prepare (self->db, sql, error);
  if (statement == NULL)
    return FALSE;

  bb_statement_bind_integer (statement, 1, bb_field_get_integer (bb_table_find_field (table, "id"), record));
  if (table == &bb_colourway_table)
    bb_statement_bind_integer (statement, 2, ((const BbColourway *) record)->blank);
  while ((step = bb_statement_step (statement, error)) == BB_STEP_ROW)
    mark (self, bb_statement_get_integer (statement, 0));

  return step == BB_STEP_DONE;
}

static gboolean
run_for (BbDb        *db,
         const char  *sql,
         gint64       recipe,
         GError     **error)
{
  g_autoptr (BbStatement) statement = bb_db_prepare (db, sql, error);

  if (statement == NULL)
    return FALSE;
  bb_statement_bind_integer (statement, 1, recipe);

  return bb_statement_run (statement, error);
}

/**
 * _bb_book_write_search:
 * @self: a book, within a transaction
 * @error: return location for a #GError
 *
 * Writes the words of the recipes that were noted by _bb_book_mark_stale().
 *
 * Returns: %FALSE with an error
 */
gboolean
_bb_book_write_search (BbBook  *self,
                       GError **error)
{
  GHashTableIter iter;
  gpointer key = NULL;

  g_hash_table_iter_init (&iter, self->stale);
  while (g_hash_table_iter_next (&iter, &key, NULL))
    {
      gint64 recipe = *(const gint64 *) key;

      if (!run_for (self->db, "DELETE FROM search WHERE rowid = ?1", recipe, error) ||
          !run_for (self->db,
                    "INSERT INTO search (rowid, code, name, family, blank, colourway, note) "
                    BB_SQL_INDEX "WHERE r.id = ?1 AND r.withdrawn_at IS NULL", recipe, error))
        return FALSE;
    }

  return TRUE;
}
