/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-test"

#include "bb-problem.h"
#include "bb-records.h"

#include <math.h>
#include <string.h>

static void
refuse (const BbTable *table,
        gconstpointer  record,
        const char    *wanted)
{
  g_autoptr (GError) error = NULL;

  g_assert_false (bb_record_validate (table, record, &error));
  if (strstr (error->message, wanted) == NULL)
    g_error ("nothing says “%s”, but “%s”", wanted, error->message);
}

static void
accept (const BbTable *table,
        gconstpointer  record)
{
  g_autoptr (GError) error = NULL;

  g_assert_true (bb_record_validate (table, record, &error));
  g_assert_no_error (error);
}

static void
test_steps (void)
{
  const char wanted[4][5] = { ".1.1", "..11", ".1..", "111." };

  /* Rows from planned, running, done, cancelled; columns to the same. */
  for (guint from = 0; from < 4; from++)
    for (guint to = 0; to < 4; to++)
      g_assert_cmpint (bb_job_state_may_become ((BbJobState) from, (BbJobState) to), ==, wanted[from][to] == '1');
}

static void
test_over (void)
{
  g_assert_false (bb_job_state_is_over (BB_JOB_PLANNED));
  g_assert_false (bb_job_state_is_over (BB_JOB_RUNNING));
  g_assert_true (bb_job_state_is_over (BB_JOB_DONE));
  g_assert_true (bb_job_state_is_over (BB_JOB_CANCELLED));
}

static void
test_due_after_ordered (void)
{
  g_autoptr (BbJob) job = bb_job_new ();

  job->code = g_strdup ("2503-01");
  job->customer = 1;
  job->ordered_at = g_strdup ("2025-03-14T09:00:00Z");
  accept (&bb_job_table, job);
  job->due_at = g_strdup ("2025-03-14");
  accept (&bb_job_table, job);
  job->due_at[9] = '3';
  refuse (&bb_job_table, job, "due_at");
}

static BbRun *
make_run (void)
{
  BbRun *run = bb_run_new ();

  run->code = g_strdup ("2503-01.1.1");
  run->line = 1;
  run->number = 1;
  run->revision = 1;
  run->started_at = g_strdup ("2025-03-14");

  return run;
}

static void
test_run_ends_with_its_counts (void)
{
  g_autoptr (BbRun) run = make_run ();

  accept (&bb_run_table, run);
  run->finished_at = g_strdup ("2025-03-14");
  refuse (&bb_run_table, run, "good");
  run->good = 24;
  refuse (&bb_run_table, run, "spoiled");
  run->spoiled = 0;
  accept (&bb_run_table, run);
  run->spoiled = 1;
  refuse (&bb_run_table, run, "spoilt_by");
  run->spoilt_by = BB_SPOILT_PLACE;
  accept (&bb_run_table, run);
}

static void
test_lists_of_a_run (void)
{
  g_autoptr (BbRun) run = make_run ();
  BbDeparture *departure = bb_field_append_item (bb_table_find_field (&bb_run_table, "departures"), run);
  BbWeighed *weighed = bb_field_append_item (bb_table_find_field (&bb_run_table, "weighed"), run);

  *weighed = (BbWeighed) { .tare_g = 170, .wet_g = 180, .box_area_m2 = 0.1 };
  departure->setting = g_strdup ("cure_c");
  accept (&bb_run_table, run);
  /* Who wrote a revision is no setting of it. */
  g_free (departure->setting);
  departure->setting = g_strdup ("made_by");
  refuse (&bb_run_table, run, "departures[0].setting");
  g_free (departure->setting);
  departure->setting = g_strdup ("cure_s");
  weighed->wet_g = 169;
  refuse (&bb_run_table, run, "weighed[0].wet_g");
}

static void
test_entries_of_a_lot (void)
{
  g_autoptr (BbLotEntry) entry = bb_lot_entry_new ();

  entry->lot = 1;
  entry->number = 1;
  entry->at = g_strdup ("2025-03-14");
  entry->deed = BB_LOT_USED;
  entry->run = 3;
  accept (&bb_lot_entry_table, entry);
  entry->change_g = -20;
  accept (&bb_lot_entry_table, entry);
  entry->change_g = 20;
  refuse (&bb_lot_entry_table, entry, "change_g");
  entry->deed = BB_LOT_WEIGHED;
  refuse (&bb_lot_entry_table, entry, "scale_g");
  entry->scale_g = 300;
  refuse (&bb_lot_entry_table, entry, "run");
  entry->run = 0;
  accept (&bb_lot_entry_table, entry);
}

/* The last day is the printed one, or that of the opened container, whichever comes first; days counted by hand. */
static void
test_last_day_of_a_lot (void)
{
  const struct {
    const char *expires_at;
    const char *opened_at;
    gint64 days;
    const char *wanted;
  } rows[] = {
    { NULL, NULL, BB_INTEGER_NONE, NULL },
    { "2025-06-30", NULL, 30, "2025-06-30" },
    { NULL, "2024-02-28T08:00:00Z", 1, "2024-02-29" },
    { NULL, "2025-12-31", 1, "2026-01-01" },
    { NULL, "2025-12-31", BB_INTEGER_NONE, NULL },
    { "2025-06-30", "2025-05-31", 30, "2025-06-30" },
    { "2025-06-30", "2025-05-31", 29, "2025-06-29" },
    { "2025-06-30T12:00:00Z", "2025-05-31", 60, "2025-06-30" },
  };

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autoptr (BbLot) lot = bb_lot_new ();
      g_autoptr (BbSupply) supply = bb_supply_new ();
      g_autofree char *last = NULL;

      lot->expires_at = g_strdup (rows[i].expires_at);
      lot->opened_at = g_strdup (rows[i].opened_at);
      supply->open_life_days = rows[i].days;
      last = bb_lot_dup_last_day (lot, supply);
      g_assert_cmpstr (last, ==, rows[i].wanted);
    }
}

