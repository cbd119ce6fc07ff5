/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-store"

#include "bb-recall-private.h"

#include <string.h>

#include "bb-book-private.h"

/*
 * Searching one table for what a person wants to be reminded of: the newest first or, where colours are asked for, on
 * the likest colour first.
 */

/* Up to so many that are found on any of the colours asked for are put in order; more than that are found by each. */
#define MOST_RANKED 200

/* With how many colours the search for the likest begins. */
#define FIRST_COLOURS 4

/*
 * @ids: keys of what was found
 * @colourways: for each the colour that it was found by, or 0
 */
typedef struct {
  BbBook *book;
  const BbTable *table;
  const BbRecall *recall;
  const char *text;
  GArray *ids;
  GArray *colourways;
} Finding;

static void
take (Finding *self,
      gint64   id,
      gint64   colourway)
{
  g_array_append_val (self->ids, id);
  g_array_append_val (self->colourways, colourway);
}

static gboolean
is_taken (const Finding *self,
          gint64         id)
{
  for (guint i = 0; i < self->ids->len; i++)
    if (g_array_index (self->ids, gint64, i) == id)
      return TRUE;

  return FALSE;
}

static gboolean
is_full (const Finding *self)
{
  return self->recall->limit > 0 && self->ids->len >= self->recall->limit;
}

static GArray *
find_on (Finding       *self,
         const gint64  *colourways,
         guint          n_colourways,
         guint          limit,
         GError       **error)
{
  const BbQuery query = {
    .text = self->text, .narrow = self->recall->narrow, .colourways = colourways, .n_colourways = n_colourways,
    .shades = self->recall->shades, .withdrawn = self->recall->withdrawn, .limit = limit,
  };

  return bb_book_search (self->book, self->table, &query, error);
}

static gboolean
find_newest (Finding *self,
             GError **error)
{
  g_autoptr (GArray) found = find_on (self, NULL, 0, self->recall->limit, error);

  for (guint i = 0; found != NULL && i < found->len; i++)
    take (self, g_array_index (found, gint64, i), 0);

  return found != NULL;
}

/* Some of the colours that are asked for, next to each other in their order. */
typedef struct {
  const gint64 *ids;
  guint n;
} Colours;

/* Much is found: colour after colour, until there is enough. */
static gboolean
find_by_each_colour (Finding        *self,
                     const Colours  *colours,
                     GError        **error)
{
  for (guint c = 0; c < colours->n && !is_full (self); c++)
    {
      /* Some may be taken already, by a colour that is more alike. */
      g_autoptr (GArray) found = find_on (self, &colours->ids[c], 1, self->recall->limit, error);

      if (found == NULL)
        return FALSE;
      for (guint i = 0; i < found->len && !is_full (self); i++)
        if (!is_taken (self, g_array_index (found, gint64, i)))
          take (self, g_array_index (found, gint64, i), colours->ids[c]);
    }

  return TRUE;
}

typedef struct {
  gint64 id;
  guint rank;
} Ranked;

static int
compare_ranks (gconstpointer a,
               gconstpointer b)
{
  const Ranked *first = a;
  const Ranked *second = b;

  if (first->rank != second->rank)
    return first->rank < second->rank ? -1 : 1;

  return (first->id < second->id) - (first->id > second->id);
}

/* The first of the colours that a record's marks name. */
static guint
rank_of_marks (const char *marks,
               GHashTable *ranks)
{
  guint best = G_MAXUINT;

  for (const char *p = strstr (marks, BB_MARK_COLOURWAY); p != NULL; p = strstr (p, BB_MARK_COLOURWAY))
    {
      gint64 colourway = 0;
      gpointer rank = NULL;

      p += strlen (BB_MARK_COLOURWAY);
      colourway = g_ascii_strtoll (p, NULL, 10);
      if (g_hash_table_lookup_extended (ranks, &colourway, NULL, &rank))
        best = MIN (best, GPOINTER_TO_UINT (rank));
    }

  return best;
}

static gboolean
rank_one (Finding     *self,
          GHashTable  *ranks,
          Ranked      *ranked,
          GError     **error)
{
  g_autofree char *sql = g_strdup_printf ("SELECT marks FROM %s WHERE rowid IN (?1, -?1)",
                                          bb_search_find (self->table)->index);
  g_autoptr (BbStatement) statement = bb_db_prepare (self->book->db, sql, error);

  if (statement == NULL)
    return FALSE;
  bb_statement_bind_integer (statement, 1, ranked->id);
  if (bb_statement_step (statement, error) != BB_STEP_ROW)
    return FALSE;
  ranked->rank = rank_of_marks (bb_statement_get_text (statement, 0), ranks);

  return TRUE;
}

/* Little is found: all of it, put in order. */
static gboolean
rank_all (Finding        *self,
          const Colours  *colours,
          const GArray   *found,
          GError        **error)
{
  g_autoptr (GHashTable) ranks = g_hash_table_new (g_int64_hash, g_int64_equal);
  g_autoptr (GArray) ranked = g_array_new (FALSE, FALSE, sizeof (Ranked));

  for (guint i = colours->n; i-- > 0;)
    g_hash_table_insert (ranks, (gpointer) &colours->ids[i], GUINT_TO_POINTER (i));
  for (guint i = 0; i < found->len; i++)
    {
      Ranked one = { .id = g_array_index (found, gint64, i) };

      if (is_taken (self, one.id))
        continue;
      if (!rank_one (self, ranks, &one, error))
        return FALSE;
      if (one.rank < colours->n)
        g_array_append_val (ranked, one);
    }
  g_array_sort (ranked, compare_ranks);
  for (guint i = 0; i < ranked->len && !is_full (self); i++)
    take (self, g_array_index (ranked, Ranked, i).id, colours->ids[g_array_index (ranked, Ranked, i).rank]);

  return TRUE;
}

static gboolean
find_on_some (Finding        *self,
              const Colours  *colours,
              GError        **error)
{
  g_autoptr (GArray) found = find_on (self, colours->ids, colours->n, MOST_RANKED + 1, error);

  if (found == NULL)
    return FALSE;

  return found->len > MOST_RANKED ? find_by_each_colour (self, colours, error) : rank_all (self, colours, found, error);
}

/* The likest few colours, then twice as many each time, until there is enough. */
static gboolean
find_by_colour (Finding *self,
                GError **error)
{
  const gint64 *ids = (const gint64 *) (gpointer) self->recall->colourways->data;
  guint n = self->recall->colourways->len;
  guint some = FIRST_COLOURS;

  for (guint from = 0; from < n && !is_full (self); from += some, some *= 2)
    {
      const Colours colours = { ids + from, MIN (some, n - from) };

      if (!find_on_some (self, &colours, error))
        return FALSE;
    }

  return TRUE;
}

/**
 * _bb_recall_search:
 * @self: a book, within a transaction
 * @table: a table that has a search
 * @recall: what a person wants to be reminded of
 * @text: (nullable): the words that are looked for, which may be another reading of those of @recall
 * @ids: (element-type gint64): where to add the keys of what is found
 * @colourways: (element-type gint64): where to add for each of them the colour that it was found by, or 0
 * @error: return location for a #GError
 *
 * Returns: %FALSE with an error
 */
gboolean
_bb_recall_search (BbBook          *self,
                   const BbTable   *table,
                   const BbRecall  *recall,
                   const char      *text,
                   GArray          *ids,
                   GArray          *colourways,
                   GError         **error)
{
  Finding finding = { self, table, recall, text, ids, colourways };

  return recall->colourways != NULL ? find_by_colour (&finding, error) : find_newest (&finding, error);
}
