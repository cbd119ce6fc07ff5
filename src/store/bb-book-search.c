/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-store"

#include "bb-book-private.h"

#include <glib/gi18n-lib.h>

#include "bb-searches.h"

/* More words than anybody types, and few enough that no text makes the search slow. */
#define MOST_TERMS 16

static gboolean
has_letter_or_digit (const char *text)
{
  for (const char *p = text; *p != '\0'; p = g_utf8_next_char (p))
    if (g_unichar_isalnum (g_utf8_get_char (p)))
      return TRUE;

  return FALSE;
}

/* In quotation marks none of what is typed is an operator. */
static void
append_quoted (GString    *match,
               const char *word)
{
  g_string_append_c (match, '"');
  for (const char *p = word; *p != '\0'; p++)
    {
      if (*p == '"')
        g_string_append_c (match, '"');
      g_string_append_c (match, *p);
    }
  g_string_append_c (match, '"');
}

/*
 * The beginning of a word finds it. A choice stands in the search by its key, and a person types what it is called on
 * the screen, in any language.
 */
static void
append_word (GString        *match,
             const BbSearch *search,
             const char     *word)
{
  g_string_append_c (match, '(');
  append_quoted (match, word);
  g_string_append_c (match, '*');
  for (guint c = 0; search->choices[c] != NULL; c++)
    for (guint i = 0; i < search->choices[c]->n_items; i++)
      if (g_str_match_string (word, bb_choices_get_title (search->choices[c], (int) i), TRUE))
        {
          g_string_append (match, " OR ");
          append_quoted (match, search->choices[c]->items[i].key);
        }
  g_string_append_c (match, ')');
}

/* Nothing where no word has a letter or digit. */
static char *
make_match (const BbSearch *search,
            const char     *text)
{
  g_autofree char *valid = g_utf8_make_valid (text != NULL ? text : "", -1);
  g_auto (GStrv) words = g_strsplit_set (valid, " \t\r\n\f\v", -1);
  GString *match = g_string_new (NULL);
  guint n = 0;

  for (guint i = 0; words[i] != NULL && n < MOST_TERMS; i++)
    if (has_letter_or_digit (words[i]))
      {
        g_string_append (match, n++ > 0 ? " AND " : "");
        append_word (match, search, words[i]);
      }

  return g_string_free (match, FALSE);
}

static char *
make_sql (const BbSearch *search,
          gboolean        has_words,
          gboolean        of_recipe)
{
  const char *key = has_words ? "rowid" : "id";
  GString *sql = g_string_new (NULL);

  if (has_words)
    g_string_append_printf (sql, "SELECT rowid FROM %s WHERE %s MATCH ?2", search->index, search->index);
  else
    g_string_append_printf (sql, "SELECT id FROM %s WHERE %s", search->table->name,
                            bb_table_find_field (search->table, "withdrawn_at") != NULL ? "withdrawn_at IS NULL"
                                                                                        : "TRUE");
  if (of_recipe)
    g_string_append_printf (sql, " AND %s IN (%s)", key, search->of_recipe);
  g_string_append_printf (sql, " ORDER BY %s DESC LIMIT ?1", key);

  return g_string_free (sql, FALSE);
}

/**
 * bb_book_search:
 * @self: a book
 * @table: a table whose records have a list: recipes, blanks, supplies, wash tests, customers, machines, lots, jobs
 * @query: what is looked for
 * @error: return location for a #GError
 *
 * Finds the records that have every word, case and accents aside. Withdrawn records are left out.
 *
 * Returns: (transfer full) (nullable) (element-type gint64): the records' keys, the newest first; all records where
 *   the text has no word. %NULL with an error
 */
GArray *
bb_book_search (BbBook         *self,
                const BbTable  *table,
                const BbQuery  *query,
                GError        **error)
{
  const BbSearch *search = bb_search_find (table);
  g_autofree char *match = NULL;
  g_autofree char *sql = NULL;
  g_autoptr (BbStatement) statement = NULL;

  g_return_val_if_fail (BB_BOOK_IS_USABLE (self) && search != NULL && query != NULL, NULL);
  g_return_val_if_fail (query->recipe == 0 || search->of_recipe != NULL, NULL);

  match = make_match (search, query->text);
  sql = make_sql (search, *match != '\0', query->recipe != 0);
  statement = bb_db_prepare (self->db, sql, error);
  if (statement == NULL)
    return NULL;

  bb_statement_bind_integer (statement, 1, query->limit > 0 ? query->limit : G_MAXINT64);
  if (*match != '\0')
    bb_statement_bind_text (statement, 2, match);
  if (query->recipe != 0)
    bb_statement_bind_integer (statement, 3, query->recipe);

  return _bb_statement_collect_keys (statement, error);
}