static void
test_lot_is_not_past_when_it_comes (void)
{
  g_autoptr (BbLot) lot = bb_lot_new ();
  g_autoptr (GError) error = NULL;

  lot->code = g_strdup ("PT-1");
  lot->supply = 1;
  lot->received_at = g_strdup ("2026-11-26T10:00:00Z");
  lot->expires_at = g_strdup ("2026-11-26");
  bb_record_check_wanted (&bb_lot_table, lot, &error);
  g_assert_no_error (error);

  /* A book that holds such a container keeps it; nobody writes it anew. */
  g_free (lot->expires_at);
  lot->expires_at = g_strdup ("2025-11-26");
  bb_record_validate (&bb_lot_table, lot, &error);
  g_assert_no_error (error);
  g_assert_false (bb_record_check_wanted (&bb_lot_table, lot, &error));
  g_assert_cmpstr (error->message, ==,
                   "expires_at: its last day of use lies before the day on which it came into the shop.");
}

static void
test_past_its_day (void)
{
  g_autoptr (BbStock) stock = bb_stock_new ();

  g_assert_false (bb_stock_is_past (stock, "2099-01-01"));
  stock->last_day = g_strdup ("2025-06-30");
  g_assert_false (bb_stock_is_past (stock, "2025-06-30"));
  g_assert_true (bb_stock_is_past (stock, "2025-07-01T00:00:00Z"));
}

static void
add_stock (GPtrArray  *stock,
           const char *last_day,
           double      left_g)
{
  BbStock *lot = bb_stock_new ();

  lot->last_day = g_strdup (last_day);
  lot->left_g = left_g;
  g_ptr_array_add (stock, lot);
}

/* Only what may still be used counts; what was overdrawn is empty, not less than that. */
static void
test_sum_of_stock (void)
{
  g_autoptr (GPtrArray) stock = g_ptr_array_new_with_free_func (bb_stock_table.free_record);
  g_autoptr (BbSupply) supply = bb_supply_new ();
  double left_g = 0;

  g_assert_cmpfloat (bb_stock_sum_left (stock, "2025-07-01"), ==, 0);
  add_stock (stock, NULL, NAN);
  g_assert_true (isnan (bb_stock_sum_left (stock, "2025-07-01")));
  add_stock (stock, "2025-06-30", 500);
  add_stock (stock, "2025-07-01", 200);
  add_stock (stock, NULL, -30);
  left_g = bb_stock_sum_left (stock, "2025-07-01");
  g_assert_cmpfloat (left_g, ==, 200);

  g_assert_false (bb_supply_is_low (supply, left_g));
  supply->low_stock_g = 200;
  g_assert_false (bb_supply_is_low (supply, left_g));
  supply->low_stock_g = 201;
  g_assert_true (bb_supply_is_low (supply, left_g));
  g_assert_false (bb_supply_is_low (supply, (double) NAN));
}

static void
test_calibration_is_due (void)
{
  g_autoptr (BbEquipment) machine = bb_equipment_new ();
  g_autofree char *day = NULL;

  g_assert_false (bb_equipment_is_due (machine, "2025-07-01"));
  g_assert_null (bb_equipment_dup_due_day (machine));
  machine->calibrate_days = 30;
  g_assert_true (bb_equipment_is_due (machine, "2025-07-01"));
  machine->calibrated_at = g_strdup ("2025-05-31");
  day = bb_equipment_dup_due_day (machine);
  g_assert_cmpstr (day, ==, "2025-06-30");
  g_assert_false (bb_equipment_is_due (machine, "2025-06-29"));
  g_assert_true (bb_equipment_is_due (machine, "2025-06-30"));
}

/* Every part that is counted has the whole's code in its own. */
static void
test_owners (void)
{
  g_autofree char *code = bb_part_make_code ("2503-01.1", 2);

  g_assert_cmpstr (code, ==, "2503-01.1.2");
  g_assert_true (bb_table_find_owner (&bb_run_table)->target == &bb_job_line_table);
  g_assert_true (bb_table_find_owner (&bb_revision_table)->target == &bb_recipe_table);
  g_assert_null (bb_table_find_owner (&bb_job_table));
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/job/steps", test_steps);
  g_test_add_func ("/job/over", test_over);
  g_test_add_func ("/job/due-after-ordered", test_due_after_ordered);
  g_test_add_func ("/job/run-ends-with-its-counts", test_run_ends_with_its_counts);
  g_test_add_func ("/job/lists-of-a-run", test_lists_of_a_run);
  g_test_add_func ("/job/entries-of-a-lot", test_entries_of_a_lot);
  g_test_add_func ("/job/last-day-of-a-lot", test_last_day_of_a_lot);
  g_test_add_func ("/lot/is-not-past-when-it-comes", test_lot_is_not_past_when_it_comes);
  g_test_add_func ("/job/past-its-day", test_past_its_day);
  g_test_add_func ("/job/sum-of-stock", test_sum_of_stock);
  g_test_add_func ("/job/calibration-is-due", test_calibration_is_due);
  g_test_add_func ("/job/owners", test_owners);

  return g_test_run ();
}
