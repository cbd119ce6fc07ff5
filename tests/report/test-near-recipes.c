/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-test"

#include <string.h>

#include "bb-like-load.h"
#include "bb-near-recipes.h"
#include "store-helpers.h"

static const BbUnitContext metric = { .system = BB_UNITS_METRIC };

/* The shop's recipe is for any colour of its tee; @wool is another blank without a recipe, and @black its colour. */
typedef struct {
  BbBook *book;
  Shop *shop;
  gint64 wool;
  gint64 black;
} Bench;

static void
set_up (Bench         *bench,
        gconstpointer  data)
{
  g_autofree char *path = helper_new_path ();
  g_autoptr (BbBlank) blank = helper_make_blank ("WOOL-1", "Fjord sweater");
  g_autoptr (BbColourway) colourway = NULL;

  (void) data;
  bench->book = helper_create (path);
  bench->shop = helper_fill (bench->book);
  g_array_index (blank->composition, BbFibreShare, 1).fibre = BB_FIBRE_WOOL;
  blank->mass_g_per_m2 = 280;
  helper_save (bench->book, &bb_blank_table, blank);
  colourway = helper_make_colourway ("WOOL-1-BLACK", blank->id, "Black");
  g_free (colourway->srgb);
  colourway->srgb = g_strdup ("#17171a");
  helper_save (bench->book, &bb_colourway_table, colourway);
  bench->wool = blank->id;
  bench->black = colourway->id;
}

static void
tear_down (Bench         *bench,
           gconstpointer  data)
{
  (void) data;
  helper_shop_free (bench->shop);
  helper_close (bench->book);
}

static void
add_recipe (Bench      *bench,
            const char *code,
            gint64      blank,
            gint64      colourway)
{
  g_autoptr (BbRecipe) recipe = helper_make_recipe (code, code, blank);
  g_autoptr (BbRevision) revision = NULL;
  g_autoptr (GError) error = NULL;

  recipe->colourway = colourway;
  helper_save (bench->book, &bb_recipe_table, recipe);
  revision = helper_make_revision (recipe->id, bench->shop->pretreat->id);
  g_assert_true (bb_book_save_revision (bench->book, revision, &error));
  g_assert_no_error (error);
}

static BbNearRecipes *
load (Bench  *bench,
      gint64  blank,
      gint64  colourway,
      guint   limit)
{
  g_autoptr (GError) error = NULL;
  BbNearRecipes *near = bb_near_recipes_load (bench->book, blank, colourway, limit, &error);

  g_assert_no_error (error);

  return near;
}

static void
expect (const BbNearRecipes *near,
        guint                position,
        const char          *code,
        gboolean             same,
        const char          *reasons)
{
  g_autofree char *told = bb_near_recipes_dup_reasons (near, position, &metric);

  g_assert_cmpuint (position, <, near->recipes->len);
  g_assert_cmpstr (((const BbKnownRecipe *) near->recipes->pdata[position])->code, ==, code);
  g_assert_cmpint (bb_near_recipes_is_same_garment (near, position), ==, same);
  g_assert_cmpstr (told, ==, reasons);
}

/* A garment that nobody has printed: the colourway tells which it is. */
static void
test_unprinted (Bench         *bench,
                gconstpointer  data)
{
  g_autoptr (BbNearRecipes) near = load (bench, 0, bench->black, 5);
  g_autoptr (GError) error = NULL;

  (void) data;
  g_assert_cmpint (near->blank->id, ==, bench->wool);
  g_assert_cmpint (near->colourway->id, ==, bench->black);
  g_assert_cmpuint (near->recipes->len, ==, 1);
  expect (near, 0, "R-1", FALSE,
          "60 % cotton, 40 % polyester instead of 60 % cotton, 40 % wool; for any colour; 100 g/m² lighter; draft");
  g_assert_false (bb_near_recipes_can_propose (near));
  g_assert_null (bb_near_recipes_propose (near, bench->book, &metric, &error));
  g_assert_error (error, BB_STORE_ERROR, BB_STORE_ERROR_NOT_FOUND);
}

