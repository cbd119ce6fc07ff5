/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-store"

#include "bb-recall.h"

#include <string.h>

#include "bb-book-private.h"
#include "bb-problem.h"
#include "bb-tag.h"

/* How many readings of a mistyped text are tried. */
#define MOST_READINGS 6

/* Up to so many that are found on any of the colours asked for are put in order; more than that are found by each. */
#define MOST_RANKED 200

/* With how many colours the search for the likest begins. */
#define FIRST_COLOURS 4

static BbRecalled *
recalled_new (void)
{
  BbRecalled *self = g_new0 (BbRecalled, 1);

  self->recipes = g_array_new (FALSE, FALSE, sizeof (gint64));
  self->jobs = g_array_new (FALSE, FALSE, sizeof (gint64));
  self->recipe_colourways = g_array_new (FALSE, FALSE, sizeof (gint64));
  self->job_colourways = g_array_new (FALSE, FALSE, sizeof (gint64));

  return self;
}

/**
 * bb_recalled_free:
 * @self: (transfer full): what was remembered
 */
void
bb_recalled_free (BbRecalled *self)
{
  g_array_unref (self->recipes);
  g_array_unref (self->jobs);
  g_array_unref (self->recipe_colourways);
  g_array_unref (self->job_colourways);
  g_free (self->corrected);
  g_free (self);
}

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
    .shades = self->recall->shades, .limit = limit,
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
  g_autofree char *sql = g_strdup_printf ("SELECT marks FROM %s WHERE rowid = ?1", bb_search_find (self->table)->index);
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

