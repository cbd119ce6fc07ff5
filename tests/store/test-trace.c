/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-test"

#include <string.h>

#include "store-helpers.h"

#include "bb-trace.h"

typedef struct {
  BbBook *book;
  Shop *shop;
  gint64 second;
  gint64 other_lot;
} Bench;

/* A second run of the same line by another person, from another container, on no press. */
static void
set_up (Bench         *bench,
        gconstpointer  data)
{
  g_autofree char *path = helper_new_path ();
  g_autoptr (BbPerson) person = helper_make_person ("ZW");
  g_autoptr (BbLot) lot = NULL;
  g_autoptr (BbRun) run = bb_run_new ();
  g_autoptr (GError) error = NULL;

  (void) data;
  bench->book = helper_create (path);
  bench->shop = helper_fill (bench->book);
  helper_fill_jobs (bench->book, bench->shop);
  helper_save (bench->book, &bb_person_table, person);
  lot = helper_make_lot ("L-2", bench->shop->pretreat->id);
  helper_save (bench->book, &bb_lot_table, lot);
  run->line = bench->shop->line->id;
  run->person = person->id;
  run->started_at = g_strdup ("2024-03-14T08:00:00Z");
  g_assert_true (bb_book_start_run (bench->book, run, &error));
  g_assert_true (bb_book_use_lot (bench->book, lot->id, run->id, 20, &error));
  g_assert_true (bb_book_use_lot (bench->book, lot->id, run->id, 5, &error));
  g_assert_no_error (error);
  bench->second = run->id;
  bench->other_lot = lot->id;
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
expect (Bench         *bench,
        const BbTable *table,
        gint64         id,
        guint          n)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GArray) runs = bb_book_trace_runs (bench->book, table, id, &error);

  g_assert_no_error (error);
  g_test_message ("%s %d", table->name, (int) id);
  g_assert_cmpuint (runs->len, ==, n);
}

static void
test_from_anything (Bench         *bench,
                    gconstpointer  data)
{
  const Shop *shop = bench->shop;

  (void) data;
  expect (bench, &bb_lot_table, shop->lot->id, 1);
  expect (bench, &bb_lot_table, bench->other_lot, 1);
  expect (bench, &bb_supply_table, shop->pretreat->id, 2);
  expect (bench, &bb_supply_table, shop->sheet->id, 0);
  expect (bench, &bb_revision_table, shop->revision->id, 2);
  expect (bench, &bb_recipe_table, shop->recipe->id, 2);
  expect (bench, &bb_equipment_table, shop->press->id, 1);
  expect (bench, &bb_person_table, shop->person->id, 1);
  expect (bench, &bb_job_line_table, shop->line->id, 2);
  expect (bench, &bb_job_table, shop->job->id, 2);
  expect (bench, &bb_customer_table, shop->customer->id, 2);
  expect (bench, &bb_colourway_table, shop->colourway->id, 2);
  expect (bench, &bb_blank_table, shop->blank->id, 2);
  expect (bench, &bb_run_table, bench->second, 1);
  expect (bench, &bb_customer_table, 99, 0);
  g_assert_true (bb_book_is_traced (&bb_lot_table));
  g_assert_false (bb_book_is_traced (&bb_reading_table));
}

