/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-store"

#include "bb-recall-private.h"

#include "bb-book-private.h"
#include "bb-problem.h"

/* How many readings of a mistyped text are tried. */
#define MOST_READINGS 6

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

  return (only_jobs || _bb_recall_search (self, &bb_recipe_table, recall, text, recalled->recipes,
                                          recalled->recipe_colourways, error)) &&
         (only_recipes || _bb_recall_search (self, &bb_job_table, recall, text, recalled->jobs,
                                             recalled->job_colourways, error));
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
  done = _bb_recall_find_thing (self, recall->text, recalled, error) &&
         search (self, recall, recall->text, recalled, error) &&
         search_corrected (self, recall, recalled, error);
  if (!bb_db_commit (self->db, done ? error : NULL) || !done)
    return NULL;

  return g_steal_pointer (&recalled);
}
