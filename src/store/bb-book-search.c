/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-store"

#include "bb-book-private.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#include "bb-problem.h"
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

static void
append_colourways (GString       *match,
                   const BbQuery *query)
{
  g_string_append (match, match->len > 0 ? " AND (" : "(");
  for (guint i = 0; i < query->n_colourways; i++)
    g_string_append_printf (match, "%s\"" BB_MARK_COLOURWAY "%" G_GINT64_FORMAT "\"", i > 0 ? " OR " : "",
                            query->colourways[i]);
  g_string_append_c (match, ')');
}

/* Nothing where no word has a letter or digit, and nothing is narrowed by. */
static char *
make_match (const BbSearch *search,
            const BbQuery  *query)
{
  g_autofree char *valid = g_utf8_make_valid (query->text != NULL ? query->text : "", -1);
  g_auto (GStrv) words = g_strsplit_set (valid, " \t\r\n\f\v", -1);
  GString *match = g_string_new (NULL);
  guint n = 0;

  for (guint i = 0; words[i] != NULL && n < MOST_TERMS; i++)
    if (has_letter_or_digit (words[i]))
      {
        g_string_append (match, n++ > 0 ? " AND " : "");
        append_word (match, search, words[i]);
      }
  if (query->narrow != NULL)
    bb_narrow_append (query->narrow, search->table, match);
  if (query->n_colourways > 0)
    append_colourways (match, query);

  return g_string_free (match, FALSE);
}

static gboolean
can_be_withdrawn (const BbTable *table)
{
  return bb_table_find_field (table, "withdrawn_at") != NULL;
}

/* Marks are of the ten and the month: the ends within these are looked at in the records. */
static gboolean
has_mass (const BbNarrow *narrow)
{
  return narrow != NULL && (!isnan (narrow->mass_least_g_per_m2) || !isnan (narrow->mass_most_g_per_m2));
}

static gboolean
has_day (const BbNarrow *narrow)
{
  return narrow != NULL && (narrow->since != NULL || narrow->until != NULL);
}

static gboolean
has_shade (const BbSearch *search,
           const BbQuery  *query)
{
  return query->n_colourways > 0 && query->shades != 0 && search->of_shade != NULL;
}

/* Records are in the search by their key, those that are withdrawn by that made negative: see BbSearch. */
static char *
make_sql (const BbSearch *search,
          const BbQuery  *query,
          gboolean        has_match,
          gboolean        withdrawn)
{
  const char *key = !has_match ? "id" : withdrawn ? "-rowid" : "rowid";
  GString *sql = g_string_new (NULL);

  if (has_match)
    g_string_append_printf (sql, "SELECT %s FROM %s WHERE %s MATCH ?2 AND rowid %s 0", key, search->index,
                            search->index, withdrawn ? "<" : ">");
  else
    g_string_append_printf (sql, "SELECT id FROM %s WHERE %s", search->table->name,
                            !can_be_withdrawn (search->table) ? "TRUE"
                            : withdrawn ? "withdrawn_at IS NOT NULL" : "withdrawn_at IS NULL");
  if (query->recipe != 0)
    g_string_append_printf (sql, " AND %s IN (%s)", key, search->of_recipe);
  if (has_mass (query->narrow))
    g_string_append_printf (sql, " AND %s", search->of_mass);
  if (has_day (query->narrow))
    g_string_append_printf (sql, " AND %s", search->of_day);
  if (has_shade (search, query))
    g_string_append_printf (sql, " AND %s", search->of_shade);
  g_string_append_printf (sql, " ORDER BY %s LIMIT ?1", !has_match ? "id DESC" : withdrawn ? "rowid" : "rowid DESC");

  return g_string_free (sql, FALSE);
}

static void
bind_mass (BbStatement    *statement,
           const BbNarrow *narrow)
{
  double least = narrow->mass_least_g_per_m2;
  double most = narrow->mass_most_g_per_m2;

  bb_statement_bind_number (statement, 4, isnan (least) ? 0.0 : least);
  bb_statement_bind_number (statement, 5, isnan (most) ? G_MAXDOUBLE : most);
}

static void
bind_day (BbStatement    *statement,
          const BbNarrow *narrow)
{
  g_autofree char *since = g_strndup (narrow->since != NULL ? narrow->since : "", strlen ("YYYY-MM-DD"));
  g_autofree char *until = g_strndup (narrow->until != NULL ? narrow->until : "9999-12-31", strlen ("YYYY-MM-DD"));

  bb_statement_bind_text (statement, 6, since);
  bb_statement_bind_text (statement, 7, until);
}

static void
bind_shades (BbStatement *statement,
             guint        shades)
{
  g_autoptr (GString) keys = g_string_new ("|");

  for (guint i = 0; i < bb_shade_choices.n_items; i++)
    if ((shades & (1u << i)) != 0)
      g_string_append_printf (keys, "%s|", bb_choices_get_key (&bb_shade_choices, (int) i));
  bb_statement_bind_text (statement, 8, keys->str);
}

static GHashTable *
make_set (const GArray *ids)
{
  GHashTable *set = g_hash_table_new (g_int64_hash, g_int64_equal);

  for (guint i = 0; i < ids->len; i++)
    g_hash_table_add (set, &g_array_index (ids, gint64, i));

  return set;
}

