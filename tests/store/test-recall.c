/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-test"

#include "store-helpers.h"

#include <string.h>

#include "bb-generate.h"
#include "bb-recall.h"

typedef struct {
  BbBook *book;
  Shop *shop;
  gint64 pale;
} Bench;

/* Beside the shop a pale recipe on a heavier fabric of another fibre, older than its neighbour. */
static void
set_up (Bench         *bench,
        gconstpointer  data)
{
  g_autofree char *path = helper_new_path ();
  g_autoptr (BbBlank) blank = helper_make_blank ("TEE-2", "Fjord sweater");
  g_autoptr (BbRecipe) recipe = NULL;
  g_autoptr (BbRevision) revision = NULL;
  g_autoptr (BbColourway) colourway = NULL;
  g_autoptr (GError) error = NULL;

  (void) data;
  bench->book = helper_create (path);
  bench->shop = helper_fill (bench->book);
  helper_fill_jobs (bench->book, bench->shop);
  g_array_index (blank->composition, BbFibreShare, 1).fibre = BB_FIBRE_WOOL;
  blank->mass_g_per_m2 = 289;
  helper_save (bench->book, &bb_blank_table, blank);
  colourway = helper_make_colourway ("TEE-2-BONE", blank->id, "Old bone");
  g_free (colourway->srgb);
  colourway->srgb = g_strdup ("#e9e1d0");
  helper_save (bench->book, &bb_colourway_table, colourway);
  recipe = helper_make_recipe ("R-2", "Pale sweaters", blank->id);
  helper_save (bench->book, &bb_recipe_table, recipe);
  revision = helper_make_revision (recipe->id, bench->shop->pretreat->id);
  g_assert_true (bb_book_save_revision (bench->book, revision, &error));
  g_assert_true (bb_book_set_state (bench->book, revision->id, BB_STATE_ON_TRIAL, NULL, &error));
  g_assert_no_error (error);
  bench->pale = recipe->id;
}

static void
tear_down (Bench         *bench,
           gconstpointer  data)
{
  g_autoptr (GPtrArray) findings = bb_book_check (bench->book, NULL, NULL);

  (void) data;
  for (guint i = 0; i < findings->len; i++)
    g_error ("%s", (const char *) findings->pdata[i]);
  helper_shop_free (bench->shop);
  helper_close (bench->book);
}

static BbRecalled *
recall (Bench          *bench,
        const char     *text,
        const BbNarrow *narrow)
{
  const BbRecall asked = { .text = text, .narrow = narrow, .limit = 50 };
  g_autoptr (GError) error = NULL;
  BbRecalled *recalled = bb_book_recall (bench->book, &asked, &error);

  g_assert_no_error (error);

  return recalled;
}

static void
expect (Bench          *bench,
        const char     *text,
        const BbNarrow *narrow,
        guint           n_recipes,
        guint           n_jobs)
{
  g_autoptr (BbRecalled) recalled = recall (bench, text, narrow);

  g_test_message ("%s", text);
  g_assert_cmpuint (recalled->recipes->len, ==, n_recipes);
  g_assert_cmpuint (recalled->jobs->len, ==, n_jobs);
  g_assert_null (recalled->corrected);
}

static void
test_one_field_for_all (Bench         *bench,
                        gconstpointer  data)
{
  (void) data;
  expect (bench, "", NULL, 2, 1);
  expect (bench, NULL, NULL, 2, 1);
  expect (bench, "p", NULL, 1, 1);
  expect (bench, "h", NULL, 0, 1);
  expect (bench, "heron", NULL, 0, 1);
  expect (bench, "heron.png", NULL, 0, 1);
  expect (bench, "street choir navy", NULL, 0, 1);
  expect (bench, "2503", NULL, 0, 1);
  expect (bench, "bench tee", NULL, 1, 1);
  expect (bench, "quellenhof", NULL, 2, 1);
  expect (bench, "press cold", NULL, 0, 1);
  expect (bench, "R-1", NULL, 1, 1);
  expect (bench, "dark tees", NULL, 1, 1);
  expect (bench, "nothing such", NULL, 0, 0);
}

