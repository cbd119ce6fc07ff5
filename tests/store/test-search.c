/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-test"

#include "store-helpers.h"

#include <string.h>

static guint
count (BbBook     *book,
       const char *text)
{
  g_autoptr (GArray) ids = helper_search (book, &bb_recipe_table, text, 0);

  return ids->len;
}

static gint64
add_recipe (BbBook     *book,
            const char *code,
            const char *name,
            gint64      blank)
{
  g_autoptr (BbRecipe) recipe = helper_make_recipe (code, name, blank);

  if (blank == 0)
    recipe->family = g_strdup ("Light tees");
  helper_save (book, &bb_recipe_table, recipe);

  return recipe->id;
}

static void
test_words_and_beginnings (void)
{
  g_autofree char *path = helper_new_path ();
  BbBook *book = helper_create (path);
  g_autoptr (Shop) shop = helper_fill (book);

  shop->recipe->note = g_strdup ("Ask for the würzige Piqué variant.");
  helper_save (book, &bb_recipe_table, shop->recipe);
  add_recipe (book, "R-2", "Pale fleece", 0);

  g_assert_cmpuint (count (book, "dark"), ==, 1);
  g_assert_cmpuint (count (book, "DAR"), ==, 1);
  g_assert_cmpuint (count (book, "d t"), ==, 1);
  g_assert_cmpuint (count (book, "ark"), ==, 0);
  g_assert_cmpuint (count (book, "tees"), ==, 2);
  g_assert_cmpuint (count (book, "tees pale"), ==, 1);
  g_assert_cmpuint (count (book, "R-1"), ==, 1);
  g_assert_cmpuint (count (book, "bench"), ==, 1);
  g_assert_cmpuint (count (book, "TEE-1"), ==, 1);
  g_assert_cmpuint (count (book, "quellen"), ==, 1);
  g_assert_cmpuint (count (book, "navy"), ==, 1);
  g_assert_cmpuint (count (book, "pique"), ==, 1);
  g_assert_cmpuint (count (book, "WURZIGE"), ==, 1);
  g_assert_cmpuint (count (book, "würz"), ==, 1);
  g_assert_cmpuint (count (book, ""), ==, 2);
  g_assert_cmpuint (count (book, NULL), ==, 2);
  g_assert_cmpuint (count (book, "  \t "), ==, 2);
  helper_close (book);
}

/* What the search's language would read as an operator is a word or nothing here. */
static void
test_operators_are_words (void)
{
  g_autofree char *path = helper_new_path ();
  BbBook *book = helper_create (path);
  const char *texts[] = {
    "\"", "\"\"", "\"dark", "dark\"", "da\"rk", "*", "dark*", "*dark", "^dark", "-dark", "NOT dark", "dark AND", "OR",
    "NEAR(dark tees)", "NEAR", "code:dark", "{code name}: dark", "dark + tees", "(dark", "dark)", "a:b:c", "'",
    "''; --", "'; DROP TABLE recipe; --", "\\", "%", "_", "?1", "@x", "$y", "\xff\xfe", "dark \xc3", ";",
    "rank:bm25(10)", "search MATCH", "\x01", "\xe2\x80\xae",
  };
  g_autoptr (GString) endless = g_string_new (NULL);

  add_recipe (book, "R-1", "Dark tees NEAR the window", 0);
  for (guint i = 0; i < G_N_ELEMENTS (texts); i++)
    {
      g_autoptr (GArray) ids = helper_search (book, &bb_recipe_table, texts[i], 50);

      g_assert_nonnull (ids);
    }

  g_assert_cmpuint (count (book, "NEAR window"), ==, 1);
  g_assert_cmpuint (count (book, "NOT dark"), ==, 0);
  g_assert_cmpuint (count (book, "\"dark\" (tees)"), ==, 1);
  g_assert_cmpuint (count (book, "-"), ==, 1);

  for (guint i = 0; i < 20000; i++)
    g_string_append (endless, "dark \"");
  g_assert_cmpuint (count (book, endless->str), ==, 1);
  helper_close (book);
}

