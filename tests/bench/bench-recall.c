/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-test"

/* For the clock of the thread's own time. */
#define _POSIX_C_SOURCE 200809L

#include <glib/gstdio.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <time.h>

#include "store-helpers.h"

#include "bb-generate.h"
#include "bb-recall.h"

/*
 * How fast a book of many years remembers: `bench-recall [REVISIONS RUNS [BOOK]]`. The book is made by the generator
 * behind `blankbook-cli book generate`, or is one that it made before. A recall is timed with the lines that a list
 * shows of what was found, as a person sees them after a key: by the clock on the wall, and by the processor's time,
 * which a busy machine stretches less.
 */

#define REVISIONS 100000
#define RUNS 200000
#define SEED 20250314
#define TIMES 2000
#define LIMIT 50
#define LONGEST 8

typedef struct {
  BbBook *book;
  GRand *rand;
  GPtrArray *words;
  gint64 n_customers;
  gint64 n_colourways;
} Bench;

typedef void (*Prepare) (Bench    *bench,
                         BbRecall *recall,
                         GString  *text,
                         BbNarrow *narrow,
                         GArray   *colourways);

static int
compare_times (gconstpointer a,
               gconstpointer b)
{
  gint64 first = *(const gint64 *) a;
  gint64 second = *(const gint64 *) b;

  return (first > second) - (first < second);
}

typedef struct {
  GArray *wall;
  GArray *processor;
  gint64 wall_start;
  gint64 processor_start;
} Watch;

/* In nanoseconds. */
static gint64
read_clock (clockid_t clock)
{
  struct timespec now;

  clock_gettime (clock, &now);

  return now.tv_sec * G_GINT64_CONSTANT (1000000000) + now.tv_nsec;
}

static Watch
watch_new (void)
{
  return (Watch) { .wall = g_array_new (FALSE, FALSE, sizeof (gint64)),
                   .processor = g_array_new (FALSE, FALSE, sizeof (gint64)) };
}

static void
watch_start (Watch *watch)
{
  watch->wall_start = read_clock (CLOCK_MONOTONIC);
  watch->processor_start = read_clock (CLOCK_THREAD_CPUTIME_ID);
}

static void
watch_stop (Watch *watch)
{
  gint64 processor = read_clock (CLOCK_THREAD_CPUTIME_ID) - watch->processor_start;
  gint64 wall = read_clock (CLOCK_MONOTONIC) - watch->wall_start;

  g_array_append_val (watch->wall, wall);
  g_array_append_val (watch->processor, processor);
}

static double
at_percent (GArray *times,
            guint   percent)
{
  return (double) g_array_index (times, gint64, MIN (times->len * percent / 100, times->len - 1)) / 1e6;
}

static void
report (const char *what,
        Watch      *watch,
        double      found)
{
  g_array_sort (watch->wall, compare_times);
  g_array_sort (watch->processor, compare_times);
  printf ("%-40s wall p50 %7.3f p99 %7.3f ms   processor p50 %7.3f p99 %7.3f max %7.3f ms   found %.1f\n", what,
          at_percent (watch->wall, 50), at_percent (watch->wall, 99), at_percent (watch->processor, 50),
          at_percent (watch->processor, 99), at_percent (watch->processor, 100), found / watch->wall->len);
  g_array_unref (watch->wall);
  g_array_unref (watch->processor);
}

static const char *
pick (Bench *bench)
{
  return bench->words->pdata[g_rand_int_range (bench->rand, 0, (gint32) bench->words->len)];
}

static void
first_keys (Bench    *bench,
            BbRecall *recall,
            GString  *text,
            BbNarrow *narrow,
            GArray   *colourways)
{
  (void) recall;
  (void) narrow;
  (void) colourways;
  g_string_append_len (text, pick (bench), g_rand_int_range (bench->rand, 1, LONGEST));
}

static void
one_key (Bench    *bench,
         BbRecall *recall,
         GString  *text,
         BbNarrow *narrow,
         GArray   *colourways)
{
  (void) recall;
  (void) narrow;
  (void) colourways;
  g_string_append_len (text, pick (bench), 1);
}

