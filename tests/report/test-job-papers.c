/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-test"

#include "bb-job-papers.h"

#include <math.h>

#include "bb-run-words.h"
#include "bench.h"

#define DAY "2025-03-14"

static BbJobPapers *
load (Bench *bench)
{
  g_autoptr (GError) error = NULL;
  BbJobPapers *papers = bb_job_papers_load (bench->book, bench->shop->job->id, DAY, &error);

  g_assert_no_error (error);

  return papers;
}

/* By hand: 24 garments and 2 % spares are 25; the revision has no margin around the print. */
static void
test_sheet (Bench         *bench,
            gconstpointer  data)
{
  g_autoptr (BbJobPapers) papers = load (bench);
  const double box_m2 = 0.28 * 0.3;
  const BbLineSheet *line = NULL;
  const BbMixSheet *mix = NULL;

  (void) data;
  g_assert_cmpstr (papers->job->code, ==, "2503-01");
  g_assert_cmpuint (papers->lines->len, ==, 1);
  g_assert_cmpuint (papers->sheet->lines->len, ==, 1);
  line = &g_array_index (papers->sheet->lines, BbLineSheet, 0);
  g_assert_null (line->missing);
  g_assert_cmpint (line->garments, ==, 25);
  g_assert_cmpfloat_with_epsilon (line->wet_g, box_m2 * bench->shop->revision->pretreat_laydown_g_per_m2, 1e-9);
  mix = &g_array_index (papers->sheet->mixes, BbMixSheet, 0);
  g_assert_cmpint (mix->supply, ==, bench->shop->pretreat->id);
  g_assert_cmpstr (g_array_index (mix->takes, BbTake, 0).code, ==, "L-1");
  g_assert_true (papers->sheet->whole);
}

/* A second press of the same kind: the one that the line was last run on is taken, and the first in use without it. */
static void
test_machines (Bench         *bench,
               gconstpointer  data)
{
  g_autoptr (BbEquipment) other = helper_make_equipment ("A-PRESS", BB_EQUIPMENT_PRESS);
  g_autoptr (BbJobLine) fresh = NULL;
  g_autoptr (BbJobPapers) papers = NULL;
  const BbSheetLine *lines = NULL;

  (void) data;
  helper_save (bench->book, &bb_equipment_table, other);
  fresh = helper_make_line (bench->shop->job->id, bench->shop->colourway->id, bench->shop->revision->id);
  g_assert_true (bb_book_save_job_line (bench->book, fresh, NULL));
  papers = load (bench);
  lines = (const BbSheetLine *) (gpointer) papers->lines->data;
  g_assert_cmpuint (papers->lines->len, ==, 2);
  g_assert_cmpint (lines[0].curer->id, ==, bench->shop->press->id);
  g_assert_nonnull (lines[1].curer);
  g_assert_null (lines[0].printer);

  /* What is out of use is taken by none. */
  g_assert_true (bb_book_withdraw (bench->book, &bb_equipment_table, bench->shop->press->id, NULL));
  bb_job_papers_free (g_steal_pointer (&papers));
  papers = load (bench);
  lines = (const BbSheetLine *) (gpointer) papers->lines->data;
  g_assert_cmpint (lines[0].curer->id, ==, other->id);
  g_assert_cmpint (lines[1].curer->id, ==, other->id);
}

/*
 * Of two presses a new line gets the one on which its revision was cured last; what nobody has named before is left to
 * a person, who is told. There is no printer in the shop that could be named.
 */
static void
test_propose_run (Bench         *bench,
                  gconstpointer  data)
{
  g_autoptr (BbEquipment) other = helper_make_equipment ("A-PRESS", BB_EQUIPMENT_PRESS);
  g_autoptr (BbJobLine) fresh = NULL;
  g_autoptr (BbJobPapers) papers = NULL;
  g_autoptr (BbRun) run = bb_run_new ();
  g_autofree char *unnamed = NULL;
  const BbSheetLine *line = NULL;

  (void) data;
  helper_save (bench->book, &bb_equipment_table, other);
  fresh = helper_make_line (bench->shop->job->id, bench->shop->colourway->id, bench->shop->revision->id);
  g_assert_true (bb_book_save_job_line (bench->book, fresh, NULL));
  papers = load (bench);
  run->line = fresh->id;
  line = bb_job_papers_propose_run (papers, bench->book, run, NULL);
  g_assert_nonnull (line);
  g_assert_cmpint (run->curer, ==, bench->shop->press->id);
  g_assert_cmpint (run->dryer, ==, 0);
  g_assert_cmpint (run->printer, ==, 0);
  unnamed = bb_words_of_unnamed_machines (line, run);
  g_assert_cmpstr (unnamed, ==, "Not named: Dried on. A fault can't be traced to a machine that nobody has named.");
  g_free (g_steal_pointer (&unnamed));
  run->dryer = other->id;
  unnamed = bb_words_of_unnamed_machines (line, run);
  g_assert_null (unnamed);
}

/* A line without a recipe is there, and says what it lacks. */
static void
test_no_recipe (Bench         *bench,
                gconstpointer  data)
{
  g_autoptr (BbJobLine) fresh = helper_make_line (bench->shop->job->id, bench->shop->colourway->id, 0);
  g_autoptr (BbJobPapers) papers = NULL;

  (void) data;
  g_assert_true (bb_book_save_job_line (bench->book, fresh, NULL));
  papers = load (bench);
  g_assert_false (papers->sheet->whole);
  g_assert_nonnull (g_array_index (papers->sheet->lines, BbLineSheet, 1).missing);
  g_assert_null (g_array_index (papers->lines, BbSheetLine, 1).revision);

  g_assert_true (bb_book_withdraw (bench->book, &bb_job_line_table, fresh->id, NULL));
  bb_job_papers_free (g_steal_pointer (&papers));
  papers = load (bench);
  g_assert_cmpuint (papers->lines->len, ==, 1);
}

static void
test_no_job (Bench         *bench,
             gconstpointer  data)
{
  g_autoptr (GError) error = NULL;

  (void) data;
  g_assert_null (bb_job_papers_load (bench->book, 999, DAY, &error));
  g_assert_error (error, BB_STORE_ERROR, BB_STORE_ERROR_NOT_FOUND);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, G_TEST_OPTION_ISOLATE_DIRS, NULL);
  BENCH_ADD ("/job-papers/sheet", test_sheet);
  BENCH_ADD ("/job-papers/machines", test_machines);
  BENCH_ADD ("/job-papers/propose-run", test_propose_run);
  BENCH_ADD ("/job-papers/no-recipe", test_no_recipe);
  BENCH_ADD ("/job-papers/no-job", test_no_job);

  return g_test_run ();
}
