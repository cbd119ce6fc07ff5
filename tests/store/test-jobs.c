/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-test"

#include "bench.h"

#include <math.h>
#include <string.h>

static void
tear_down (Bench         *bench,
           gconstpointer  data)
{
  g_autoptr (GPtrArray) findings = bb_book_check (bench->book, NULL, NULL);

  (void) data;
  for (guint i = 0; i < findings->len; i++)
    g_error ("%s", (const char *) findings->pdata[i]);
  bench_tear_down (bench, NULL);
}

static BbJob *
load_job (Bench *bench)
{
  return bb_book_load (bench->book, &bb_job_table, bench->shop->job->id, NULL);
}

static void
test_lines_are_counted (Bench         *bench,
                        gconstpointer  data)
{
  g_autoptr (BbJobLine) line = helper_make_line (bench->shop->job->id, bench->shop->colourway->id, 0);
  g_autoptr (GError) error = NULL;

  (void) data;
  g_assert_cmpstr (bench->shop->line->code, ==, "2503-01.1");
  g_assert_true (bb_book_save_job_line (bench->book, line, &error));
  g_assert_no_error (error);
  g_assert_cmpint (line->number, ==, 2);
  g_assert_cmpstr (line->code, ==, "2503-01.2");

  /* What a person does not enter stays, whatever the record says. */
  line->number = 7;
  line->count = 30;
  g_assert_true (bb_book_save_job_line (bench->book, line, &error));
  g_assert_cmpint (line->number, ==, 2);
  g_assert_cmpint (line->count, ==, 30);

  line->count = 0;
  g_assert_false (bb_book_save_job_line (bench->book, line, &error));
  g_assert_error (error, BB_MODEL_ERROR, BB_MODEL_ERROR_VALUE);
  g_assert_nonnull (strstr (error->message, "count"));
}

static void
test_job_number_renames_lines (Bench         *bench,
                               gconstpointer  data)
{
  g_autoptr (BbJob) job = helper_make_job ("2503-02", bench->shop->customer->id);
  g_autoptr (BbJobLine) line = NULL;
  g_autoptr (BbJobLine) stored = NULL;
  g_autoptr (BbJob) running = load_job (bench);
  g_autoptr (GError) error = NULL;

  (void) data;
  helper_save (bench->book, &bb_job_table, job);
  line = helper_make_line (job->id, bench->shop->colourway->id, bench->shop->revision->id);
  g_assert_true (bb_book_save_job_line (bench->book, line, &error));
  g_free (job->code);
  job->code = g_strdup ("A-9");
  helper_save (bench->book, &bb_job_table, job);
  stored = bb_book_load (bench->book, &bb_job_line_table, line->id, NULL);
  g_assert_cmpstr (stored->code, ==, "A-9.1");

  g_free (running->code);
  running->code = g_strdup ("A-10");
  g_assert_false (bb_book_save (bench->book, &bb_job_table, running, &error));
  g_assert_error (error, BB_STORE_ERROR, BB_STORE_ERROR_REFUSED);
}

static void
test_job_numbers_follow (Bench         *bench,
                         gconstpointer  data)
{
  g_autofree char *first = bb_book_dup_next_job_code (bench->book, "2025-04-01", NULL);
  g_autofree char *next = bb_book_dup_next_job_code (bench->book, "2025-03-31", NULL);
  g_autoptr (BbJob) high = helper_make_job ("2503-120", bench->shop->customer->id);
  g_autofree char *after = NULL;

  (void) data;
  g_assert_cmpstr (first, ==, "2504-01");
  g_assert_cmpstr (next, ==, "2503-02");
  helper_save (bench->book, &bb_job_table, high);
  after = bb_book_dup_next_job_code (bench->book, "2025-03-31", NULL);
  g_assert_cmpstr (after, ==, "2503-121");
}

static void
expect_state (Bench      *bench,
              BbJobState  wanted)
{
  g_autoptr (BbJob) job = load_job (bench);

  g_assert_cmpint (job->state, ==, wanted);
  g_assert_nonnull (job->since);
}