/* And back: each run tells for whom it was, and what it was made by and from. The newest stands first. */
static void
test_and_back (Bench         *bench,
               gconstpointer  data)
{
  g_autoptr (GArray) runs = bb_book_trace_runs (bench->book, &bb_job_table, bench->shop->job->id, NULL);
  g_autoptr (GPtrArray) cards = bb_book_load_lines (bench->book, &bb_run_table, &g_array_index (runs, gint64, 0), 2,
                                                    NULL);
  const BbRunCard *first = cards->pdata[0];
  const BbRunCard *second = cards->pdata[1];
  g_autoptr (GArray) lots = NULL;

  (void) data;
  g_assert_cmpint (first->id, ==, bench->shop->run->id);
  g_assert_cmpint (second->id, ==, bench->second);
  g_assert_cmpstr (first->customer, ==, "Heron Street Choir");
  g_assert_cmpstr (first->job, ==, "2503-01");
  g_assert_cmpstr (first->machines, ==, "PRESS-1");
  g_assert_cmpstr (first->lots, ==, "L-1");
  g_assert_cmpint (first->remarks, ==, 1);
  g_assert_cmpint (first->good, ==, 10);
  g_assert_cmpstr (second->lots, ==, "L-2");
  g_assert_cmpstr (second->machines, ==, "");
  g_assert_cmpint (second->good, ==, BB_INTEGER_NONE);

  lots = bb_book_list_run_lots (bench->book, bench->second, NULL);
  g_assert_cmpuint (lots->len, ==, 1);
  g_assert_cmpint (g_array_index (lots, gint64, 0), ==, bench->other_lot);
}

static void
test_list (Bench         *bench,
           gconstpointer  data)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GArray) all = bb_book_list_runs (bench->book, 0, &error);
  g_autoptr (GArray) one = bb_book_list_runs (bench->book, 1, &error);

  (void) data;
  g_assert_no_error (error);
  g_assert_cmpuint (all->len, ==, 2);
  g_assert_cmpuint (one->len, ==, 1);
  g_assert_cmpint (g_array_index (all, gint64, 0), ==, bench->second);
  g_assert_cmpint (g_array_index (one, gint64, 0), ==, bench->second);
}

static void
test_last_run (Bench         *bench,
               gconstpointer  data)
{
  g_autoptr (BbRun) of_line = NULL;
  g_autoptr (BbRun) of_revision = NULL;
  g_autoptr (BbRun) none = NULL;

  (void) data;
  g_assert_cmpint (bb_book_find_last_run (bench->book, &bb_job_line_table, bench->shop->line->id, &of_line, NULL), ==,
                   1);
  g_assert_cmpint (bb_book_find_last_run (bench->book, &bb_revision_table, bench->shop->revision->id, &of_revision,
                                          NULL), ==, 1);
  g_assert_cmpint (bb_book_find_last_run (bench->book, &bb_job_line_table, 99, &none, NULL), ==, 0);
  g_assert_cmpint (of_line->id, ==, bench->second);
  g_assert_cmpint (of_revision->id, ==, bench->second);
  g_assert_null (none);
}

static void
expect_failures (Bench      *bench,
                 const char *since,
                 guint       n)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GPtrArray) failures = bb_book_load_failures (bench->book, bench->shop->revision->id, since, &error);

  g_assert_no_error (error);
  g_assert_cmpuint (failures->len, ==, n);
  if (n > 0)
    g_assert_cmpint (((const BbReading *) failures->pdata[0])->cycles, ==, 5);
}

/* One specimen failed twice: it is told once, by the first of its readings. */
static void
test_failures_since (Bench         *bench,
                     gconstpointer  data)
{
  g_autoptr (BbWashTest) test = helper_make_wash_test ("F-1", bench->shop->revision->id);
  const gint64 cycles[] = { 10, 5 };

  (void) data;
  expect_failures (bench, "2020-01-01", 0);
  helper_save (bench->book, &bb_wash_test_table, test);
  for (guint i = 0; i < G_N_ELEMENTS (cycles); i++)
    {
      g_autoptr (BbReading) reading = helper_make_reading (test->id, cycles[i]);

      reading->change = BB_GRADE_2;
      g_free (reading->read_at);
      reading->read_at = g_strdup ("2025-04-02");
      helper_save (bench->book, &bb_reading_table, reading);
    }
  expect_failures (bench, "2025-04-01T10:00:00Z", 1);
  expect_failures (bench, "2025-04-02T23:00:00Z", 1);
  expect_failures (bench, "2025-04-03", 0);
}

