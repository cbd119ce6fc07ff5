/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-test"

#include <glib/gstdio.h>
#include <stdio.h>
#include <stdlib.h>

#include "crowd.h"
#include "store-helpers.h"

/* How fast the book is with many recipes: `bench-store [RECIPES]`. All words are invented; the seed is fixed. */

#define RECIPES 20000
#define BLANKS 400
#define SEARCHES 500
#define OPENINGS 200
#define PAGES 200
#define LIMIT 50
#define PAGE 64
#define COMMITS 100

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

static const char *
pick (Plan               *plan,
      const char * const *words,
      guint               n_words)
{
  return words[g_rand_int_range (plan->rand, 0, (gint32) n_words)];
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
      g_autofree char *name = g_strdup_printf ("%s %s", pick (plan, heads, G_N_ELEMENTS (heads)),
                                               pick (plan, tails, G_N_ELEMENTS (tails)));
      g_autoptr (BbBlank) blank = helper_make_blank (code, name);
      g_autoptr (BbColourway) colourway = NULL;

      helper_save (book, &bb_blank_table, blank);
      plan->blanks[i] = blank->id;
      colourway = helper_make_colourway (colour_code, blank->id, pick (plan, heads, G_N_ELEMENTS (heads)));
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
      g_autofree char *name = g_strdup_printf ("%s on %s", pick (plan, heads, G_N_ELEMENTS (heads)),
                                               pick (plan, tails, G_N_ELEMENTS (tails)));
      g_autoptr (BbRecipe) recipe = helper_make_recipe (code, name, plan->blanks[i % BLANKS]);
      g_autoptr (BbRevision) revision = NULL;

      helper_save (book, &bb_recipe_table, recipe);
      revision = helper_make_revision (recipe->id, plan->pretreat);
      if (!bb_book_save_revision (book, revision, error))
        return FALSE;
    }

  return TRUE;
}

static int
compare_times (gconstpointer a,
               gconstpointer b)
{
  gint64 first = *(const gint64 *) a;
  gint64 second = *(const gint64 *) b;

  return (first > second) - (first < second);
}

static void
report (const char *what,
        GArray     *times)
{
  g_array_sort (times, compare_times);
  printf ("%-40s p50 %8.3f ms   p99 %8.3f ms   n %u\n", what,
          (double) g_array_index (times, gint64, times->len / 2) / 1000.0,
          (double) g_array_index (times, gint64, times->len * 99 / 100) / 1000.0, times->len);
}

static void
note (GArray *times,
      gint64  start)
{
  gint64 taken = g_get_monotonic_time () - start;

  g_array_append_val (times, taken);
}

static void
bench_search (BbBook        *book,
              Plan          *plan,
              const BbTable *table,
              guint          limit)
{
  g_autofree char *what = g_strdup_printf ("%s: search by a prefix, %s", table->name,
                                           limit > 0 ? "50 keys" : "all keys");
  g_autoptr (GArray) times = g_array_new (FALSE, FALSE, sizeof (gint64));

  for (guint i = 0; i < SEARCHES; i++)
    {
      const char *word = pick (plan, heads, G_N_ELEMENTS (heads));
      g_autofree char *prefix = g_strndup (word, (gsize) g_rand_int_range (plan->rand, 1, 5));
      gint64 start = g_get_monotonic_time ();
      g_autoptr (GArray) ids = helper_search (book, table, prefix, limit);

      note (times, start);
      g_assert_nonnull (ids);
    }
  report (what, times);
}

static void
bench_all (BbBook        *book,
           const BbTable *table)
{
  g_autofree char *what = g_strdup_printf ("%s: all keys", table->name);
  g_autoptr (GArray) times = g_array_new (FALSE, FALSE, sizeof (gint64));

  for (guint i = 0; i < PAGES; i++)
    {
      gint64 start = g_get_monotonic_time ();
      g_autoptr (GArray) ids = helper_search (book, table, "", 0);

      note (times, start);
      g_assert_cmpuint (ids->len, >, 0);
    }
  report (what, times);
}