/* Nearest first, each at its own place also where others were dropped; of equals the newest. */
static void
test_order_and_limit (Bench         *bench,
                      gconstpointer  data)
{
  g_autoptr (BbNearRecipes) all = NULL;
  g_autoptr (BbNearRecipes) few = NULL;

  (void) data;
  add_recipe (bench, "R-2", bench->shop->blank->id, bench->shop->colourway->id);
  add_recipe (bench, "R-3", bench->wool, bench->black);
  add_recipe (bench, "R-4", bench->wool, 0);
  all = load (bench, bench->wool, bench->black, 10);
  g_assert_cmpuint (all->recipes->len, ==, 4);
  expect (all, 0, "R-3", TRUE, "same fabric; same colour; draft");
  expect (all, 1, "R-4", TRUE, "same fabric; for any colour; draft");
  for (guint i = 1; i < 4; i++)
    g_assert_cmpfloat (bb_near_recipes_get_distance (all, i), >=, bb_near_recipes_get_distance (all, i - 1));

  few = load (bench, bench->shop->blank->id, 0, 2);
  g_assert_cmpuint (few->recipes->len, ==, 2);
  expect (few, 0, "R-2", TRUE, "same fabric; draft");
  expect (few, 1, "R-1", TRUE, "same fabric; draft");
}

/* The number of specimens is that of the signature; what is withdrawn is nothing to go by. */
static void
test_proof (Bench         *bench,
            gconstpointer  data)
{
  g_autoptr (BbNearRecipes) proven = NULL;
  g_autoptr (BbNearRecipes) none = NULL;
  g_autoptr (GError) error = NULL;

  (void) data;
  helper_prove (bench->book, bench->shop->revision->id);
  proven = load (bench, bench->shop->blank->id, 0, 5);
  g_assert_true (bb_near_recipes_can_propose (proven));
  g_assert_cmpint (((const BbKnownRecipe *) proven->recipes->pdata[0])->passed, >, 0);

  g_assert_true (bb_book_withdraw (bench->book, &bb_recipe_table, bench->shop->recipe->id, &error));
  g_assert_no_error (error);
  none = load (bench, bench->shop->blank->id, 0, 5);
  g_assert_cmpuint (none->recipes->len, ==, 0);
  g_assert_false (bb_near_recipes_can_propose (none));
}

/* From the one that is proven, within what its supplier allows, and it says so; no draft is a source. */
static void
test_proposal (Bench         *bench,
               gconstpointer  data)
{
  g_autoptr (BbNearRecipes) near = NULL;
  g_autoptr (BbRevision) proposed = NULL;
  g_autoptr (GError) error = NULL;

  (void) data;
  helper_prove (bench->book, bench->shop->revision->id);
  add_recipe (bench, "R-3", bench->wool, bench->black);
  bench->shop->pretreat->laydown_most_g_per_m2 = 100;
  helper_save (bench->book, &bb_supply_table, bench->shop->pretreat);
  near = load (bench, 0, bench->black, 5);
  g_assert_cmpuint (near->recipes->len, ==, 2);
  proposed = bb_near_recipes_propose (near, bench->book, &metric, &error);
  g_assert_no_error (error);
  g_assert_cmpint (proposed->id, ==, BB_INTEGER_NONE);
  g_assert_cmpint (proposed->recipe, ==, 0);
  g_assert_cmpint (proposed->pretreat_product, ==, bench->shop->pretreat->id);
  g_assert_cmpfloat (proposed->pretreat_laydown_g_per_m2, ==, 100);
  g_assert_cmpstr (proposed->reason, ==, "Proposed from R-1.1. Not proven on this garment.");
  g_assert_nonnull (strstr (proposed->note, "Laydown lowered to 100 g/m²"));
}

/* What is proven on light garments is nothing to start from for black. */
static void
test_proposal_for_shade (Bench         *bench,
                         gconstpointer  data)
{
  g_autoptr (BbNearRecipes) black = NULL;
  g_autoptr (BbNearRecipes) any = NULL;

  (void) data;
  helper_prove (bench->book, bench->shop->revision->id);
  bench->shop->recipe->shade = BB_SHADE_LIGHT;
  helper_save (bench->book, &bb_recipe_table, bench->shop->recipe);
  black = load (bench, 0, bench->black, 5);
  any = load (bench, bench->wool, 0, 5);
  g_assert_false (bb_near_recipes_can_propose (black));
  g_assert_true (bb_near_recipes_can_propose (any));
}