static gboolean
search_table (BbBook          *self,
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

/* Who asks for recipes in a state asks for no jobs, and the other way round. */
static gboolean
search (BbBook          *self,
        const BbRecall  *recall,
        const char      *text,
        BbRecalled      *recalled,
        GError         **error)
{
  const BbNarrow *narrow = recall->narrow;
  gboolean only_recipes = narrow != NULL && narrow->state >= 0 && narrow->job_state < 0;
  gboolean only_jobs = narrow != NULL && narrow->job_state >= 0 && narrow->state < 0;

  return (only_jobs || search_table (self, &bb_recipe_table, recall, text, recalled->recipes,
                                     recalled->recipe_colourways, error)) &&
         (only_recipes || search_table (self, &bb_job_table, recall, text, recalled->jobs, recalled->job_colourways,
                                        error));
}

static gboolean
search_corrected (BbBook          *self,
                  const BbRecall  *recall,
                  BbRecalled      *recalled,
                  GError         **error)
{
  g_autoptr (GPtrArray) readings = NULL;

  if (recall->text == NULL || recalled->recipes->len + recalled->jobs->len > 0 || recalled->table != NULL)
    return TRUE;

  readings = bb_book_correct_words (self, recall->text, MOST_READINGS, error);
  for (guint i = 0; readings != NULL && i < readings->len; i++)
    {
      if (!search (self, recall, readings->pdata[i], recalled, error))
        return FALSE;
      if (recalled->recipes->len + recalled->jobs->len > 0)
        {
          recalled->corrected = g_strdup (readings->pdata[i]);
          return TRUE;
        }
    }

  return readings != NULL;
}

static gboolean
find_code (BbBook         *self,
           const BbTable  *table,
           const char     *code,
           BbRecalled     *recalled,
           GError        **error)
{
  g_autofree char *sql = g_strdup_printf ("SELECT id FROM %s WHERE code = ?1", table->name);
  g_autoptr (BbStatement) statement = bb_db_prepare (self->db, sql, error);
  BbStep step = BB_STEP_ERROR;

  if (statement == NULL)
    return FALSE;

  bb_statement_bind_text (statement, 1, code);
  step = bb_statement_step (statement, error);
  if (step == BB_STEP_ROW)
    {
      recalled->table = table;
      recalled->id = bb_statement_get_integer (statement, 0);
    }

  return step != BB_STEP_ERROR;
}

/* The tables in which a label's code is looked for, up to a %NULL. */
static const BbTable * const *
tables_of (BbTagKind kind)
{
  static const BbTable * const jobs[] = { &bb_job_table, &bb_job_line_table, &bb_run_table, NULL };
  static const BbTable * const recipes[] = { &bb_recipe_table, &bb_revision_table, NULL };
  static const BbTable * const specimens[] = { &bb_wash_test_table, NULL };
  static const BbTable * const lots[] = { &bb_lot_table, NULL };

  switch (kind)
    {
    case BB_TAG_JOB:
      return jobs;
    case BB_TAG_RECIPE:
      return recipes;
    case BB_TAG_SPECIMEN:
      return specimens;
    case BB_TAG_LOT:
      return lots;
    default:
      g_return_val_if_reached (lots + 1);
    }
}

static gboolean
find_in (BbBook                 *self,
         const BbTable * const  *tables,
         const char             *code,
         BbRecalled             *recalled,
         GError                **error)
{
  for (guint i = 0; recalled->table == NULL && tables[i] != NULL; i++)
    if (!find_code (self, tables[i], code, recalled, error))
      return FALSE;

  return TRUE;
}

/* Shops number specimens as they number jobs: one may have the number of the other. */
static gboolean
find_specimen (BbBook      *self,
               const char  *code,
               BbRecalled  *recalled,
               GError     **error)
{
  BbRecalled found = { .table = NULL };

  if (!find_in (self, tables_of (BB_TAG_SPECIMEN), code, &found, error))
    return FALSE;
  recalled->specimen = found.id;

  return TRUE;
}

/* What a scanner types names its kind; a whole code that was typed by hand may be of any. */
static gboolean
find_very_thing (BbBook      *self,
                 const char  *text,
                 BbRecalled  *recalled,
                 GError     **error)
{
  const BbTagKind kinds[] = { BB_TAG_JOB, BB_TAG_RECIPE, BB_TAG_SPECIMEN, BB_TAG_LOT };
  g_autofree char *code = NULL;
  g_autofree char *stripped = g_strstrip (g_utf8_make_valid (text != NULL ? text : "", -1));
  BbTagKind kind = BB_TAG_JOB;

  if (*stripped == '\0')
    return TRUE;
  if (bb_tag_parse (stripped, &kind, &code) && !find_in (self, tables_of (kind), code, recalled, error))
    return FALSE;
  for (guint i = 0; i < G_N_ELEMENTS (kinds); i++)
    if (!find_in (self, tables_of (kinds[i]), stripped, recalled, error))
      return FALSE;

  return find_specimen (self, stripped, recalled, error);
}

/**
 * bb_book_recall:
 * @self: a book
 * @recall: what a person wants to be reminded of
 * @error: return location for a #GError
 *
 * Finds recipes by their own words, and jobs by those of customer, artwork, garment, recipe and notes: those that have
 * every word or the beginning of it, the newest first. Where nothing has, words that may be mistyped are read as words
 * that the book has. A text that is a label, or the whole code of a job, recipe, specimen or lot, names that very thing
 * as well.
 *
 * Returns: (transfer full) (nullable): what was found; %NULL with %BB_MODEL_ERROR where what is narrowed by is not
 *   allowed, or another error
 */
BbRecalled *
bb_book_recall (BbBook          *self,
                const BbRecall  *recall,
                GError         **error)
{
  g_autoptr (BbRecalled) recalled = NULL;
  gboolean done = FALSE;

  g_return_val_if_fail (BB_BOOK_IS_USABLE (self) && recall != NULL, NULL);

  if (recall->narrow != NULL && !bb_record_validate (&bb_narrow_table, recall->narrow, error))
    return NULL;

  /* All that is found is of one moment. */
  if (!bb_db_begin (self->db, BB_ACCESS_READ, error))
    return NULL;
  recalled = recalled_new ();
  done = find_very_thing (self, recall->text, recalled, error) &&
         search (self, recall, recall->text, recalled, error) &&
         search_corrected (self, recall, recalled, error);
  if (!bb_db_commit (self->db, done ? error : NULL) || !done)
    return NULL;

  return g_steal_pointer (&recalled);
}

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