/* What a job is found by follows what is written later. */
static void
test_words_follow (Bench         *bench,
                   gconstpointer  data)
{
  g_autoptr (GError) error = NULL;

  (void) data;
  expect (bench, "kestrel", NULL, 0, 0);
  g_free (bench->shop->customer->name);
  bench->shop->customer->name = g_strdup ("Kestrel Lane Choir");
  helper_save (bench->book, &bb_customer_table, bench->shop->customer);
  expect (bench, "kestrel", NULL, 0, 1);
  expect (bench, "street choir", NULL, 0, 0);

  g_assert_true (bb_book_annotate_run (bench->book, bench->shop->run->id, "Washed out at the elbow.", &error));
  expect (bench, "elbow", NULL, 0, 1);
  g_free (bench->shop->colourway->name);
  bench->shop->colourway->name = g_strdup ("Ink");
  helper_save (bench->book, &bb_colourway_table, bench->shop->colourway);
  expect (bench, "ink", NULL, 1, 1);
  g_assert_true (bb_book_withdraw (bench->book, &bb_job_line_table, bench->shop->line->id, &error));
  expect (bench, "ink", NULL, 1, 0);
  g_assert_no_error (error);
}

static void
test_narrowed (Bench         *bench,
               gconstpointer  data)
{
  g_autoptr (BbNarrow) narrow = bb_narrow_new ();

  (void) data;
  narrow->fibre = BB_FIBRE_WOOL;
  expect (bench, NULL, narrow, 1, 0);
  narrow->fibre = BB_FIBRE_POLYESTER;
  expect (bench, NULL, narrow, 1, 1);
  expect (bench, "bench", narrow, 1, 1);
  expect (bench, "fjord", narrow, 0, 0);
  narrow->fibre = BB_FIBRE_SILK;
  expect (bench, NULL, narrow, 0, 0);
  narrow->fibre = BB_CHOICE_NONE;

  /* The ten from 280 has 289 in it, and is not enough. */
  narrow->mass_least_g_per_m2 = 280;
  expect (bench, NULL, narrow, 1, 0);
  narrow->mass_most_g_per_m2 = 288;
  expect (bench, NULL, narrow, 0, 0);
  narrow->mass_most_g_per_m2 = 289;
  expect (bench, NULL, narrow, 1, 0);
  narrow->mass_least_g_per_m2 = (double) NAN;
  expect (bench, NULL, narrow, 2, 1);
  narrow->mass_most_g_per_m2 = 180;
  expect (bench, NULL, narrow, 1, 1);
}

/* What is beyond all that a book can hold finds nothing, or everything, and is no error. */
static void
test_narrowed_beyond (Bench         *bench,
                      gconstpointer  data)
{
  g_autoptr (BbNarrow) narrow = bb_narrow_new ();

  (void) data;
  narrow->mass_most_g_per_m2 = 5;
  expect (bench, NULL, narrow, 0, 0);
  narrow->mass_most_g_per_m2 = (double) NAN;

  narrow->since = g_strdup ("1950-12-01");
  narrow->until = g_strdup ("1951-02-01");
  expect (bench, NULL, narrow, 0, 0);
  g_free (g_steal_pointer (&narrow->until));
  expect (bench, NULL, narrow, 2, 1);
}

/* Who asks for recipes in a state asks for no jobs. */
static void
test_narrowed_by_state (Bench         *bench,
                        gconstpointer  data)
{
  g_autoptr (BbNarrow) narrow = bb_narrow_new ();
  g_autoptr (GError) error = NULL;

  (void) data;
  narrow->state = BB_STATE_ON_TRIAL;
  expect (bench, NULL, narrow, 1, 0);
  g_assert_true (bb_book_set_state (bench->book, bench->shop->revision->id, BB_STATE_ON_TRIAL, NULL, &error));
  expect (bench, NULL, narrow, 2, 0);
  narrow->job_state = BB_JOB_RUNNING;
  expect (bench, NULL, narrow, 2, 1);
  narrow->state = BB_CHOICE_NONE;
  expect (bench, NULL, narrow, 0, 1);
  narrow->job_state = BB_JOB_DONE;
  expect (bench, NULL, narrow, 0, 0);
  g_assert_true (bb_book_set_job_state (bench->book, bench->shop->job->id, BB_JOB_DONE, &error));
  expect (bench, NULL, narrow, 0, 1);
  g_assert_no_error (error);
}