static void
test_states (Bench         *bench,
             gconstpointer  data)
{
  gint64 id = bench->shop->job->id;
  g_autoptr (BbJob) stale = NULL;
  g_autoptr (GError) error = NULL;

  (void) data;
  expect_state (bench, BB_JOB_RUNNING);
  stale = load_job (bench);
  g_assert_false (bb_book_set_job_state (bench->book, id, BB_JOB_PLANNED, &error));
  g_assert_error (error, BB_STORE_ERROR, BB_STORE_ERROR_REFUSED);
  g_clear_error (&error);
  g_assert_true (bb_book_set_job_state (bench->book, id, BB_JOB_DONE, &error));
  g_assert_false (bb_book_set_job_state (bench->book, id, BB_JOB_CANCELLED, &error));
  g_clear_error (&error);

  /* A form that was opened before does not take the job back. */
  g_free (stale->title);
  stale->title = g_strdup ("Spring concert");
  helper_save (bench->book, &bb_job_table, stale);
  expect_state (bench, BB_JOB_DONE);

  g_assert_true (bb_book_set_job_state (bench->book, id, BB_JOB_RUNNING, &error));
  g_assert_true (bb_book_set_job_state (bench->book, id, BB_JOB_CANCELLED, &error));
  g_assert_no_error (error);
  g_assert_false (bb_book_set_job_state (bench->book, id, BB_JOB_PLANNED, &error));
  g_assert_error (error, BB_STORE_ERROR, BB_STORE_ERROR_REFUSED);
  g_clear_error (&error);
  g_assert_true (bb_book_undo_cancellation (bench->book, id, &error));
  expect_state (bench, BB_JOB_RUNNING);
  g_assert_false (bb_book_undo_cancellation (bench->book, id, &error));
  g_assert_error (error, BB_STORE_ERROR, BB_STORE_ERROR_REFUSED);
}

static void
test_run_begins_its_job (Bench         *bench,
                         gconstpointer  data)
{
  const BbRun *run = bench->shop->run;

  (void) data;
  expect_state (bench, BB_JOB_RUNNING);
  g_assert_cmpstr (run->code, ==, "2503-01.1.1");
  g_assert_cmpint (run->revision, ==, bench->shop->revision->id);
  g_assert_cmpint (run->person, ==, bench->shop->person->id);
  g_assert_nonnull (run->started_at);
  g_assert_null (run->finished_at);
}

static void
refuse_start (Bench      *bench,
              gint64      line,
              const char *wanted)
{
  g_autoptr (BbRun) run = bb_run_new ();
  g_autoptr (GError) error = NULL;

  run->line = line;
  g_assert_false (bb_book_start_run (bench->book, run, &error));
  g_assert_error (error, BB_STORE_ERROR, BB_STORE_ERROR_REFUSED);
  g_assert_nonnull (strstr (error->message, wanted));
  g_assert_cmpint (run->id, ==, BB_INTEGER_NONE);
  g_assert_cmpint (run->revision, ==, 0);
}

static void
test_what_does_not_start (Bench         *bench,
                          gconstpointer  data)
{
  g_autoptr (BbJobLine) bare = helper_make_line (bench->shop->job->id, bench->shop->colourway->id, 0);
  gint64 line = bench->shop->line->id;
  g_autoptr (GError) error = NULL;

  (void) data;
  g_assert_true (bb_book_save_job_line (bench->book, bare, &error));
  refuse_start (bench, bare->id, "no recipe yet");

  g_assert_true (bb_book_withdraw (bench->book, &bb_job_line_table, line, &error));
  refuse_start (bench, line, "struck off");
  g_assert_true (bb_book_restore (bench->book, &bb_job_line_table, line, &error));

  g_assert_true (bb_book_set_state (bench->book, bench->shop->revision->id, BB_STATE_WITHDRAWN, NULL, &error));
  refuse_start (bench, line, "withdrawn");
  g_assert_true (bb_book_undo_withdrawal (bench->book, bench->shop->revision->id, &error));

  g_assert_true (bb_book_set_job_state (bench->book, bench->shop->job->id, BB_JOB_DONE, &error));
  refuse_start (bench, line, "is done");
  g_assert_true (bb_book_set_job_state (bench->book, bench->shop->job->id, BB_JOB_RUNNING, &error));
  g_assert_true (bb_book_set_job_state (bench->book, bench->shop->job->id, BB_JOB_CANCELLED, &error));
  refuse_start (bench, line, "cancelled");
  g_assert_no_error (error);
}

