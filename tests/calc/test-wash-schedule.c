/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bb-wash-schedule.h"

#include "bb-error.h"

/* Days are counted by hand on a calendar of 2025 and 2024. */

static BbWashPlan *
make_plan (void)
{
  const gint64 stops[] = { 1, 5, 10, 20 };
  BbWashPlan *plan = bb_wash_plan_new ();

  for (guint i = 0; i < G_N_ELEMENTS (stops); i++)
    ((BbPlanStop *) bb_field_append_item (bb_table_find_field (&bb_wash_plan_table, "grade_at"), plan))->cycles =
      stops[i];
  plan->rest_days = 2;
  plan->cycles_per_week = 7;
  plan->grace_days = 3;

  return plan;
}

static BbWashTest *
make_test (const char *made_at)
{
  BbWashTest *test = bb_wash_test_new ();

  test->plan_cycles = 20;
  test->made_at = g_strdup (made_at);

  return test;
}

static GPtrArray *
make_readings (gint64      cycles,
               const char *read_at)
{
  GPtrArray *readings = g_ptr_array_new_with_free_func ((GDestroyNotify) bb_reading_free);

  /* In no order. */
  for (gint64 c = cycles; c > 0; c -= 4)
    {
      BbReading *reading = bb_reading_new ();

      reading->cycles = c;
      reading->read_at = g_strdup (c == cycles ? read_at : "2020-01-01");
      g_ptr_array_add (readings, reading);
    }

  return readings;
}

static void
test_days (void)
{
  const struct {
    const char *why;
    gboolean with_plan;
    const char *made_at;
    gint64 read;
    const char *read_at;
    const char *today;
    BbDue state;
    gint64 cycles;
    const char *due_on;
    gint64 days_late;
  } rows[] = {
    { "rest, then one wash", TRUE, "2025-03-14", 0, NULL, "2025-03-14", BB_DUE_RUNNING, 1, "2025-03-17", -3 },
    { "the day itself", TRUE, "2025-03-14T22:00:00Z", 0, NULL, "2025-03-17", BB_DUE_TODAY, 1, "2025-03-17", 0 },
    { "the last day of grace", TRUE, "2025-03-14", 0, NULL, "2025-03-20", BB_DUE_TODAY, 1, "2025-03-17", 3 },
    { "one more", TRUE, "2025-03-14", 0, NULL, "2025-03-21", BB_DUE_OVERDUE, 1, "2025-03-17", 4 },
    { "from the last reading", TRUE, "2025-03-14", 5, "2025-03-24", "2025-03-28", BB_DUE_RUNNING, 10, "2025-03-29",
      -1 },
    { "read between stops", TRUE, "2025-03-14", 7, "2025-03-24", "2025-03-27", BB_DUE_TODAY, 10, "2025-03-27", 0 },
    { "over a leap day", TRUE, "2024-02-01", 10, "2024-02-25", "2024-03-06", BB_DUE_TODAY, 20, "2024-03-06", 0 },
    { "all read, and still open", TRUE, "2025-03-14", 20, "2025-04-10", "2025-04-10", BB_DUE_TODAY, 20, "2025-04-10",
      0 },
    /* 20 cycles at 12 a week are 11.7 days, and a day of rest. */
    { "without a plan", FALSE, "2025-03-14", 0, NULL, "2025-03-27", BB_DUE_TODAY, 20, "2025-03-27", 0 },
  };

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autoptr (BbWashPlan) plan = rows[i].with_plan ? make_plan () : NULL;
      g_autoptr (BbWashTest) test = make_test (rows[i].made_at);
      g_autoptr (GPtrArray) readings = make_readings (rows[i].read, rows[i].read_at);
      g_autoptr (BbWashDue) due = bb_wash_due_new ();
      g_autoptr (GError) error = NULL;

      g_test_message ("%s", rows[i].why);
      bb_wash_schedule (test, plan, readings, BB_VERDICT_OPEN, rows[i].today, due, &error);
      g_assert_no_error (error);
      g_assert_cmpstr (due->due_on, ==, rows[i].due_on);
      g_assert_cmpint (due->state, ==, rows[i].state);
      g_assert_cmpint (due->cycles, ==, rows[i].cycles);
      g_assert_cmpint (due->days_late, ==, rows[i].days_late);
    }
}

static void
test_done (void)
{
  g_autoptr (BbWashTest) test = make_test ("2025-03-14");
  g_autoptr (GPtrArray) readings = make_readings (0, NULL);
  g_autoptr (BbWashDue) due = bb_wash_due_new ();

  g_assert_true (bb_wash_schedule (test, NULL, readings, BB_VERDICT_OPEN, "2025-03-14", due, NULL));
  g_assert_nonnull (due->due_on);
  g_assert_true (bb_wash_schedule (test, NULL, readings, BB_VERDICT_FAILED, "2025-03-14", due, NULL));
  g_assert_cmpint (due->state, ==, BB_DUE_DONE);
  g_assert_null (due->due_on);
  g_assert_true (bb_wash_schedule (test, NULL, readings, BB_VERDICT_PASSED, "2025-03-14", due, NULL));
  g_assert_cmpint (due->state, ==, BB_DUE_DONE);
  test->withdrawn_at = g_strdup ("2025-03-14");
  g_assert_true (bb_wash_schedule (test, NULL, readings, BB_VERDICT_OPEN, "2025-03-14", due, NULL));
  g_assert_cmpint (due->state, ==, BB_DUE_DONE);
  g_assert_cmpint (due->cycles, ==, BB_INTEGER_NONE);
}

static void
test_words (void)
{
  static const struct {
    BbDue state;
    gint64 days_late;
    const char *words;
  } rows[] = {
    { BB_DUE_RUNNING, -3, "Wash 10: due in 3 days" }, { BB_DUE_RUNNING, -1, "Wash 10: due in 1 day" },
    { BB_DUE_TODAY, 0, "Wash 10: due today" },        { BB_DUE_TODAY, 1, "Wash 10: due for 1 day" },
    { BB_DUE_TODAY, 2, "Wash 10: due for 2 days" },   { BB_DUE_OVERDUE, 4, "Wash 10: 4 days overdue" },
    { BB_DUE_DONE, BB_INTEGER_NONE, NULL },
  };

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      const BbWashDue due = { .state = (int) rows[i].state, .cycles = 10, .days_late = rows[i].days_late };
      g_autofree char *words = bb_wash_due_describe (&due);

      g_assert_cmpstr (words, ==, rows[i].words);
    }
}

static void
test_no_date (void)
{
  g_autoptr (BbWashTest) test = make_test ("2025-02-30");
  g_autoptr (GPtrArray) readings = make_readings (0, NULL);
  g_autoptr (BbWashDue) due = bb_wash_due_new ();
  g_autoptr (GError) error = NULL;

  g_assert_false (bb_wash_schedule (test, NULL, readings, BB_VERDICT_OPEN, "2025-03-14", due, &error));
  g_assert_error (error, BB_MODEL_ERROR, BB_MODEL_ERROR_VALUE);
  g_assert_true (g_str_has_prefix (error->message, "made_at: "));
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/wash-schedule/days", test_days);
  g_test_add_func ("/wash-schedule/done", test_done);
  g_test_add_func ("/wash-schedule/words", test_words);
  g_test_add_func ("/wash-schedule/no-date", test_no_date);

  return g_test_run ();
}