static void
set_days (BbNarrow   *narrow,
          const char *since,
          const char *until)
{
  g_free (narrow->since);
  narrow->since = g_strdup (since);
  g_free (narrow->until);
  narrow->until = g_strdup (until);
}

/* The job was ordered on 10 March 2025; the recipes are of today. */
static void
test_narrowed_by_day (Bench         *bench,
                      gconstpointer  data)
{
  const struct {
    const char *since;
    const char *until;
    guint n_jobs;
  } rows[] = {
    { "2025-03-10", "2025-03-10", 1 }, { "2025-03-11", "2025-03-31", 0 }, { "2025-03-01", "2025-03-09", 0 },
    { "2025-03-11", NULL, 0 }, { "2025-03-10", NULL, 1 }, { NULL, "2025-03-09", 0 }, { NULL, "2025-03-10", 1 },
    { "2024-06-15", "2026-02-28", 1 }, { "2025-01-01", "2025-12-31", 1 }, { "2026-01-01", "2026-12-31", 0 },
    { "2024-12-31T10:00:00Z", "2025-03-10", 1 },
  };
  g_autoptr (BbNarrow) narrow = bb_narrow_new ();

  (void) data;
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autoptr (BbRecalled) recalled = NULL;

      set_days (narrow, rows[i].since, rows[i].until);
      recalled = recall (bench, NULL, narrow);
      g_assert_cmpuint (recalled->jobs->len, ==, rows[i].n_jobs);
    }
}

static void
test_narrowing_is_checked (Bench         *bench,
                           gconstpointer  data)
{
  g_autoptr (BbNarrow) narrow = bb_narrow_new ();
  const BbRecall asked = { .narrow = narrow };
  g_autoptr (GError) error = NULL;

  (void) data;
  narrow->mass_least_g_per_m2 = 200;
  narrow->mass_most_g_per_m2 = 100;
  g_assert_null (bb_book_recall (bench->book, &asked, &error));
  g_assert_error (error, BB_MODEL_ERROR, BB_MODEL_ERROR_VALUE);
  g_clear_error (&error);
  narrow->mass_most_g_per_m2 = 300;
  set_days (narrow, "2025-03-10", "2025-03-09");
  g_assert_null (bb_book_recall (bench->book, &asked, &error));
  g_assert_error (error, BB_MODEL_ERROR, BB_MODEL_ERROR_VALUE);
  g_clear_error (&error);
  set_days (narrow, NULL, NULL);
  narrow->srgb = g_strdup ("#12345g");
  g_assert_null (bb_book_recall (bench->book, &asked, &error));
  g_assert_error (error, BB_MODEL_ERROR, BB_MODEL_ERROR_VALUE);
  g_assert_true (g_str_has_prefix (error->message, "srgb: #12345g is not a colour"));
}

static void
expect_corrected (Bench      *bench,
                  const char *typed,
                  const char *wanted,
                  guint       n_recipes,
                  guint       n_jobs)
{
  g_autoptr (BbRecalled) recalled = recall (bench, typed, NULL);

  g_assert_cmpstr (recalled->corrected, ==, wanted);
  g_assert_cmpuint (recalled->recipes->len, ==, n_recipes);
  g_assert_cmpuint (recalled->jobs->len, ==, n_jobs);
}

static void
test_mistyped_words (Bench         *bench,
                     gconstpointer  data)
{
  (void) data;
  expect_corrected (bench, "heorn", "heron", 0, 1);
  expect_corrected (bench, "Queleenhof", "quellenhof", 2, 1);
  expect_corrected (bench, "quelenh", "quellenhof", 2, 1);
  expect_corrected (bench, "swaeter pale", "sweater pale", 1, 0);
  expect_corrected (bench, "nav", NULL, 1, 1);
  expect_corrected (bench, "2530", NULL, 0, 0);
  expect_corrected (bench, "zzzzzzzz", NULL, 0, 0);
  /* Both words are in the book, and nothing has both. */
  expect_corrected (bench, "heron sweater", NULL, 0, 0);
}

static void
expect_thing (Bench         *bench,
              const char    *text,
              const BbTable *table,
              gint64         id)
{
  g_autoptr (BbRecalled) recalled = recall (bench, text, NULL);

  g_assert_true (recalled->table == table);
  if (table != NULL)
    g_assert_cmpint (recalled->id, ==, id);
}