static void
two_words (Bench    *bench,
           BbRecall *recall,
           GString  *text,
           BbNarrow *narrow,
           GArray   *colourways)
{
  first_keys (bench, recall, text, narrow, colourways);
  g_string_append_c (text, ' ');
  first_keys (bench, recall, text, narrow, colourways);
}

/* Two neighbours change places in the middle of a word. */
static void
mistyped (Bench    *bench,
          BbRecall *recall,
          GString  *text,
          BbNarrow *narrow,
          GArray   *colourways)
{
  char letter = 0;

  (void) recall;
  (void) narrow;
  (void) colourways;
  g_string_assign (text, pick (bench));
  letter = text->str[2];
  text->str[2] = text->str[3];
  text->str[3] = letter;
}

static void
narrowed (Bench    *bench,
          BbRecall *recall,
          GString  *text,
          BbNarrow *narrow,
          GArray   *colourways)
{
  first_keys (bench, recall, text, narrow, colourways);
  narrow->fibre = g_rand_int_range (bench->rand, 0, (gint32) bb_fibre_choices.n_items);
  narrow->mass_least_g_per_m2 = g_rand_int_range (bench->rand, 120, 250);
  narrow->mass_most_g_per_m2 = narrow->mass_least_g_per_m2 + 40;
  recall->narrow = narrow;
}

static void
narrowed_by_day (Bench    *bench,
                 BbRecall *recall,
                 GString  *text,
                 BbNarrow *narrow,
                 GArray   *colourways)
{
  first_keys (bench, recall, text, narrow, colourways);
  g_free (narrow->since);
  g_free (narrow->until);
  narrow->since = g_strdup_printf ("%d-03-15", g_rand_int_range (bench->rand, 2016, 2026));
  narrow->until = g_strdup_printf ("%.4s-10-10", narrow->since);
  recall->narrow = narrow;
}

static void
by_colour (Bench    *bench,
           BbRecall *recall,
           GString  *text,
           BbNarrow *narrow,
           GArray   *colourways)
{
  first_keys (bench, recall, text, narrow, colourways);
  for (guint i = 0; i < 50; i++)
    {
      gint64 colourway = 1 + g_rand_int_range (bench->rand, 0, (gint32) bench->n_colourways);

      g_array_append_val (colourways, colourway);
    }
  recall->colourways = colourways;
}

static guint
recall_once (Bench          *bench,
             const BbRecall *recall)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (BbRecalled) recalled = bb_book_recall (bench->book, recall, &error);
  g_autoptr (GPtrArray) recipes = NULL;
  g_autoptr (GPtrArray) jobs = NULL;

  g_assert_no_error (error);
  recipes = bb_book_load_lines (bench->book, &bb_recipe_table, (const gint64 *) (gpointer) recalled->recipes->data,
                                recalled->recipes->len, &error);
  jobs = bb_book_load_lines (bench->book, &bb_job_table, (const gint64 *) (gpointer) recalled->jobs->data,
                             recalled->jobs->len, &error);
  g_assert_no_error (error);

  return recipes->len + jobs->len;
}

static void
bench_recall (Bench      *bench,
              const char *what,
              Prepare     prepare)
{
  Watch watch = watch_new ();
  double found = 0;

  for (guint i = 0; i < TIMES; i++)
    {
      g_autoptr (GString) text = g_string_new (NULL);
      g_autoptr (BbNarrow) narrow = bb_narrow_new ();
      g_autoptr (GArray) colourways = g_array_new (FALSE, FALSE, sizeof (gint64));
      BbRecall recall = { .limit = LIMIT };

      prepare (bench, &recall, text, narrow, colourways);
      recall.text = text->str;
      watch_start (&watch);
      found += recall_once (bench, &recall);
      watch_stop (&watch);
    }
  report (what, &watch, found);
}

static void
bench_last_revision (Bench *bench)
{
  Watch watch = watch_new ();
  double found = 0;

  for (guint i = 0; i < TIMES; i++)
    {
      gint64 customer = 1 + g_rand_int_range (bench->rand, 0, (gint32) bench->n_customers);
      gint64 colourway = 1 + g_rand_int_range (bench->rand, 0, (gint32) bench->n_colourways);
      gint64 revision = 0;

      watch_start (&watch);
      revision = bb_book_find_last_revision (bench->book, customer, colourway, NULL, NULL);
      watch_stop (&watch);
      g_assert_cmpint (revision, >=, 0);
      found += revision > 0 ? 1 : 0;
    }
  report ("newest proven: fabric, colour, customer", &watch, found);
}