static void
test_finished_run_is_only_annotated (Bench         *bench,
                                     gconstpointer  data)
{
  g_autoptr (BbRun) run = bb_record_copy (&bb_run_table, bench->shop->run);
  g_autoptr (BbRun) stored = NULL;
  g_autoptr (GPtrArray) remarks = NULL;
  g_autoptr (GError) error = NULL;

  (void) data;
  run->spoilt_by = BB_CHOICE_NONE;
  g_assert_false (bb_book_finish_run (bench->book, run, &error));
  g_assert_error (error, BB_MODEL_ERROR, BB_MODEL_ERROR_VALUE);
  g_assert_nonnull (strstr (error->message, "spoilt_by"));
  g_assert_null (run->finished_at);
  g_clear_error (&error);

  run->good = 23;
  run->spoilt_by = BB_SPOILT_HEAT;
  g_assert_true (bb_book_save_run (bench->book, run, &error));
  g_assert_true (bb_book_finish_run (bench->book, run, &error));
  g_assert_no_error (error);
  g_assert_nonnull (run->finished_at);

  run->good = 24;
  g_assert_false (bb_book_save_run (bench->book, run, &error));
  g_assert_error (error, BB_STORE_ERROR, BB_STORE_ERROR_REFUSED);
  g_assert_nonnull (strstr (error->message, "remark"));
  g_clear_error (&error);
  g_assert_false (bb_book_finish_run (bench->book, run, &error));
  g_assert_error (error, BB_STORE_ERROR, BB_STORE_ERROR_REFUSED);
  g_clear_error (&error);

  g_assert_true (bb_book_annotate_run (bench->book, run->id, "It was 24.", &error));
  g_assert_false (bb_book_annotate_run (bench->book, run->id, "", &error));
  stored = bb_book_load (bench->book, &bb_run_table, run->id, NULL);
  g_assert_cmpint (stored->good, ==, 23);
  g_assert_cmpuint (stored->weighed->len, ==, 1);
  remarks = bb_book_load_referring (bench->book, &bb_annotation_table, &bb_run_table, run->id, NULL);
  g_assert_cmpuint (remarks->len, ==, 2);
  g_assert_cmpint (((const BbAnnotation *) remarks->pdata[1])->number, ==, 2);
}

/* A run of another book comes in as it is there: finished, with its lists. */
static void
test_finished_run_comes_in_whole (Bench         *bench,
                                  gconstpointer  data)
{
  g_autoptr (BbRun) run = bb_record_copy (&bb_run_table, bench->shop->run);
  g_autoptr (BbRun) stored = NULL;

  (void) data;
  run->id = BB_INTEGER_NONE;
  run->number = 2;
  g_clear_pointer (&run->code, g_free);
  run->finished_at = g_strdup ("2025-03-12T10:00:00Z");
  helper_save (bench->book, &bb_run_table, run);
  stored = bb_book_load (bench->book, &bb_run_table, run->id, NULL);
  g_assert_true (bb_record_equal (&bb_run_table, stored, run));
  g_assert_cmpstr (stored->finished_at, ==, "2025-03-12T10:00:00Z");
  g_assert_cmpuint (stored->departures->len, ==, 1);
}

static double
left_of (Bench *bench)
{
  g_autoptr (GError) error = NULL;
  double left_g = 0;

  g_assert_true (bb_book_get_lot_left (bench->book, bench->shop->lot->id, &left_g, &error));
  g_assert_no_error (error);

  return left_g;
}

static void
test_lots_are_drawn_down (Bench         *bench,
                          gconstpointer  data)
{
  gint64 lot = bench->shop->lot->id;
  g_autoptr (GError) error = NULL;

  (void) data;
  g_assert_cmpfloat (left_of (bench), ==, 750);
  g_assert_true (bb_book_waste_lot (bench->book, lot, 50, "Spilt.", &error));
  g_assert_cmpfloat (left_of (bench), ==, 700);
  g_assert_true (bb_book_use_lot (bench->book, lot, bench->shop->run->id, NAN, &error));
  g_assert_cmpfloat (left_of (bench), ==, 700);
  g_assert_true (bb_book_weigh_lot (bench->book, lot, 765.5, NULL, &error));
  g_assert_cmpfloat (left_of (bench), ==, 685.5);
  g_assert_true (bb_book_use_lot (bench->book, lot, 0, 900, &error));
  g_assert_no_error (error);
  g_assert_cmpfloat (left_of (bench), ==, -214.5);

  g_assert_false (bb_book_use_lot (bench->book, lot, 0, -5, &error));
  g_assert_error (error, BB_MODEL_ERROR, BB_MODEL_ERROR_VALUE);
  g_clear_error (&error);
  g_assert_false (bb_book_weigh_lot (bench->book, lot, 79, NULL, &error));
  g_assert_error (error, BB_MODEL_ERROR, BB_MODEL_ERROR_VALUE);
  g_assert_nonnull (strstr (error->message, "scale_g"));
  g_clear_error (&error);
  g_assert_false (bb_book_use_lot (bench->book, 99, 0, 5, &error));
  g_assert_error (error, BB_STORE_ERROR, BB_STORE_ERROR_NOT_FOUND);
}