static void
test_labels_name_the_very_thing (Bench         *bench,
                                 gconstpointer  data)
{
  const Shop *shop = bench->shop;

  (void) data;
  expect_thing (bench, "JOB 2503-01", &bb_job_table, shop->job->id);
  expect_thing (bench, " job 2503-01.1 ", &bb_job_line_table, shop->line->id);
  expect_thing (bench, "2503-01.1.1", &bb_run_table, shop->run->id);
  expect_thing (bench, "RECIPE R-1", &bb_recipe_table, shop->recipe->id);
  expect_thing (bench, "RECIPE R-1.1", &bb_revision_table, shop->revision->id);
  expect_thing (bench, "SPECIMEN W-1", &bb_wash_test_table, shop->wash_test->id);
  expect_thing (bench, "LOT L-1", &bb_lot_table, shop->lot->id);
  expect_thing (bench, "L-1", &bb_lot_table, shop->lot->id);
  expect_thing (bench, "LOT R-1", NULL, 0);
  expect_thing (bench, "heron", NULL, 0);
}

/* Specimens and jobs may have one number: both are told. */
static void
test_shared_number (Bench         *bench,
                    gconstpointer  data)
{
  g_autoptr (BbWashTest) specimen = helper_make_wash_test ("2503-01", bench->shop->revision->id);
  g_autoptr (BbRecalled) alone = recall (bench, "W-1", NULL);
  g_autoptr (BbRecalled) shared = NULL;

  (void) data;
  helper_save (bench->book, &bb_wash_test_table, specimen);
  shared = recall (bench, "2503-01", NULL);
  g_assert_true (shared->table == &bb_job_table);
  g_assert_cmpint (shared->id, ==, bench->shop->job->id);
  g_assert_cmpint (shared->specimen, ==, specimen->id);
  g_assert_cmpint (alone->specimen, ==, bench->shop->wash_test->id);
}

static void
test_by_colour (Bench         *bench,
                gconstpointer  data)
{
  g_autoptr (GArray) colourways = g_array_new (FALSE, FALSE, sizeof (gint64));
  g_autoptr (BbColourway) bone = bb_book_load_by_code (bench->book, &bb_colourway_table, "TEE-2-BONE", NULL);
  const BbRecall asked = { .colourways = colourways, .limit = 50 };
  g_autoptr (BbRecalled) recalled = NULL;
  g_autoptr (BbRecalled) other = NULL;

  (void) data;
  g_array_append_val (colourways, bench->shop->colourway->id);
  g_array_append_val (colourways, bone->id);
  recalled = bb_book_recall (bench->book, &asked, NULL);
  g_assert_cmpuint (recalled->recipes->len, ==, 2);
  g_assert_cmpint (g_array_index (recalled->recipes, gint64, 0), ==, bench->shop->recipe->id);
  g_assert_cmpint (g_array_index (recalled->recipe_colourways, gint64, 1), ==, bone->id);
  g_assert_cmpuint (recalled->jobs->len, ==, 1);

  g_array_remove_index (colourways, 0);
  other = bb_book_recall (bench->book, &asked, NULL);
  g_assert_cmpuint (other->recipes->len, ==, 1);
  g_assert_cmpint (g_array_index (other->recipes, gint64, 0), ==, bench->pale);
  g_assert_cmpuint (other->jobs->len, ==, 0);
}

/* A recipe for several colours is found by a colour only where that may be one of them. */
static void
test_by_shade (Bench         *bench,
               gconstpointer  data)
{
  g_autoptr (GArray) colourways = g_array_new (FALSE, FALSE, sizeof (gint64));
  BbRecall asked = { .colourways = colourways, .limit = 50 };

  (void) data;
  g_array_append_val (colourways, bench->shop->colourway->id);
  bench->shop->recipe->shade = BB_SHADE_LIGHT;
  helper_save (bench->book, &bb_recipe_table, bench->shop->recipe);
  for (guint i = 0; i < 3; i++)
    {
      const guint shades[] = { 0, 1u << BB_SHADE_ANY | 1u << BB_SHADE_DARK, 1u << BB_SHADE_LIGHT };
      g_autoptr (BbRecalled) recalled = NULL;

      asked.shades = shades[i];
      recalled = bb_book_recall (bench->book, &asked, NULL);
      g_assert_cmpuint (recalled->recipes->len, ==, i == 1 ? 0 : 1);
      g_assert_cmpuint (recalled->jobs->len, ==, 1);
    }
}