static void
test_newest_first_and_limit (void)
{
  g_autofree char *path = helper_new_path ();
  BbBook *book = helper_create (path);
  gint64 first = add_recipe (book, "R-1", "Dark tees", 0);
  gint64 second = add_recipe (book, "R-2", "Dark hoods", 0);
  gint64 third = add_recipe (book, "R-3", "Dark caps", 0);
  const char *texts[] = { "dark", "" };

  for (guint i = 0; i < G_N_ELEMENTS (texts); i++)
    {
      g_autoptr (GArray) all = helper_search (book, &bb_recipe_table, texts[i], 0);
      g_autoptr (GArray) two = helper_search (book, &bb_recipe_table, texts[i], 2);

      g_assert_cmpuint (all->len, ==, 3);
      g_assert_cmpint (g_array_index (all, gint64, 0), ==, third);
      g_assert_cmpint (g_array_index (all, gint64, 1), ==, second);
      g_assert_cmpint (g_array_index (all, gint64, 2), ==, first);
      g_assert_cmpuint (two->len, ==, 2);
      g_assert_cmpint (g_array_index (two, gint64, 0), ==, third);
    }
  helper_close (book);
}

static void
test_withdrawn_are_left_out (void)
{
  g_autofree char *path = helper_new_path ();
  BbBook *book = helper_create (path);
  gint64 recipe = add_recipe (book, "R-1", "Dark tees", 0);
  g_autoptr (GError) error = NULL;

  g_assert_true (bb_book_withdraw (book, &bb_recipe_table, recipe, &error));
  g_assert_cmpuint (count (book, "dark"), ==, 0);
  g_assert_cmpuint (count (book, ""), ==, 0);
  g_assert_true (bb_book_restore (book, &bb_recipe_table, recipe, &error));
  g_assert_no_error (error);
  g_assert_cmpuint (count (book, "dark"), ==, 1);
  g_assert_cmpuint (count (book, ""), ==, 1);
  helper_close (book);
}

static void
assert_found (BbBook      *book,
              const char  *text,
              BbWithdrawn  withdrawn,
              gint64       first,
              gint64       second)
{
  const BbQuery query = { .text = text, .withdrawn = withdrawn };
  g_autoptr (GError) error = NULL;
  g_autoptr (GArray) found = bb_book_search (book, &bb_recipe_table, &query, &error);

  g_assert_no_error (error);
  g_assert_cmpuint (found->len, ==, (guint) (first != 0) + (guint) (second != 0));
  if (first != 0)
    g_assert_cmpint (g_array_index (found, gint64, 0), ==, first);
  if (second != 0)
    g_assert_cmpint (g_array_index (found, gint64, 1), ==, second);
}

