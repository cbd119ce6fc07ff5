/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-store"

#include "bb-book-private.h"

#include <string.h>

#include "bb-book-current.h"
#include "bb-record-sql.h"

/* More words than anybody types, and few enough that no text makes the search slow. */
#define MOST_TERMS 16

/* How many lines one statement reads. */
#define LINES_CHUNK 64

BB_DEFINE_TABLE (BbRecipeLine, bb_recipe_line, "recipe_line", N_("Recipe"), BB_RECIPE_LINE_FIELDS, NULL)

static gboolean
has_letter_or_digit (const char *text)
{
  for (const char *p = text; *p != '\0'; p = g_utf8_next_char (p))
    if (g_unichar_isalnum (g_utf8_get_char (p)))
      return TRUE;

  return FALSE;
}

/*
 * Each word, quoted, so that none of what is typed is an operator, and followed by a star, so that the beginning of a
 * word finds it. Nothing where no word has a letter or digit.
 */
static char *
make_match (const char *text)
{
  g_autofree char *valid = g_utf8_make_valid (text, -1);
  g_auto (GStrv) words = g_strsplit_set (valid, " \t\r\n\f\v", -1);
  GString *match = g_string_new (NULL);
  guint n = 0;

  for (guint i = 0; words[i] != NULL && n < MOST_TERMS; i++)
    {
      if (!has_letter_or_digit (words[i]))
        continue;

      if (n++ > 0)
        g_string_append_c (match, ' ');
      g_string_append_c (match, '"');
      for (const char *p = words[i]; *p != '\0'; p++)
        {
          if (*p == '"')
            g_string_append_c (match, '"');
          g_string_append_c (match, *p);
        }
      g_string_append (match, "\"*");
    }

  return g_string_free (match, FALSE);
}

/**
 * bb_book_search_recipes:
 * @self: a book
 * @text: (nullable): words, or their beginnings, of a recipe's code, name, family, blank, colours or notes
 * @limit: how many at most; 0 for all
 * @error: return location for a #GError
 *
 * Finds the recipes that have every word, case and accents aside. Withdrawn recipes are left out.
 *
 * Returns: (transfer full) (nullable) (element-type gint64): the recipes' keys, the newest first; all recipes where
 *   @text has no word. %NULL with an error
 */
GArray *
bb_book_search_recipes (BbBook      *self,
                        const char  *text,
                        guint        limit,
                        GError     **error)
{
  g_autoptr (GArray) ids = g_array_new (FALSE, FALSE, sizeof (gint64));
  g_autofree char *match = make_match (text != NULL ? text : "");
  g_autoptr (BbStatement) statement = NULL;
  BbStep step = BB_STEP_ROW;

  g_return_val_if_fail (BB_BOOK_IS_USABLE (self), NULL);

  statement = bb_db_prepare (self->db,
                             *match != '\0'
                               ? "SELECT rowid FROM search WHERE search MATCH ?2 ORDER BY rowid DESC LIMIT ?1"
                               : "SELECT id FROM recipe WHERE withdrawn_at IS NULL ORDER BY id DESC LIMIT ?1", error);
  if (statement == NULL)
    return NULL;

  bb_statement_bind_integer (statement, 1, limit > 0 ? limit : G_MAXINT64);
  if (*match != '\0')
    bb_statement_bind_text (statement, 2, match);
  while ((step = bb_statement_step (statement, error)) == BB_STEP_ROW)
    {
      gint64 id = bb_statement_get_integer (statement, 0);

      g_array_append_val (ids, id);
    }

  return step == BB_STEP_DONE ? g_steal_pointer (&ids) : NULL;
}