/* A proven recipe for several colours of a shade, that sprays so much. */
static void
add_proven (Bench      *bench,
            const char *code,
            BbShade     shade,
            double      laydown_g_per_m2)
{
  g_autoptr (BbRecipe) recipe = helper_make_recipe (code, code, bench->shop->blank->id);
  g_autoptr (BbRevision) revision = NULL;
  g_autoptr (GError) error = NULL;

  recipe->shade = shade;
  helper_save (bench->book, &bb_recipe_table, recipe);
  revision = helper_make_revision (recipe->id, bench->shop->pretreat->id);
  revision->pretreat_laydown_g_per_m2 = laydown_g_per_m2;
  g_assert_true (bb_book_save_revision (bench->book, revision, &error));
  g_assert_no_error (error);
  helper_prove (bench->book, revision->id);
}

/* Recipes for dark and for white garments, alike in all else, are never averaged: without a colour one is asked for. */
static void
test_no_mixed_shades (Bench         *bench,
                      gconstpointer  data)
{
  g_autoptr (BbNearRecipes) any = NULL;
  g_autoptr (BbNearRecipes) black = NULL;
  g_autoptr (BbRevision) proposed = NULL;
  g_autoptr (GError) error = NULL;

  (void) data;
  add_proven (bench, "DARK", BB_SHADE_DARK, 160);
  any = load (bench, bench->wool, 0, 8);
  g_assert_false (bb_near_recipes_needs_colour (any));
  g_assert_true (bb_near_recipes_can_propose (any));
  g_assert_cmpint (bb_near_recipes_get_shade (any), ==, BB_SHADE_DARK);
  g_clear_pointer (&any, bb_near_recipes_free);

  add_proven (bench, "WHITE", BB_SHADE_WHITE, 40);
  any = load (bench, bench->wool, 0, 8);
  g_assert_true (bb_near_recipes_needs_colour (any));
  g_assert_false (bb_near_recipes_can_propose (any));
  g_assert_null (bb_near_recipes_propose (any, bench->book, &metric, &error));
  g_assert_error (error, BB_STORE_ERROR, BB_STORE_ERROR_NOT_FOUND);
  g_clear_error (&error);

  black = load (bench, 0, bench->black, 8);
  g_assert_false (bb_near_recipes_needs_colour (black));
  proposed = bb_near_recipes_propose (black, bench->book, &metric, &error);
  g_assert_no_error (error);
  g_assert_cmpstr (proposed->reason, ==, "Proposed from DARK.1. Not proven on this garment.");
  g_assert_cmpfloat (proposed->pretreat_laydown_g_per_m2, ==, 160);
}

static void
test_no_such_garment (Bench         *bench,
                      gconstpointer  data)
{
  g_autoptr (GError) error = NULL;

  (void) data;
  g_assert_null (bb_near_recipes_load (bench->book, 0, 9999, 5, &error));
  g_assert_error (error, BB_STORE_ERROR, BB_STORE_ERROR_NOT_FOUND);
}

static void
test_like (Bench         *bench,
           gconstpointer  data)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GArray) like = bb_load_colourways_like (bench->book, "#161618", &error);

  (void) data;
  g_assert_no_error (error);
  g_assert_cmpuint (like->len, ==, 2);
  g_assert_cmpint (g_array_index (like, gint64, 0), ==, bench->black);
  g_assert_cmpint (g_array_index (like, gint64, 1), ==, bench->shop->colourway->id);
}

#define ADD(path, func) g_test_add ("/near-recipes/" path, Bench, NULL, set_up, func, tear_down)

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, G_TEST_OPTION_ISOLATE_DIRS, NULL);
  ADD ("unprinted", test_unprinted);
  ADD ("order-and-limit", test_order_and_limit);
  ADD ("proof", test_proof);
  ADD ("proposal", test_proposal);
  ADD ("proposal-for-shade", test_proposal_for_shade);
  ADD ("no-mixed-shades", test_no_mixed_shades);
  ADD ("no-such-garment", test_no_such_garment);
  ADD ("like", test_like);

  return g_test_run ();
}