static void
bench_pages (BbBook        *book,
             Plan          *plan,
             const BbTable *table)
{
  g_autofree char *what = g_strdup_printf ("%s: page of %u lines", table->name, PAGE);
  g_autoptr (GArray) ids = helper_search (book, table, "", 0);
  g_autoptr (GArray) times = g_array_new (FALSE, FALSE, sizeof (gint64));
  guint page = MIN (PAGE, ids->len);

  for (guint i = 0; i < PAGES; i++)
    {
      guint from = (guint) g_rand_int_range (plan->rand, 0, (gint32) (ids->len - page) + 1);
      gint64 start = g_get_monotonic_time ();
      g_autoptr (GPtrArray) lines = bb_book_load_lines (book, table, &g_array_index (ids, gint64, from), page, NULL);

      note (times, start);
      g_assert_cmpuint (lines->len, ==, page);
    }
  report (what, times);
}

static void
bench_list (BbBook        *book,
            Plan          *plan,
            const BbTable *table)
{
  bench_all (book, table);
  bench_search (book, plan, table, LIMIT);
  bench_search (book, plan, table, 0);
  bench_pages (book, plan, table);
}

static void
bench_openings (const char *path)
{
  g_autoptr (GArray) times = g_array_new (FALSE, FALSE, sizeof (gint64));

  for (guint i = 0; i < OPENINGS; i++)
    {
      gint64 start = g_get_monotonic_time ();
      BbBook *book = helper_open (path);

      note (times, start);
      helper_close (book);
    }
  report ("open, after a clean close", times);
}

static void
bench_commits (BbBook *book)
{
  g_autoptr (GArray) times = g_array_new (FALSE, FALSE, sizeof (gint64));

  for (guint i = 0; i < COMMITS; i++)
    {
      g_autofree char *code = g_strdup_printf ("C-%u", i);
      g_autoptr (BbBlank) blank = helper_make_blank (code, "Tee");
      gint64 start = g_get_monotonic_time ();

      helper_save (book, &bb_blank_table, blank);
      note (times, start);
    }
  report ("save one blank, on disk", times);
}

static void
bench_check (BbBook *book)
{
  gint64 start = g_get_monotonic_time ();
  g_autoptr (GPtrArray) findings = bb_book_check (book, NULL, NULL);

  printf ("%-40s %.3f s\n", "check the whole book", (double) (g_get_monotonic_time () - start) / 1e6);
  g_assert_cmpuint (findings->len, ==, 0);
}

static void
remove_folder (const char *folder)
{
  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);
  const char *name = NULL;

  while ((name = g_dir_read_name (dir)) != NULL)
    {
      g_autofree char *path = g_build_filename (folder, name, NULL);

      g_remove (path);
    }
  g_rmdir (folder);
}

int
main (int   argc,
      char *argv[])
{
  g_autofree char *folder = g_dir_make_tmp ("bench-store-XXXXXX", NULL);
  g_autofree char *path = g_build_filename (folder, "bench.book", NULL);
  g_autofree char *crowd = g_build_filename (folder, "crowd.book", NULL);
  Plan plan = { .n_recipes = argc > 1 ? (guint) atoi (argv[1]) : RECIPES, .rand = g_rand_new_with_seed (20250314) };
  BbBook *book = helper_create (path);
  g_autoptr (GError) error = NULL;
  gint64 start = g_get_monotonic_time ();
  GStatBuf info;

  g_assert_true (bb_book_in_transaction (book, fill, &plan, &error));
  g_assert_no_error (error);
  printf ("%u recipes with a revision each: %.0f recipes/s, with events, seals and search\n", plan.n_recipes,
          (double) plan.n_recipes * 1e6 / (double) (g_get_monotonic_time () - start));
  helper_close (book);
  g_assert_cmpint (g_stat (path, &info), ==, 0);
  printf ("%-40s %.1f MiB\n", "the file", (double) info.st_size / 1048576.0);

  bench_openings (path);
  book = helper_open (path);
  bench_list (book, &plan, &bb_recipe_table);
  bench_commits (book);
  bench_check (book);
  helper_close (book);

  crowd_make (crowd, plan.n_recipes);
  book = helper_open (crowd);
  bench_list (book, &plan, &bb_blank_table);
  bench_list (book, &plan, &bb_supply_table);
  bench_list (book, &plan, &bb_wash_test_table);
  helper_close (book);
  remove_folder (folder);
  g_rand_free (plan.rand);

  return 0;
}
