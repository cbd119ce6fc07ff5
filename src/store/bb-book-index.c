/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-store"

#include "bb-book-index.h"

#include "bb-book-private.h"
#include "bb-search-words.h"

/* Keeping the searches: which records a write touches, and their words, written once before the transaction ends. */

/**
 * bb_search_dup_wanted:
 * @self: a search
 *
 * Returns: (transfer full): a statement that gives the key and the words of every record that has to be found
 */
char *
bb_search_dup_wanted (const BbSearch *self)
{
  return g_strconcat (self->words, " WHERE TRUE", NULL);
}

/**
 * bb_search_dup_found:
 * @self: a search
 *
 * Returns: (transfer full): a statement that gives the key and the words of every record that is found
 */
char *
bb_search_dup_found (const BbSearch *self)
{
  return g_strdup_printf ("SELECT rowid, %s FROM %s", self->columns, self->index);
}

/* @rest narrows the records whose words are added. */
static char *
make_insert (const BbSearch *search,
             const char     *rest)
{
  g_autofree char *wanted = bb_search_dup_wanted (search);

  return g_strdup_printf ("INSERT INTO %s (rowid, %s) %s%s", search->index, search->columns, wanted, rest);
}

static gboolean
run_for (BbDb        *db,
         const char  *sql,
         gint64       id,
         GError     **error)
{
  g_autoptr (BbStatement) statement = bb_db_prepare (db, sql, error);

  if (statement == NULL)
    return FALSE;
  bb_statement_bind_integer (statement, 1, id);

  return bb_statement_run (statement, error);
}

/**
 * bb_search_rebuild:
 * @db: a database of the latest version, within a transaction
 * @error: return location for a #GError
 *
 * Writes the words of every record anew.
 *
 * Returns: %FALSE with an error
 */
gboolean
bb_search_rebuild (BbDb    *db,
                   GError **error)
{
  const BbSearch *searches = bb_searches ();

  for (guint i = 0; i < BB_N_SEARCHES; i++)
    {
      g_autofree char *insert = make_insert (&searches[i], "");
      g_autofree char *script = g_strdup_printf ("DELETE FROM %s; %s", searches[i].index, insert);

      if (!bb_db_run_script (db, script, error))
        return FALSE;
    }

  return bb_search_words_rebuild (db, error);
}

static void
mark (BbBook         *self,
      const BbSearch *search,
      gint64          id)
{
  g_hash_table_add (self->stale[search - bb_searches ()], g_memdup2 (&id, sizeof id));
}

static gboolean
mark_touched (BbBook         *self,
              const BbTouch  *touch,
              gint64          id,
              GError        **error)
{
  g_autoptr (BbStatement) statement = bb_db_prepare (self->db, touch->sql, error);
  BbStep step = BB_STEP_ROW;

  if (statement == NULL)
    return FALSE;

  bb_statement_bind_integer (statement, 1, id);
  while ((step = bb_statement_step (statement, error)) == BB_STEP_ROW)
    mark (self, bb_search_find (touch->found), bb_statement_get_integer (statement, 0));

  return step == BB_STEP_DONE;
}

/**
 * _bb_book_mark_stale:
 * @self: a book, within a transaction
 * @table: a table of the book
 * @record: a record of it that is, or was just, written
 * @error: return location for a #GError
 *
 * Notes which records are found by other words once this record is written.
 *
 * Returns: %FALSE with an error
 */
gboolean
_bb_book_mark_stale (BbBook         *self,
                     const BbTable  *table,
                     gconstpointer   record,
                     GError        **error)
{
  const BbField *key = bb_table_find_field (table, "id");
  const BbSearch *own = bb_search_find (table);
  guint n_touches = 0;
  const BbTouch *touches = bb_touches (&n_touches);
  const gint64 id = bb_field_get_integer (key, record);

  /* What is not in the book yet is part of nothing. */
  if (!bb_field_is_set (key, record))
    return TRUE;

  if (own != NULL)
    mark (self, own, id);
  for (guint i = 0; i < n_touches; i++)
    if (touches[i].written == table && !mark_touched (self, &touches[i], id, error))
      return FALSE;

  return TRUE;
}

static gboolean
write_words (BbBook          *self,
             const BbSearch  *search,
             GHashTable      *stale,
             GError         **error)
{
  g_autofree char *delete = g_strdup_printf ("DELETE FROM %s WHERE rowid IN (?1, -?1)", search->index);
  g_autofree char *insert = make_insert (search, " AND r.id = ?1");
  GHashTableIter iter;
  gpointer key = NULL;

  g_hash_table_iter_init (&iter, stale);
  while (g_hash_table_iter_next (&iter, &key, NULL))
    if (!run_for (self->db, delete, *(const gint64 *) key, error) ||
        !run_for (self->db, insert, *(const gint64 *) key, error) ||
        !bb_search_words_note (self->db, self->words, search, *(const gint64 *) key, error))
      return FALSE;

  return TRUE;
}

/**
 * _bb_book_write_search:
 * @self: a book, within a transaction
 * @error: return location for a #GError
 *
 * Writes the words of the records that were noted by _bb_book_mark_stale().
 *
 * Returns: %FALSE with an error
 */
gboolean
_bb_book_write_search (BbBook  *self,
                       GError **error)
{
  const BbSearch *searches = bb_searches ();

  for (guint i = 0; i < BB_N_SEARCHES; i++)
    if (g_hash_table_size (self->stale[i]) > 0 && !write_words (self, &searches[i], self->stale[i], error))
      return FALSE;

  return TRUE;
}
