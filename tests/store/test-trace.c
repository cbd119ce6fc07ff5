/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-test"

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
test_proven_lines (Bench         *bench,
                   gconstpointer  data)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GPtrArray) none = bb_book_load_proven_lines (bench->book, &error);
  g_autoptr (GPtrArray) one = NULL;
  const BbProvenLine *line = NULL;

  (void) data;
  g_assert_no_error (error);
  g_assert_cmpuint (none->len, ==, 0);
  helper_prove (bench->book, bench->shop->revision->id);
  one = bb_book_load_proven_lines (bench->book, &error);
  g_assert_cmpuint (one->len, ==, 1);
  line = one->pdata[0];
  g_assert_cmpint (line->id, ==, bench->shop->revision->id);
  g_assert_cmpint (line->blank, ==, bench->shop->blank->id);
  g_assert_cmpstr (line->srgb, ==, "");
  g_assert_cmpint (line->passed, ==, 3);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, G_TEST_OPTION_ISOLATE_DIRS, NULL);

#define ADD(path, func) g_test_add (path, Bench, NULL, set_up, func, tear_down)
  ADD ("/trace/from-anything", test_from_anything);
  ADD ("/trace/and-back", test_and_back);
  ADD ("/trace/proven-lines", test_proven_lines);
#undef ADD

  return g_test_run ();
}