/* Whoever asks for what is withdrawn finds it, by its words as they are now, and before what is in use. */
static void
test_withdrawn_are_found_when_asked_for (void)
{
  g_autofree char *path = helper_new_path ();
  BbBook *book = helper_create (path);
  const gint64 gone = add_recipe (book, "R-1", "Dark tees", 0);
  const gint64 kept = add_recipe (book, "R-2", "Dark hoods", 0);
  const char * const texts[] = { "", "dark" };
  g_autoptr (BbRecipe) recipe = NULL;
  g_autoptr (GPtrArray) findings = NULL;
  g_autoptr (GError) error = NULL;
  guint n = 7;

  g_assert_true (bb_book_count_withdrawn (book, &bb_recipe_table, &n, &error));
  g_assert_cmpuint (n, ==, 0);
  g_assert_true (bb_book_withdraw (book, &bb_recipe_table, gone, &error));
  g_assert_true (bb_book_count_withdrawn (book, &bb_recipe_table, &n, &error));
  g_assert_cmpuint (n, ==, 1);
  g_assert_true (bb_book_count_withdrawn (book, &bb_job_table, &n, &error));
  g_assert_cmpuint (n, ==, 0);
  for (guint i = 0; i < G_N_ELEMENTS (texts); i++)
    {
      assert_found (book, texts[i], BB_WITHDRAWN_NONE, kept, 0);
      assert_found (book, texts[i], BB_WITHDRAWN_TOO, gone, kept);
      assert_found (book, texts[i], BB_WITHDRAWN_ONLY, gone, 0);
    }

  recipe = bb_book_load (book, &bb_recipe_table, gone, &error);
  g_free (recipe->name);
  recipe->name = g_strdup ("Pale tees");
  helper_save (book, &bb_recipe_table, recipe);
  assert_found (book, "dark", BB_WITHDRAWN_TOO, kept, 0);
  assert_found (book, "pale", BB_WITHDRAWN_ONLY, gone, 0);
  assert_found (book, "pale", BB_WITHDRAWN_NONE, 0, 0);

  g_assert_true (bb_book_restore (book, &bb_recipe_table, gone, &error));
  assert_found (book, "pale", BB_WITHDRAWN_NONE, gone, 0);
  assert_found (book, "pale", BB_WITHDRAWN_ONLY, 0, 0);
  findings = bb_book_check (book, NULL, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (findings->len, ==, 0);
  helper_close (book);
}

static gboolean
rename_and_fail (BbBook    *book,
                 gpointer   data,
                 GError   **error)
{
  BbRecipe *recipe = data;

  g_free (recipe->name);
  recipe->name = g_strdup ("Ruby");
  helper_save (book, &bb_recipe_table, recipe);
  g_set_error_literal (error, BB_STORE_ERROR, BB_STORE_ERROR_REFUSED, "no");

  return FALSE;
}

/* Whatever a recipe takes its words from, a change of it changes the words. */
static void
test_follows_every_change (void)
{
  g_autofree char *path = helper_new_path ();
  BbBook *book = helper_create (path);
  g_autoptr (Shop) shop = helper_fill (book);
  g_autoptr (BbBlank) other = helper_make_blank ("HOOD-1", "Heavy hood");
  g_autoptr (GPtrArray) findings = NULL;
  g_autoptr (GError) error = NULL;

  g_free (shop->blank->name);
  shop->blank->name = g_strdup ("Garnet");
  helper_save (book, &bb_blank_table, shop->blank);
  g_assert_cmpuint (count (book, "bench"), ==, 0);
  g_assert_cmpuint (count (book, "garnet"), ==, 1);

  g_free (shop->colourway->name);
  shop->colourway->name = g_strdup ("Opal");
  helper_save (book, &bb_colourway_table, shop->colourway);
  g_assert_cmpuint (count (book, "navy"), ==, 0);
  g_assert_cmpuint (count (book, "opal"), ==, 1);

  helper_save (book, &bb_blank_table, other);
  shop->colourway->blank = other->id;
  helper_save (book, &bb_colourway_table, shop->colourway);
  g_assert_cmpuint (count (book, "opal"), ==, 0);
  shop->recipe->colourway = shop->colourway->id;
  helper_save (book, &bb_recipe_table, shop->recipe);
  g_assert_cmpuint (count (book, "opal"), ==, 1);

  g_assert_cmpuint (count (book, "amber"), ==, 0);
  g_free (shop->revision->reason);
  shop->revision->reason = g_strdup ("Warmer.");
  shop->revision->note = g_strdup ("Smells of amber.");
  g_assert_true (bb_book_save_revision (book, shop->revision, &error));
  g_assert_cmpuint (count (book, "amber"), ==, 1);

  g_assert_false (bb_book_in_transaction (book, rename_and_fail, shop->recipe, NULL));
  g_assert_cmpuint (count (book, "ruby"), ==, 0);
  g_assert_cmpuint (count (book, "dark"), ==, 1);

  findings = bb_book_check (book, NULL, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (findings->len, ==, 0);
  helper_close (book);
}

static guint
count_plans (BbBook     *book,
             const char *text)
{
  g_autoptr (GArray) ids = helper_search (book, &bb_wash_plan_table, text, 0);

  return ids->len;
}

/* A wash plan is found by its standard, its procedure and how it dries, as the screen says them. */
static void
test_wash_plans (void)
{
  g_autofree char *path = helper_new_path ();
  BbBook *book = helper_create (path);
  g_autoptr (BbWashPlan) own = helper_make_wash_plan ("OUR-40");
  g_autoptr (BbWashPlan) plan = helper_make_wash_plan ("6330-4N-F");

  helper_save (book, &bb_wash_plan_table, own);
  plan->standard = BB_WASH_ISO_6330;
  plan->publication = g_strdup ("ISO 6330:2021");
  plan->procedure = g_strdup ("4N");
  plan->origin = BB_PLAN_ORIGIN_MEMORY;
  plan->drying = BB_DRYING_TUMBLE;
  helper_save (book, &bb_wash_plan_table, plan);

  g_assert_cmpuint (count_plans (book, ""), ==, 2);
  g_assert_cmpuint (count_plans (book, "household"), ==, 2);
  g_assert_cmpuint (count_plans (book, "iso 6330"), ==, 1);
  g_assert_cmpuint (count_plans (book, "4n"), ==, 1);
  g_assert_cmpuint (count_plans (book, "tumble"), ==, 1);
  g_assert_cmpuint (count_plans (book, "memory"), ==, 1);
  g_assert_cmpuint (count_plans (book, "our"), ==, 1);
  g_assert_true (bb_book_withdraw (book, &bb_wash_plan_table, plan->id, NULL));
  g_assert_cmpuint (count_plans (book, "household"), ==, 1);
  helper_close (book);
}

static void
test_lines (void)
{
  g_autofree char *path = helper_new_path ();
  BbBook *book = helper_create (path);
  g_autoptr (Shop) shop = helper_fill (book);
  gint64 ids[202];
  g_autoptr (GPtrArray) lines = NULL;
  const BbRecipeLine *line = NULL;
  g_autoptr (GError) error = NULL;

  ids[0] = 99999;
  ids[201] = shop->recipe->id;
  for (guint i = 1; i <= 200; i++)
    {
      g_autofree char *code = g_strdup_printf ("S-%u", i);

      ids[201 - i] = add_recipe (book, code, "Series", 0);
    }
  shop->recipe->colourway = shop->colourway->id;
  helper_save (book, &bb_recipe_table, shop->recipe);
  g_assert_true (bb_book_set_state (book, shop->revision->id, BB_STATE_ON_TRIAL, NULL, &error));

  lines = bb_book_load_lines (book, &bb_recipe_table, ids, G_N_ELEMENTS (ids), &error);
  g_assert_no_error (error);
  g_assert_cmpuint (lines->len, ==, 201);
  for (guint i = 0; i < lines->len; i++)
    g_assert_cmpint (((const BbRecipeLine *) g_ptr_array_index (lines, i))->id, ==, ids[i + 1]);

  line = g_ptr_array_index (lines, 200);
  g_assert_cmpstr (line->code, ==, "R-1");
  g_assert_cmpstr (line->blank, ==, "Bench tee");
  g_assert_cmpstr (line->colourway, ==, "Deep navy");
  g_assert_cmpstr (line->srgb, ==, "#1b2a49");
  g_assert_cmpint (line->revision, ==, shop->revision->id);
  g_assert_cmpint (line->number, ==, 1);
  g_assert_cmpint (line->state, ==, BB_STATE_ON_TRIAL);
  g_assert_cmpfloat (line->pretreat_laydown_g_per_m2, ==, shop->revision->pretreat_laydown_g_per_m2);
  g_assert_cmpstr (line->made_at, ==, shop->revision->made_at);

  line = g_ptr_array_index (lines, 0);
  g_assert_cmpstr (line->blank, ==, "Light tees");
  g_assert_cmpstr (line->colourway, ==, "");
  g_assert_cmpint (line->revision, ==, BB_INTEGER_NONE);
  g_assert_cmpint (line->state, ==, BB_CHOICE_NONE);
  helper_close (book);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, G_TEST_OPTION_ISOLATE_DIRS, NULL);

  g_test_add_func ("/search/words-and-beginnings", test_words_and_beginnings);
  g_test_add_func ("/search/operators-are-words", test_operators_are_words);
  g_test_add_func ("/search/newest-first-and-limit", test_newest_first_and_limit);
  g_test_add_func ("/search/withdrawn-are-left-out", test_withdrawn_are_left_out);
  g_test_add_func ("/search/withdrawn-are-found-when-asked-for", test_withdrawn_are_found_when_asked_for);
  g_test_add_func ("/search/follows-every-change", test_follows_every_change);
  g_test_add_func ("/search/wash-plans", test_wash_plans);
  g_test_add_func ("/search/lines", test_lines);

  return g_test_run ();
}