static gint64
last_revision (Bench  *bench,
               gint64  customer)
{
  g_autoptr (GError) error = NULL;
  gint64 revision = bb_book_find_last_revision (bench->book, customer, bench->shop->colourway->id, NULL, &error);

  g_assert_no_error (error);

  return revision;
}

static gint64
last_run (Bench *bench)
{
  gint64 run = -1;

  bb_book_find_last_revision (bench->book, 0, bench->shop->colourway->id, &run, NULL);

  return run;
}

static gint64
add_revision (Bench *bench)
{
  g_autoptr (BbRevision) revision = helper_make_revision (bench->shop->recipe->id, bench->shop->pretreat->id);
  g_autoptr (GError) error = NULL;

  revision->reason = g_strdup ("Warmer.");
  g_assert_true (bb_book_save_revision (bench->book, revision, &error));
  g_assert_no_error (error);
  helper_prove (bench->book, revision->id);

  return revision->id;
}

/* First the customer's own, then anybody's, then the newest recipe; and only what is proven. */
static void
test_last_revision (Bench         *bench,
                    gconstpointer  data)
{
  const Shop *shop = bench->shop;
  gint64 newer = 0;

  (void) data;
  g_assert_cmpint (last_revision (bench, shop->customer->id), ==, 0);
  g_assert_cmpint (last_run (bench), ==, 0);
  newer = add_revision (bench);
  g_assert_cmpint (last_revision (bench, shop->customer->id), ==, newer);
  helper_prove (bench->book, shop->revision->id);
  g_assert_cmpint (last_revision (bench, shop->customer->id), ==, shop->revision->id);
  g_assert_cmpint (last_revision (bench, 0), ==, shop->revision->id);
  g_assert_cmpint (last_revision (bench, 77), ==, shop->revision->id);
  g_assert_cmpint (last_run (bench), ==, shop->run->id);
}

/* A small one of those books by which the speed is measured is whole, and is found in. */
static void
test_generated (void)
{
  g_autofree char *path = helper_new_path ();
  BbBook *book = helper_create (path);
  const BbGenerate plan = { .n_revisions = 60, .n_runs = 40, .seed = 1 };
  const BbRecall asked = { .limit = 1000 };
  g_autoptr (BbRecalled) recalled = NULL;
  g_autoptr (GPtrArray) findings = NULL;
  g_autoptr (GError) error = NULL;

  g_assert_true (bb_book_generate (book, &plan, &error));
  g_assert_no_error (error);
  findings = bb_book_check (book, NULL, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (findings->len, ==, 0);
  recalled = bb_book_recall (book, &asked, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (recalled->recipes->len, >, 20);
  g_assert_cmpuint (recalled->jobs->len, >, 10);
  helper_close (book);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, G_TEST_OPTION_ISOLATE_DIRS, NULL);

#define ADD(path, func) g_test_add (path, Bench, NULL, set_up, func, tear_down)
  ADD ("/recall/one-field-for-all", test_one_field_for_all);
  ADD ("/recall/words-follow", test_words_follow);
  ADD ("/recall/narrowed", test_narrowed);
  ADD ("/recall/narrowed-beyond", test_narrowed_beyond);
  ADD ("/recall/narrowed-by-state", test_narrowed_by_state);
  ADD ("/recall/narrowed-by-day", test_narrowed_by_day);
  ADD ("/recall/narrowing-is-checked", test_narrowing_is_checked);
  ADD ("/recall/mistyped-words", test_mistyped_words);
  ADD ("/recall/labels-name-the-very-thing", test_labels_name_the_very_thing);
  ADD ("/recall/shared-number", test_shared_number);
  ADD ("/recall/by-colour", test_by_colour);
  ADD ("/recall/by-shade", test_by_shade);
  ADD ("/recall/last-revision", test_last_revision);
#undef ADD
  g_test_add_func ("/recall/generated", test_generated);

  return g_test_run ();
}