/* Names each column as the field table of the lines does, from which the outer statement takes them. */
#define LINES \
  "WITH line AS (" \
  "SELECT r.id AS id, r.code AS code, r.name AS name, COALESCE (b.name, r.family, '') AS blank, " \
  "COALESCE (c.name, '') AS colourway, COALESCE (c.srgb, '') AS srgb, r.shade AS shade, v.id AS revision, " \
  "v.number AS number, CASE WHEN v.id IS NOT NULL THEN COALESCE (s.state, 'draft') END AS state, " \
  "v.pretreat_laydown_g_per_m2 AS pretreat_laydown_g_per_m2, v.made_at AS made_at " \
  "FROM recipe r LEFT JOIN blank b ON b.id = r.blank LEFT JOIN colourway c ON c.id = r.colourway " \
  "LEFT JOIN revision v ON v.id = (" BB_SQL_CURRENT_OF ("r.id") ") " \
  "LEFT JOIN standing s ON s.revision = v.id WHERE r.id IN ("

static char *
make_lines_sql (void)
{
  g_autofree char *columns = bb_sql_columns (&bb_recipe_line_table);
  GString *sql = g_string_new (LINES);

  for (guint i = 1; i <= LINES_CHUNK; i++)
    g_string_append_printf (sql, "%s?%u", i > 1 ? ", " : "", i);
  g_string_append_printf (sql, ")) SELECT %s FROM line", columns);

  return g_string_free (sql, FALSE);
}

static gboolean
load_chunk (BbStatement   *statement,
            const gint64  *ids,
            guint          n_ids,
            GHashTable    *lines,
            GError       **error)
{
  BbStep step = BB_STEP_ROW;

  for (guint i = 0; i < n_ids; i++)
    bb_statement_bind_integer (statement, (int) i + 1, ids[i]);

  while ((step = bb_statement_step (statement, error)) == BB_STEP_ROW)
    {
      BbRecipeLine *line = bb_recipe_line_new ();

      if (!bb_record_read (&bb_recipe_line_table, line, statement, error))
        {
          bb_recipe_line_free (line);
          return FALSE;
        }
      g_hash_table_replace (lines, &line->id, line);
    }
  bb_statement_rewind (statement);

  return step == BB_STEP_DONE;
}

static gboolean
load_lines (BbBook        *self,
            const gint64  *ids,
            guint          n_ids,
            GHashTable    *lines,
            GError       **error)
{
  g_autofree char *sql = make_lines_sql ();
  g_autoptr (BbStatement) statement = bb_db_prepare (self->db, sql, error);

  if (statement == NULL)
    return FALSE;

  for (guint i = 0; i < n_ids; i += LINES_CHUNK)
    if (!load_chunk (statement, ids + i, MIN (LINES_CHUNK, n_ids - i), lines, error))
      return FALSE;

  return TRUE;
}

/**
 * bb_book_load_recipe_lines:
 * @self: a book
 * @ids: (array length=n_ids): keys of recipes, each once
 * @n_ids: how many
 * @error: return location for a #GError
 *
 * Loads what a list shows of some recipes, a page of a list at a time.
 *
 * Returns: (transfer full) (nullable) (element-type BbRecipeLine): the lines in the order of @ids; the array frees
 *   them. A key that is not in the book has no line. %NULL with an error
 */
GPtrArray *
bb_book_load_recipe_lines (BbBook        *self,
                           const gint64  *ids,
                           guint          n_ids,
                           GError       **error)
{
  g_autoptr (GPtrArray) result = g_ptr_array_new_with_free_func (bb_recipe_line_table.free_record);
  g_autoptr (GHashTable) lines = g_hash_table_new_full (g_int64_hash, g_int64_equal, NULL,
                                                        bb_recipe_line_table.free_record);

  g_return_val_if_fail (BB_BOOK_IS_USABLE (self) && (ids != NULL || n_ids == 0), NULL);

  if (!load_lines (self, ids, n_ids, lines, error))
    return NULL;

  for (guint i = 0; i < n_ids; i++)
    {
      gpointer line = NULL;

      if (g_hash_table_steal_extended (lines, &ids[i], NULL, &line))
        g_ptr_array_add (result, line);
    }

  return g_steal_pointer (&result);
}
