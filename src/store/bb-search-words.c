/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-store"

#include "bb-search-words.h"

#include "bb-words.h"

/* The words that a mistyped one may stand for: every word by which something was ever found. */

/**
 * bb_search_words_new:
 *
 * Returns: (transfer full): an empty set of words that are known to be in the book
 */
GHashTable *
bb_search_words_new (void)
{
  return g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
}

static gboolean
add_grams (BbDb        *db,
           gint64       word,
           const char  *text,
           GError     **error)
{
  g_autoptr (BbStatement) statement = bb_db_prepare (db, "INSERT INTO search_gram (gram, word) VALUES (?1, ?2)", error);
  g_auto (GStrv) grams = bb_word_grams (text);

  if (statement == NULL)
    return FALSE;

  for (guint i = 0; grams[i] != NULL; i++)
    {
      bb_statement_bind_text (statement, 1, grams[i]);
      bb_statement_bind_integer (statement, 2, word);
      if (!bb_statement_run (statement, error))
        return FALSE;
      bb_statement_rewind (statement);
    }

  return TRUE;
}

static gboolean
add_word (BbDb        *db,
          const char  *word,
          GError     **error)
{
  g_autoptr (BbStatement) statement = bb_db_prepare (db, "INSERT INTO search_word (word) VALUES (?1) "
                                                     "ON CONFLICT (word) DO NOTHING RETURNING id", error);
  gint64 id = 0;

  if (statement == NULL)
    return FALSE;

  bb_statement_bind_text (statement, 1, word);
  switch (bb_statement_step (statement, error))
    {
    case BB_STEP_ROW:
      id = bb_statement_get_integer (statement, 0);
      break;
    case BB_STEP_DONE:
      return TRUE;
    case BB_STEP_ERROR:
    default:
      return FALSE;
    }

  return bb_statement_run (statement, error) && add_grams (db, id, word, error);
}

static gboolean
add_text (BbDb        *db,
          GHashTable  *known,
          const char  *text,
          GError     **error)
{
  g_auto (GStrv) words = bb_words_fold (text);

  for (guint i = 0; words[i] != NULL; i++)
    if (bb_word_tolerance (words[i]) > 0 && !g_hash_table_contains (known, words[i]))
      {
        if (!add_word (db, words[i], error))
          return FALSE;
        g_hash_table_add (known, g_strdup (words[i]));
      }

  return TRUE;
}

/* All columns of a search's row as one text, also of a row that another program left empty. Marks are no words. */
static char *
make_texts_sql (const BbSearch *search,
                const char     *rest)
{
  g_auto (GStrv) columns = g_strsplit (search->columns, ", ", -1);
  g_autofree char *texts = NULL;
  guint last = g_strv_length (columns) - 1;

  if (g_str_equal (columns[last], "marks"))
    g_clear_pointer (&columns[last], g_free);
  texts = g_strjoinv (", '') || ' ' || COALESCE (", columns);

  return g_strdup_printf ("SELECT COALESCE (%s, '') FROM %s%s", texts, search->index, rest);
}

/**
 * bb_search_words_note:
 * @db: a database of the latest version, within a transaction
 * @known: words that are known to be in the book, to which what is added comes
 * @search: a search
 * @id: the key of a record whose words were just written
 * @error: return location for a #GError
 *
 * Notes the words of a record that are new. A word is never forgotten: one by which nothing is found any more leads
 * nowhere, and does no harm.
 *
 * Returns: %FALSE with an error
 */
gboolean
bb_search_words_note (BbDb            *db,
                      GHashTable      *known,
                      const BbSearch  *search,
                      gint64           id,
                      GError         **error)
{
  g_autofree char *sql = make_texts_sql (search, " WHERE rowid IN (?1, -?1)");
  g_autoptr (BbStatement) statement = bb_db_prepare (db, sql, error);
  BbStep step = BB_STEP_ERROR;

  if (statement == NULL)
    return FALSE;

  bb_statement_bind_integer (statement, 1, id);
  step = bb_statement_step (statement, error);

  return step == BB_STEP_DONE ||
         (step == BB_STEP_ROW && add_text (db, known, bb_statement_get_text (statement, 0), error));
}

typedef gboolean (*TextFunc) (BbDb        *db,
                              GHashTable  *known,
                              const char  *text,
                              GError     **error);

static gboolean
for_each_text (BbDb        *db,
               GHashTable  *known,
               TextFunc     func,
               GError     **error)
{
  for (guint i = 0; i < BB_N_SEARCHES; i++)
    {
      g_autofree char *sql = make_texts_sql (&bb_searches ()[i], "");
      g_autoptr (BbStatement) statement = bb_db_prepare (db, sql, error);
      BbStep step = BB_STEP_ROW;

      if (statement == NULL)
        return FALSE;
      while ((step = bb_statement_step (statement, error)) == BB_STEP_ROW)
        if (!func (db, known, bb_statement_get_text (statement, 0), error))
          return FALSE;
      if (step == BB_STEP_ERROR)
        return FALSE;
    }

  return TRUE;
}

/**
 * bb_search_words_rebuild:
 * @db: a database of the latest version, within a transaction, whose searches are written
 * @error: return location for a #GError
 *
 * Notes the words of all records anew.
 *
 * Returns: %FALSE with an error
 */
gboolean
bb_search_words_rebuild (BbDb    *db,
                         GError **error)
{
  g_autoptr (GHashTable) known = bb_search_words_new ();

  return bb_db_run_script (db, "DELETE FROM search_gram; DELETE FROM search_word", error) &&
         for_each_text (db, known, add_text, error);
}

static gboolean
collect_text (BbDb        *db,
              GHashTable  *words,
              const char  *text,
              GError     **error)
{
  g_auto (GStrv) folded = bb_words_fold (text);

  (void) db;
  (void) error;
  for (guint i = 0; folded[i] != NULL; i++)
    if (bb_word_tolerance (folded[i]) > 0 && !g_hash_table_contains (words, folded[i]))
      g_hash_table_add (words, g_strdup (folded[i]));

  return TRUE;
}

/**
 * bb_search_words_count_missing:
 * @db: a database of the latest version
 * @n_missing: (out): how many words of records are not noted
 * @error: return location for a #GError
 *
 * Holds the noted words against the searches.
 *
 * Returns: %FALSE with an error
 */
gboolean
bb_search_words_count_missing (BbDb     *db,
                               guint    *n_missing,
                               GError  **error)
{
  g_autoptr (GHashTable) words = bb_search_words_new ();
  g_autoptr (BbStatement) statement = bb_db_prepare (db, "SELECT w.word FROM search_word w WHERE EXISTS "
                                                     "(SELECT 1 FROM search_gram WHERE word = w.id)", error);
  BbStep step = BB_STEP_ROW;

  if (statement == NULL || !for_each_text (db, words, collect_text, error))
    return FALSE;

  while ((step = bb_statement_step (statement, error)) == BB_STEP_ROW)
    g_hash_table_remove (words, bb_statement_get_text (statement, 0));
  *n_missing = g_hash_table_size (words);

  return step == BB_STEP_DONE;
}
