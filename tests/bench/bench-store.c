/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-test"

#include <glib/gstdio.h>
#include <stdio.h>
#include <stdlib.h>

#include "crowd.h"
#include "large-book.h"
#include "store-helpers.h"

/* How fast the book is with many recipes: `bench-store [RECIPES]`. */

#define SEARCHES 500
#define OPENINGS 200
#define PAGES 200
#define LIMIT 50
#define PAGE 64
#define COMMITS 100

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
              GRand         *rand,
              const BbTable *table,
              guint          limit)
{
  g_autofree char *what = g_strdup_printf ("%s: search by a prefix, %s", table->name,
                                           limit > 0 ? "50 keys" : "all keys");
  g_autoptr (GArray) times = g_array_new (FALSE, FALSE, sizeof (gint64));

  for (guint i = 0; i < SEARCHES; i++)
    {
      const char *word = large_book_pick_word (rand);
      g_autofree char *prefix = g_strndup (word, (gsize) g_rand_int_range (rand, 1, 5));
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
             GRand         *rand,
             const BbTable *table)
{
  g_autofree char *what = g_strdup_printf ("%s: page of %u lines", table->name, PAGE);
  g_autoptr (GArray) ids = helper_search (book, table, "", 0);
  g_autoptr (GArray) times = g_array_new (FALSE, FALSE, sizeof (gint64));
  guint page = MIN (PAGE, ids->len);

  for (guint i = 0; i < PAGES; i++)
    {
      guint from = (guint) g_rand_int_range (rand, 0, (gint32) (ids->len - page) + 1);
      gint64 start = g_get_monotonic_time ();
      g_autoptr (GPtrArray) lines = bb_book_load_lines (book, table, &g_array_index (ids, gint64, from), page, NULL);

      note (times, start);
      g_assert_cmpuint (lines->len, ==, page);
    }
  report (what, times);
}

/* What opening a form does for each of its references. */
static void
bench_names (BbBook        *book,
             const BbTable *table,
             const char    *name)
{
  g_autofree char *what = g_strdup_printf ("%s: names for %s", table->name, name);
  const BbField *field = bb_table_find_field (table, name);
  g_autoptr (GArray) times = g_array_new (FALSE, FALSE, sizeof (gint64));

  for (guint i = 0; i < PAGES / 10; i++)
    {
      gint64 start = g_get_monotonic_time ();
      g_autoptr (GPtrArray) names = bb_book_load_names (book, field, NULL);

      note (times, start);
      g_assert_cmpuint (names->len, >, 0);
    }
  report (what, times);
}

static void
bench_list (BbBook        *book,
            GRand         *rand,
            const BbTable *table)
{
  bench_all (book, table);
  bench_search (book, rand, table, LIMIT);
  bench_search (book, rand, table, 0);
  bench_pages (book, rand, table);
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
  const guint n_recipes = argc > 1 ? (guint) atoi (argv[1]) : LARGE_BOOK_RECIPES;
  GRand *rand = g_rand_new_with_seed (1);
  BbBook *book = helper_create (path);
  gint64 start = g_get_monotonic_time ();
  GStatBuf info;

  large_book_fill (book, n_recipes);
  printf ("%u recipes with a revision each: %.0f recipes/s, with events, seals and search\n", n_recipes,
          (double) n_recipes * 1e6 / (double) (g_get_monotonic_time () - start));
  helper_close (book);
  g_assert_cmpint (g_stat (path, &info), ==, 0);
  printf ("%-40s %.1f MiB\n", "the file", (double) info.st_size / 1048576.0);

  bench_openings (path);
  book = helper_open (path);
  bench_list (book, rand, &bb_recipe_table);
  bench_commits (book);
  bench_check (book);
  helper_close (book);

  crowd_make (crowd, n_recipes);
  book = helper_open (crowd);
  bench_list (book, rand, &bb_blank_table);
  bench_list (book, rand, &bb_supply_table);
  bench_list (book, rand, &bb_wash_test_table);
  bench_names (book, &bb_recipe_table, "blank");
  bench_names (book, &bb_wash_test_table, "revision");
  helper_close (book);
  remove_folder (folder);
  g_rand_free (rand);

  return 0;
}