static gint64
count (BbBook        *book,
       const BbTable *table)
{
  const BbQuery query = { .text = NULL };
  g_autoptr (GArray) ids = bb_book_search (book, table, &query, NULL);

  return ids->len;
}

/* The words that names were made of, as a person would type them. */
static GPtrArray *
collect_words (BbBook *book)
{
  GPtrArray *words = g_ptr_array_new_with_free_func (g_free);
  g_autoptr (GPtrArray) customers = bb_book_load_all (book, &bb_customer_table, TRUE, NULL);
  g_autoptr (GPtrArray) blanks = bb_book_load_all (book, &bb_blank_table, TRUE, NULL);

  for (guint i = 0; i < customers->len + blanks->len; i++)
    {
      const char *name = i < customers->len ? ((const BbCustomer *) customers->pdata[i])->name
                                            : ((const BbBlank *) blanks->pdata[i - customers->len])->name;
      g_auto (GStrv) parts = g_strsplit (name, " ", -1);

      for (guint p = 0; parts[p] != NULL; p++)
        if (strlen (parts[p]) >= LONGEST)
          g_ptr_array_add (words, g_strdup (parts[p]));
    }

  return words;
}

static void
run (BbBook *book)
{
  Bench bench = {
    .book = book, .rand = g_rand_new_with_seed (SEED), .words = collect_words (book),
    .n_customers = count (book, &bb_customer_table), .n_colourways = 2400,
  };

  bench_recall (&bench, "one key", one_key);
  bench_recall (&bench, "one to seven keys", first_keys);
  bench_recall (&bench, "two words, one to seven keys each", two_words);
  bench_recall (&bench, "a mistyped word", mistyped);
  bench_recall (&bench, "narrowed by fibre and mass", narrowed);
  bench_recall (&bench, "narrowed by day", narrowed_by_day);
  bench_recall (&bench, "by the fifty likest colours", by_colour);
  bench_last_revision (&bench);
  g_rand_free (bench.rand);
  g_ptr_array_unref (bench.words);
}

static void
remove_folder (const char *folder)
{
  const char * const names[] = { "bench.book", "bench.book-wal", "bench.book-shm" };

  for (guint i = 0; i < G_N_ELEMENTS (names); i++)
    {
      g_autofree char *path = g_build_filename (folder, names[i], NULL);

      g_remove (path);
    }
  g_rmdir (folder);
}

static void
make_and_run (guint n_revisions,
              guint n_runs)
{
  g_autofree char *folder = g_dir_make_tmp ("bench-recall-XXXXXX", NULL);
  g_autofree char *path = g_build_filename (folder, "bench.book", NULL);
  const BbGenerate plan = { .n_revisions = n_revisions, .n_runs = n_runs, .seed = SEED };
  BbBook *book = helper_create (path);
  g_autoptr (GError) error = NULL;
  gint64 start = g_get_monotonic_time ();
  GStatBuf info;

  g_assert_true (bb_book_generate (book, &plan, &error));
  g_assert_no_error (error);
  printf ("%-44s %.1f s\n", "book generate", (double) (g_get_monotonic_time () - start) / 1e6);
  helper_close (book);
  g_assert_cmpint (g_stat (path, &info), ==, 0);
  printf ("%-44s %.1f MiB\n", "the file", (double) info.st_size / 1048576.0);
  book = helper_open (path);
  run (book);
  helper_close (book);
  remove_folder (folder);
}

int
main (int   argc,
      char *argv[])
{
  guint n_revisions = argc > 1 ? (guint) atoi (argv[1]) : REVISIONS;
  guint n_runs = argc > 2 ? (guint) atoi (argv[2]) : RUNS;
  BbBook *book = NULL;

  printf ("%u revisions, %u runs\n", n_revisions, n_runs);
  if (argc <= 3)
    make_and_run (n_revisions, n_runs);
  else
    {
      book = helper_open (argv[3]);
      run (book);
      helper_close (book);
    }

  return 0;
}
