/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-bench"

#include "large-book.h"

#include "store-helpers.h"

/* All words are invented; the seed is fixed, so that every run has the same book. */

#define SEED 20250314
#define BLANKS 400

static const char * const heads[] = {
  "Amber", "Brisk", "Calm", "Dune", "Ember", "Fern", "Gale", "Harbour", "Ivory", "Juniper", "Kelp", "Larch", "Marl",
  "Nettle", "Ochre", "Pebble", "Quartz", "Rowan", "Slate", "Thistle", "Umber", "Vale", "Willow", "Yarrow",
};
static const char * const tails[] = {
  "tee", "hood", "fleece", "tank", "polo", "long sleeve", "crew", "tote", "apron", "vest", "youth tee", "heavy tee",
};

typedef struct {
  guint n_recipes;
  gint64 blanks[BLANKS];
  gint64 pretreat;
  GRand *rand;
} Plan;

static char *
make_name (Plan       *plan,
           const char *between)
{
  const char *head = large_book_pick_word (plan->rand);
  const char *tail = tails[g_rand_int_range (plan->rand, 0, G_N_ELEMENTS (tails))];

  return g_strjoin (between, head, tail, NULL);
}

static void
add_blanks (BbBook *book,
            Plan   *plan)
{
  g_autoptr (BbSupply) supply = helper_make_supply ("PT-1", BB_SUPPLY_PRETREAT);

  helper_save (book, &bb_supply_table, supply);
  plan->pretreat = supply->id;
  for (guint i = 0; i < BLANKS; i++)
    {
      g_autofree char *code = g_strdup_printf ("B-%u", i);
      g_autofree char *colour_code = g_strdup_printf ("B-%u-1", i);
      g_autofree char *name = make_name (plan, " ");
      g_autoptr (BbBlank) blank = helper_make_blank (code, name);
      g_autoptr (BbColourway) colourway = NULL;

      helper_save (book, &bb_blank_table, blank);
      plan->blanks[i] = blank->id;
      colourway = helper_make_colourway (colour_code, blank->id, large_book_pick_word (plan->rand));
      helper_save (book, &bb_colourway_table, colourway);
    }
}

static gboolean
fill (BbBook    *book,
      gpointer   data,
      GError   **error)
{
  Plan *plan = data;

  add_blanks (book, plan);
  for (guint i = 0; i < plan->n_recipes; i++)
    {
      g_autofree char *code = g_strdup_printf ("R-%05u", i);
      g_autofree char *name = make_name (plan, " on ");
      g_autoptr (BbRecipe) recipe = helper_make_recipe (code, name, plan->blanks[i % BLANKS]);
      g_autoptr (BbRevision) revision = NULL;

      helper_save (book, &bb_recipe_table, recipe);
      revision = helper_make_revision (recipe->id, plan->pretreat);
      if (!bb_book_save_revision (book, revision, error))
        return FALSE;
    }

  return TRUE;
}

/**
 * large_book_fill:
 * @book: an empty book
 * @n_recipes: how many recipes, each with a revision
 *
 * Fills a book in one transaction.
 */
void
large_book_fill (BbBook *book,
                 guint   n_recipes)
{
  Plan plan = { .n_recipes = n_recipes, .rand = g_rand_new_with_seed (SEED) };
  g_autoptr (GError) error = NULL;

  if (!bb_book_in_transaction (book, fill, &plan, &error))
    g_error ("%s", error->message);
  g_rand_free (plan.rand);
}

/**
 * large_book_pick_word:
 * @rand: what decides
 *
 * Returns: (transfer none): a word that many recipes of the book begin with
 */
const char *
large_book_pick_word (GRand *rand)
{
  return heads[g_rand_int_range (rand, 0, G_N_ELEMENTS (heads))];
}
