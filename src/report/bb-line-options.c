/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-report"

#include "bb-line-options.h"

#include <glib/gi18n-lib.h>

#include "bb-likest.h"
#include "bb-near-recipes.h"
#include "bb-recall.h"
#include "bb-words.h"

/* More than a person compares. */
#define MOST_NEAR 4

static void
option_free (gpointer data)
{
  BbLineOption *self = data;

  g_free (self->name);
  g_free (self->why);
  g_free (self);
}

static BbLineOption *
option_new (BbBook  *book,
            gint64   id,
            GError **error)
{
  g_autoptr (BbRevision) revision = bb_book_load (book, &bb_revision_table, id, error);
  g_autoptr (BbStanding) standing = revision != NULL ? bb_book_load_standing (book, id, error) : NULL;
  g_autofree char *recipe = NULL;
  BbLineOption *self = NULL;

  if (standing == NULL)
    return NULL;

  recipe = bb_words_of_name (book, &bb_recipe_table, revision->recipe);
  self = g_new0 (BbLineOption, 1);
  self->revision = id;
  /* Translators: a recipe's name, and the number of the revision. */
  self->name = g_strdup_printf (_("%s, revision %d"), recipe, (int) revision->number);
  self->state = standing->state;

  return self;
}

static char *
describe_run (BbBook  *book,
              gint64   id,
              gint64   customer,
              GError **error)
{
  g_autoptr (BbRun) run = bb_book_load (book, &bb_run_table, id, error);
  g_autoptr (BbJobLine) line = run != NULL ? bb_book_load (book, &bb_job_line_table, run->line, error) : NULL;
  g_autoptr (BbJob) job = line != NULL ? bb_book_load (book, &bb_job_table, line->job, error) : NULL;
  g_autofree char *name = NULL;
  g_autofree char *day = NULL;

  if (job == NULL)
    return NULL;

  name = bb_words_of_name (book, &bb_customer_table, job->customer);
  day = bb_words_of_day (run->started_at);
  if (job->customer == customer)
    /* Translators: a customer, a day like 3 Feb 2025, and a job's number. */
    return g_strdup_printf (_("Proven. %s had this garment printed by it last, on %s in job %s."), name, day,
                            job->code);

  /* Translators: a customer, a day like 3 Feb 2025, and a job's number. */
  return g_strdup_printf (_("Proven. This garment was printed by it last, for %s on %s in job %s."), name, day,
                          job->code);
}

/* A recipe for dark garments is none for a white one, whoever made it for the same blank. */
static gboolean
is_for_colour (BbBook  *book,
               gint64   id,
               gint64   colourway)
{
  g_autoptr (BbRevision) revision = bb_book_load (book, &bb_revision_table, id, NULL);
  g_autoptr (BbRecipe) recipe = NULL;
  g_autoptr (BbColourway) colour = bb_book_load (book, &bb_colourway_table, colourway, NULL);

  if (revision != NULL)
    recipe = bb_book_load (book, &bb_recipe_table, revision->recipe, NULL);
  if (recipe == NULL || colour == NULL)
    return FALSE;
  if (recipe->colourway == colourway || recipe->shade == BB_CHOICE_NONE || recipe->shade == BB_SHADE_ANY)
    return TRUE;

  return (bb_shades_of (colour->srgb) & (1u << recipe->shade)) != 0;
}

static gboolean
add_recalled (GPtrArray  *options,
              BbBook     *book,
              gint64      customer,
              gint64      colourway,
              GError    **error)
{
  gint64 run = 0;
  gint64 revision = bb_book_find_last_revision (book, customer, colourway, &run, error);
  BbLineOption *option = NULL;

  if (revision < 0)
    return FALSE;
  if (revision == 0 || (run == 0 && !is_for_colour (book, revision, colourway)))
    return TRUE;

  option = option_new (book, revision, error);
  if (option == NULL)
    return FALSE;
  g_ptr_array_add (options, option);
  option->is_recalled = TRUE;
  option->why = run != 0 ? describe_run (book, run, customer, error)
                         : g_strdup (_("Proven on this garment, and not yet printed in a job."));

  return option->why != NULL;
}

static gboolean
is_among (const GPtrArray *options,
          gint64           revision)
{
  for (guint i = 0; i < options->len; i++)
    if (((const BbLineOption *) options->pdata[i])->revision == revision)
      return TRUE;

  return FALSE;
}

static gboolean
add_near (GPtrArray            *options,
          BbBook               *book,
          gint64                colourway,
          const BbUnitContext  *units,
          GError              **error)
{
  g_autoptr (BbNearRecipes) near = bb_near_recipes_load (book, 0, colourway, MOST_NEAR, error);

  for (guint i = 0; near != NULL && i < near->recipes->len; i++)
    {
      const BbKnownRecipe *recipe = near->recipes->pdata[i];
      BbLineOption *option = NULL;

      if (is_among (options, recipe->revision))
        continue;
      option = option_new (book, recipe->revision, error);
      if (option == NULL)
        return FALSE;
      option->why = bb_near_recipes_dup_reasons (near, i, units);
      g_ptr_array_add (options, option);
    }

  return near != NULL;
}

/**
 * bb_line_options_load:
 * @book: a book
 * @customer: the key of who orders, or 0 for anybody
 * @colourway: the key of the garment in its colour
 * @units: the units to write reasons in
 * @error: return location for a #GError
 *
 * Finds by what a garment could be printed: first the proven revision that it was last printed by, for this customer
 * before anybody else, then the recipes that lie nearest, each with its reasons. It reads all recipes: for a thread,
 * where the book is large.
 *
 * Returns: (transfer full) (nullable) (element-type BbLineOption): the options, the best first; the array frees them.
 *   %NULL with an error
 */
GPtrArray *
bb_line_options_load (BbBook               *book,
                      gint64                customer,
                      gint64                colourway,
                      const BbUnitContext  *units,
                      GError              **error)
{
  g_autoptr (GPtrArray) options = g_ptr_array_new_with_free_func (option_free);

  g_return_val_if_fail (BB_IS_BOOK (book) && colourway != 0 && units != NULL, NULL);

  return add_recalled (options, book, customer, colourway, error) &&
         add_near (options, book, colourway, units, error) ? g_steal_pointer (&options) : NULL;
}