static void
test_uncounted_lots (Bench         *bench,
                     gconstpointer  data)
{
  g_autoptr (BbLot) lot = helper_make_lot ("SH-LOT", bench->shop->sheet->id);
  g_autoptr (GError) error = NULL;
  double left_g = 0;

  (void) data;
  lot->start_g = NAN;
  helper_save (bench->book, &bb_lot_table, lot);
  g_assert_true (bb_book_use_lot (bench->book, lot->id, bench->shop->run->id, 12, &error));
  g_assert_true (bb_book_get_lot_left (bench->book, lot->id, &left_g, &error));
  g_assert_true (isnan (left_g));
  g_assert_false (bb_book_weigh_lot (bench->book, lot->id, 100, NULL, &error));
  g_assert_nonnull (strstr (error->message, "start_g"));
}

static gint64
add_lot (Bench      *bench,
         const char *code,
         const char *expires_at,
         const char *opened_at)
{
  g_autoptr (BbLot) lot = helper_make_lot (code, bench->shop->pretreat->id);

  lot->expires_at = g_strdup (expires_at);
  lot->opened_at = g_strdup (opened_at);
  helper_save (bench->book, &bb_lot_table, lot);

  return lot->id;
}

/* First what has to be used first; what was opened keeps no longer than the supply says. */
static void
test_stock_is_in_order (Bench         *bench,
                        gconstpointer  data)
{
  const char * const wanted[] = { "OPEN", "SOON", "LATE", "L-1" };
  g_autoptr (GPtrArray) stock = NULL;
  g_autoptr (GPtrArray) other = NULL;
  g_autoptr (GError) error = NULL;

  (void) data;
  bench->shop->pretreat->open_life_days = 30;
  helper_save (bench->book, &bb_supply_table, bench->shop->pretreat);
  add_lot (bench, "LATE", "2026-01-31", NULL);
  add_lot (bench, "SOON", "2025-05-31", NULL);
  add_lot (bench, "OPEN", "2026-01-31", "2025-03-15");
  g_assert_true (bb_book_withdraw (bench->book, &bb_lot_table, add_lot (bench, "GONE", "2025-01-01", NULL), &error));

  stock = bb_book_load_stock (bench->book, bench->shop->pretreat->id, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (stock->len, ==, G_N_ELEMENTS (wanted));
  for (guint i = 0; i < stock->len; i++)
    g_assert_cmpstr (((const BbStock *) stock->pdata[i])->code, ==, wanted[i]);
  g_assert_cmpstr (((const BbStock *) stock->pdata[0])->last_day, ==, "2025-04-14");
  g_assert_cmpfloat (((const BbStock *) stock->pdata[3])->left_g, ==, 750);

  other = bb_book_load_stock (bench->book, bench->shop->sheet->id, &error);
  g_assert_cmpuint (other->len, ==, 0);
}

static void
test_lot_is_opened_once (Bench         *bench,
                         gconstpointer  data)
{
  const gint64 lot = add_lot (bench, "SHUT", "2026-01-31", NULL);
  g_autoptr (BbLot) opened = NULL;
  g_autoptr (GError) error = NULL;

  (void) data;
  g_assert_true (bb_book_open_lot (bench->book, lot, "2025-06-01", &error));
  opened = bb_book_load (bench->book, &bb_lot_table, lot, &error);
  g_assert_cmpstr (opened->opened_at, ==, "2025-06-01");
  g_assert_false (bb_book_open_lot (bench->book, lot, "2025-06-02", &error));
  g_assert_error (error, BB_MODEL_ERROR, BB_MODEL_ERROR_VALUE);
  g_assert_nonnull (strstr (error->message, "opened_at"));
}

/* A reason is asked for; what leaves the shelf leaves the stock, and a refusal leaves all as it was. */
static void
test_lot_is_disposed_of (Bench         *bench,
                         gconstpointer  data)
{
  g_autoptr (BbDisposal) disposal = bb_disposal_new ();
  g_autoptr (GPtrArray) stock = NULL;
  g_autoptr (GError) error = NULL;

  (void) data;
  disposal->lot = bench->shop->lot->id;
  disposal->amount_g = 40;
  g_assert_false (bb_book_dispose_of_lot (bench->book, disposal, &error));
  g_assert_nonnull (strstr (error->message, "note"));
  g_clear_error (&error);
  g_assert_cmpfloat (left_of (bench), ==, 750);

  disposal->note = g_strdup ("Spilt.");
  disposal->finished = 0;
  g_assert_true (bb_book_dispose_of_lot (bench->book, disposal, &error));
  stock = bb_book_load_stock (bench->book, bench->shop->pretreat->id, &error);
  g_assert_cmpuint (stock->len, ==, 1);
  g_assert_cmpfloat (((const BbStock *) stock->pdata[0])->left_g, ==, 710);
  g_clear_pointer (&stock, g_ptr_array_unref);

  disposal->amount_g = NAN;
  disposal->finished = 1;
  g_assert_true (bb_book_dispose_of_lot (bench->book, disposal, &error));
  g_assert_no_error (error);
  stock = bb_book_load_stock (bench->book, bench->shop->pretreat->id, &error);
  g_assert_cmpuint (stock->len, ==, 0);
}

static void
test_machine_is_calibrated (Bench         *bench,
                            gconstpointer  data)
{
  g_autoptr (BbEquipment) added = helper_make_equipment ("PRESS-9", BB_EQUIPMENT_PRESS);
  g_autoptr (BbEquipment) machine = NULL;
  g_autoptr (GPtrArray) events = NULL;
  g_autoptr (GError) error = NULL;

  (void) data;
  helper_save (bench->book, &bb_equipment_table, added);
  g_assert_true (bb_book_note_calibration (bench->book, added->id, "2025-06-01", &error));
  g_assert_no_error (error);
  machine = bb_book_load (bench->book, &bb_equipment_table, added->id, &error);
  g_assert_cmpstr (machine->calibrated_at, ==, "2025-06-01");
  events = bb_book_load_events (bench->book, &bb_equipment_table, added->id, &error);
  g_assert_cmpuint (events->len, ==, 2);
  g_assert_cmpint (((const BbEvent *) events->pdata[0])->deed, ==, BB_DEED_ADDED);
  g_assert_cmpint (((const BbEvent *) events->pdata[1])->deed, ==, BB_DEED_CHANGED);

  /* It was the other press. */
  g_assert_true (bb_book_note_calibration (bench->book, added->id, NULL, &error));
  g_assert_no_error (error);
  bb_equipment_free (g_steal_pointer (&machine));
  machine = bb_book_load (bench->book, &bb_equipment_table, added->id, &error);
  g_assert_null (machine->calibrated_at);
  g_assert_false (bb_book_note_calibration (bench->book, 999, "2025-06-01", &error));
  g_assert_error (error, BB_STORE_ERROR, BB_STORE_ERROR_NOT_FOUND);
}

static void
test_cards (Bench         *bench,
            gconstpointer  data)
{
  g_autoptr (GArray) running = bb_book_list_jobs (bench->book, BB_JOB_RUNNING, 0, NULL);
  g_autoptr (GArray) planned = bb_book_list_jobs (bench->book, BB_JOB_PLANNED, 0, NULL);
  g_autoptr (GArray) ids = NULL;
  g_autoptr (GPtrArray) cards = NULL;
  g_autoptr (GPtrArray) lines = NULL;
  const BbJobCard *card = NULL;
  const BbLineCard *line = NULL;

  (void) data;
  g_assert_cmpuint (running->len, ==, 1);
  g_assert_cmpuint (planned->len, ==, 0);
  cards = bb_book_load_lines (bench->book, &bb_job_table, &g_array_index (running, gint64, 0), 1, NULL);
  g_assert_cmpuint (cards->len, ==, 1);
  card = cards->pdata[0];
  g_assert_cmpstr (card->customer, ==, "Heron Street Choir");
  g_assert_cmpint (card->garments, ==, 24);
  g_assert_cmpint (card->good, ==, 10);
  g_assert_cmpstr (card->colourway, ==, "Deep navy");
  g_assert_cmpstr (card->revision, ==, "R-1.1");

  ids = bb_book_list_job_lines (bench->book, bench->shop->job->id, NULL);
  lines = bb_book_load_lines (bench->book, &bb_job_line_table, &g_array_index (ids, gint64, 0), ids->len, NULL);
  g_assert_cmpuint (lines->len, ==, 1);
  line = lines->pdata[0];
  g_assert_cmpstr (line->blank, ==, "Bench tee");
  g_assert_cmpint (line->spoiled, ==, 1);
  g_assert_cmpint (line->running, ==, 1);
  g_assert_cmpint (line->state, ==, BB_STATE_DRAFT);
}

/* The next due stand first, and those without a day last. */
static void
test_due_order (Bench         *bench,
                gconstpointer  data)
{
  const char * const days[] = { NULL, "2025-05-01", "2025-04-01" };
  gint64 ids[G_N_ELEMENTS (days)];
  g_autoptr (GArray) planned = NULL;

  (void) data;
  for (guint i = 0; i < G_N_ELEMENTS (days); i++)
    {
      g_autofree char *code = g_strdup_printf ("D-%u", i);
      g_autoptr (BbJob) job = helper_make_job (code, bench->shop->customer->id);

      job->due_at = g_strdup (days[i]);
      helper_save (bench->book, &bb_job_table, job);
      ids[i] = job->id;
    }
  planned = bb_book_list_jobs (bench->book, BB_JOB_PLANNED, 0, NULL);
  g_assert_cmpuint (planned->len, ==, 3);
  g_assert_cmpint (g_array_index (planned, gint64, 0), ==, ids[2]);
  g_assert_cmpint (g_array_index (planned, gint64, 1), ==, ids[1]);
  g_assert_cmpint (g_array_index (planned, gint64, 2), ==, ids[0]);
}

static void
test_revision_of_a_job_is_in_use (Bench         *bench,
                                  gconstpointer  data)
{
  g_autoptr (BbRevision) next = helper_make_revision (bench->shop->recipe->id, bench->shop->pretreat->id);
  g_autoptr (BbJobLine) line = NULL;
  g_autoptr (GError) error = NULL;

  (void) data;
  next->reason = g_strdup ("Warmer.");
  g_assert_true (bb_book_save_revision (bench->book, next, &error));
  g_assert_cmpint (bb_book_revision_is_used (bench->book, next->id, NULL), ==, 0);
  line = helper_make_line (bench->shop->job->id, bench->shop->colourway->id, next->id);
  g_assert_true (bb_book_save_job_line (bench->book, line, &error));
  g_assert_cmpint (bb_book_revision_is_used (bench->book, next->id, NULL), ==, 1);
  g_assert_no_error (error);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, G_TEST_OPTION_ISOLATE_DIRS, NULL);

#define ADD(path, func) g_test_add (path, Bench, NULL, bench_set_up, func, tear_down)
  ADD ("/jobs/lines-are-counted", test_lines_are_counted);
  ADD ("/jobs/job-number-renames-lines", test_job_number_renames_lines);
  ADD ("/jobs/job-numbers-follow", test_job_numbers_follow);
  ADD ("/jobs/states", test_states);
  ADD ("/jobs/run-begins-its-job", test_run_begins_its_job);
  ADD ("/jobs/what-does-not-start", test_what_does_not_start);
  ADD ("/jobs/finished-run-is-only-annotated", test_finished_run_is_only_annotated);
  ADD ("/jobs/finished-run-comes-in-whole", test_finished_run_comes_in_whole);
  ADD ("/jobs/lots-are-drawn-down", test_lots_are_drawn_down);
  ADD ("/jobs/uncounted-lots", test_uncounted_lots);
  ADD ("/jobs/stock-is-in-order", test_stock_is_in_order);
  ADD ("/jobs/lot-is-opened-once", test_lot_is_opened_once);
  ADD ("/jobs/lot-is-disposed-of", test_lot_is_disposed_of);
  ADD ("/jobs/machine-is-calibrated", test_machine_is_calibrated);
  ADD ("/jobs/cards", test_cards);
  ADD ("/jobs/due-order", test_due_order);
  ADD ("/jobs/revision-of-a-job-is-in-use", test_revision_of_a_job_is_in_use);
#undef ADD

  return g_test_run ();
}