/* Those of @ids that are in the other list too, or those that are not. */
static GArray *
pick (const GArray *ids,
      const GArray *others,
      gboolean      in_both)
{
  g_autoptr (GHashTable) set = make_set (others);
  GArray *picked = g_array_new (FALSE, FALSE, sizeof (gint64));

  for (guint i = 0; i < ids->len; i++)
    if (g_hash_table_contains (set, &g_array_index (ids, gint64, i)) == in_both)
      g_array_append_val (picked, g_array_index (ids, gint64, i));

  return picked;
}

static GArray *
restrict_to (GArray        *found,
             const BbQuery *query)
{
  GArray *rest = found;

  if (query->among != NULL)
    {
      rest = pick (query->among, found, TRUE);
      g_array_unref (found);
    }
  if (query->apart_from != NULL)
    {
      found = rest;
      rest = pick (found, query->apart_from, FALSE);
      g_array_unref (found);
    }
  if (query->limit > 0 && rest->len > query->limit)
    g_array_set_size (rest, query->limit);

  return rest;
}

static gboolean
is_restricted (const BbQuery *query)
{
  return query->among != NULL || query->apart_from != NULL;
}

static GArray *
search_part (BbBook         *self,
             const BbSearch *search,
             const BbQuery  *query,
             gboolean        withdrawn,
             GError        **error)
{
  g_autofree char *match = make_match (search, query);
  g_autofree char *sql = make_sql (search, query, *match != '\0', withdrawn);
  g_autoptr (BbStatement) statement = bb_db_prepare (self->db, sql, error);

  if (statement == NULL)
    return NULL;

  bb_statement_bind_integer (statement, 1, query->limit > 0 && !is_restricted (query) ? query->limit : G_MAXINT64);
  if (*match != '\0')
    bb_statement_bind_text (statement, 2, match);
  if (query->recipe != 0)
    bb_statement_bind_integer (statement, 3, query->recipe);
  if (has_mass (query->narrow))
    bind_mass (statement, query->narrow);
  if (has_day (query->narrow))
    bind_day (statement, query->narrow);
  if (has_shade (search, query))
    bind_shades (statement, query->shades);

  return _bb_statement_collect_keys (statement, error);
}

/* What is withdrawn first: whoever asks for it looks for that. */
static GArray *
search_for (BbBook         *self,
            const BbSearch *search,
            const BbQuery  *query,
            GError        **error)
{
  g_autoptr (GArray) found = NULL;
  g_autoptr (GArray) rest = NULL;

  if (query->withdrawn == BB_WITHDRAWN_NONE || !can_be_withdrawn (search->table))
    return search_part (self, search, query, FALSE, error);

  found = search_part (self, search, query, TRUE, error);
  if (found == NULL || query->withdrawn == BB_WITHDRAWN_ONLY)
    return g_steal_pointer (&found);
  rest = search_part (self, search, query, FALSE, error);
  if (rest == NULL)
    return NULL;
  g_array_append_vals (found, rest->data, rest->len);
  if (query->limit > 0 && !is_restricted (query) && found->len > query->limit)
    g_array_set_size (found, query->limit);

  return g_steal_pointer (&found);
}

/**
 * bb_book_search:
 * @self: a book
 * @table: a table whose records have a list: recipes, blanks, supplies, wash tests, customers, machines, lots, jobs
 * @query: what is looked for
 * @error: return location for a #GError
 *
 * Finds the records that have every word, case and accents aside.
 *
 * Returns: (transfer full) (nullable) (element-type gint64): the records' keys, the newest first, those that are
 *   withdrawn before the others, or in the order of those among which they are; all records where the text has no
 *   word. %NULL with %BB_MODEL_ERROR where what is narrowed by is not allowed, or another error
 */
GArray *
bb_book_search (BbBook         *self,
                const BbTable  *table,
                const BbQuery  *query,
                GError        **error)
{
  const BbSearch *search = bb_search_find (table);
  GArray *found = NULL;

  g_return_val_if_fail (BB_BOOK_IS_USABLE (self) && search != NULL && query != NULL, NULL);
  g_return_val_if_fail (query->recipe == 0 || search->of_recipe != NULL, NULL);
  g_return_val_if_fail ((query->narrow == NULL && query->n_colourways == 0) || search->of_day != NULL, NULL);

  if (query->narrow != NULL && !bb_record_validate (&bb_narrow_table, query->narrow, error))
    return NULL;

  found = search_for (self, search, query, error);

  return found != NULL && is_restricted (query) ? restrict_to (found, query) : found;
}

/**
 * bb_book_count_withdrawn:
 * @self: a book
 * @table: a table of the book
 * @n_withdrawn: (out): how many of its records were taken out of use; 0 where that can't be
 * @error: return location for a #GError
 *
 * Returns: %FALSE with an error
 */
gboolean
bb_book_count_withdrawn (BbBook         *self,
                         const BbTable  *table,
                         guint          *n_withdrawn,
                         GError        **error)
{
  g_autofree char *sql = g_strdup_printf ("SELECT COUNT (*) FROM %s WHERE withdrawn_at IS NOT NULL", table->name);
  gint64 n = 0;

  g_return_val_if_fail (BB_BOOK_IS_USABLE (self), FALSE);

  if (can_be_withdrawn (table) && !bb_db_query_integer (self->db, sql, &n, error))
    return FALSE;
  *n_withdrawn = (guint) n;

  return TRUE;
}