/* As the log has it: what was written before the run, not what was written since. */
static void
test_text_at_run (Bench         *bench,
                  gconstpointer  data)
{
  BbBlank *blank = bench->shop->blank;
  g_autoptr (BbBlank) late = helper_make_blank ("LATE", "Later Tee");
  g_autofree char *then = NULL;
  g_autofree char *none = NULL;

  (void) data;
  blank->mass_g_per_m2 = 211;
  helper_save (bench->book, &bb_blank_table, blank);
  helper_save (bench->book, &bb_blank_table, late);
  g_assert_cmpint (bb_book_find_text_at_run (bench->book, &bb_blank_table, blank->id, bench->second, &then, NULL), ==,
                   1);
  g_assert_nonnull (strstr (then, blank->code));
  g_assert_null (strstr (then, "211"));
  g_assert_cmpint (bb_book_find_text_at_run (bench->book, &bb_blank_table, late->id, bench->second, &none, NULL), ==,
                   0);
  g_assert_null (none);
}

static BbJobLine *
repeat (Bench              *bench,
        const BbRepeatLine *choice,
        guint              *n_lines)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (BbJob) job = NULL;
  g_autoptr (GArray) lines = NULL;
  gint64 id = 0;

  g_assert_true (bb_book_repeat_job (bench->book, bench->shop->job->id, "2026-03-01", choice, choice != NULL ? 1 : 0,
                                     &id, &error));
  g_assert_no_error (error);
  job = bb_book_load (bench->book, &bb_job_table, id, &error);
  g_assert_cmpint (job->repeats, ==, bench->shop->job->id);
  g_assert_cmpint (job->customer, ==, bench->shop->customer->id);
  g_assert_cmpint (job->state, ==, BB_JOB_PLANNED);
  g_assert_cmpstr (job->ordered_at, ==, "2026-03-01");
  g_assert_null (job->due_at);
  lines = bb_book_list_job_lines (bench->book, id, &error);
  *n_lines = lines->len;

  return lines->len > 0 ? bb_book_load (bench->book, &bb_job_line_table, g_array_index (lines, gint64, 0), &error)
                        : NULL;
}

/* The same revision, unless a person chose another. */
static void
test_repeat (Bench         *bench,
             gconstpointer  data)
{
  const Shop *shop = bench->shop;
  g_autoptr (BbRevision) next = helper_make_revision (shop->recipe->id, shop->pretreat->id);
  g_autoptr (BbJobLine) same = NULL;
  g_autoptr (BbJobLine) other = NULL;
  g_autoptr (BbJobLine) bare = NULL;
  g_autoptr (BbJobLine) none = NULL;
  guint n = 0;

  (void) data;
  next->reason = g_strdup ("Hotter.");
  g_assert_true (bb_book_save_revision (bench->book, next, NULL));
  same = repeat (bench, NULL, &n);
  g_assert_cmpuint (n, ==, 1);
  g_assert_cmpint (same->revision, ==, shop->revision->id);
  g_assert_cmpint (same->count, ==, shop->line->count);
  g_assert_cmpstr (same->why, ==, "As in job 2503-01.");
  other = repeat (bench, &(BbRepeatLine) { shop->line->id, next->id, FALSE }, &n);
  g_assert_cmpint (other->revision, ==, next->id);
  bare = repeat (bench, &(BbRepeatLine) { shop->line->id, BB_INTEGER_NONE, FALSE }, &n);
  g_assert_cmpint (bare->revision, ==, 0);
  g_assert_null (bare->why);
  none = repeat (bench, &(BbRepeatLine) { shop->line->id, 0, TRUE }, &n);
  g_assert_cmpuint (n, ==, 0);
  g_assert_null (none);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, G_TEST_OPTION_ISOLATE_DIRS, NULL);

#define ADD(path, func) g_test_add (path, Bench, NULL, set_up, func, tear_down)
  ADD ("/trace/from-anything", test_from_anything);
  ADD ("/trace/and-back", test_and_back);
  ADD ("/trace/list", test_list);
  ADD ("/trace/last-run", test_last_run);
  ADD ("/trace/failures-since", test_failures_since);
  ADD ("/trace/text-at-run", test_text_at_run);
  ADD ("/trace/repeat", test_repeat);
#undef ADD

  return g_test_run ();
}
