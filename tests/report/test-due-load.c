/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-test"

#include "bb-due-load.h"
#include "store-helpers.h"

/*
 * The list of a day. Days are counted by hand on a calendar of 2025: without a plan a specimen is washed 12 times a
 * week after a day of rest, and has two days of grace.
 */

static void
add (BbBook     *book,
     gint64      revision,
     const char *code,
     const char *made_at,
     gint64      cycles,
     const char *read_at)
{
  g_autoptr (BbWashTest) test = helper_make_wash_test (code, revision);
  g_autoptr (BbReading) reading = NULL;

  g_free (test->made_at);
  test->made_at = g_strdup (made_at);
  test->plan_cycles = 12;
  helper_save (book, &bb_wash_test_table, test);
  if (cycles == 0)
    return;
  reading = helper_make_reading (test->id, cycles);
  g_free (reading->read_at);
  reading->read_at = g_strdup (read_at);
  if (g_str_has_prefix (code, "BAD"))
    reading->change = BB_GRADE_1;
  reading->stain = BB_GRADE_5;
  helper_save (book, &bb_reading_table, reading);
}

static void
expect (GPtrArray  *lines,
        guint       index,
        const char *code,
        BbDue       state,
        gint64      days_late)
{
  const BbDueLine *line = g_ptr_array_index (lines, index);

  g_assert_cmpstr (((const BbWashTest *) line->line->test)->code, ==, code);
  g_assert_cmpint (line->due.state, ==, state);
  g_assert_cmpint (line->due.days_late, ==, days_late);
}

static void
test_order (void)
{
  g_autofree char *path = helper_new_path ();
  BbBook *book = helper_create (path);
  g_autoptr (Shop) shop = helper_fill (book);
  gint64 revision = shop->revision->id;
  g_autoptr (GPtrArray) lines = NULL;
  g_autoptr (GError) error = NULL;

  g_assert_true (bb_book_withdraw (book, &bb_wash_test_table, shop->wash_test->id, NULL));
  add (book, revision, "RUNS", "2025-06-09", 0, NULL);
  add (book, revision, "DUE", "2025-06-01", 0, NULL);
  add (book, revision, "LATE", "2025-05-01", 6, "2025-05-31");
  add (book, revision, "BAD", "2025-05-01", 6, "2025-05-31");
  add (book, revision, "PASSED", "2025-05-01", 25, "2025-05-31");

  lines = bb_due_load (book, "2025-06-10", &error);
  g_assert_no_error (error);
  g_assert_cmpuint (lines->len, ==, 3);
  /* Half a week, rounded up to whole days, after the last day of May. */
  expect (lines, 0, "LATE", BB_DUE_OVERDUE, 6);
  expect (lines, 1, "DUE", BB_DUE_TODAY, 1);
  expect (lines, 2, "RUNS", BB_DUE_RUNNING, -7);
  g_assert_null (bb_due_load (book, "someday", &error));
  g_assert_error (error, BB_MODEL_ERROR, BB_MODEL_ERROR_VALUE);
  helper_close (book);
}

/* At the plan's next stop; what was read there already is gone on with, and not read twice. */
static void
test_next_reading (void)
{
  g_autofree char *path = helper_new_path ();
  BbBook *book = helper_create (path);
  g_autoptr (Shop) shop = helper_fill (book);
  g_autoptr (GPtrArray) lines = NULL;
  g_autoptr (BbWashDue) due = bb_wash_due_new ();
  g_autoptr (BbReading) fresh = NULL;
  g_autoptr (BbReading) again = NULL;

  g_assert_true (bb_book_withdraw (book, &bb_wash_test_table, shop->wash_test->id, NULL));
  add (book, shop->revision->id, "LATE", "2025-05-01", 6, "2025-05-31");
  lines = bb_due_load (book, "2025-06-10", NULL);
  fresh = bb_wash_line_dup_next_reading (((const BbDueLine *) lines->pdata[0])->line,
                                         &((const BbDueLine *) lines->pdata[0])->due);
  g_assert_cmpint (fresh->id, ==, BB_INTEGER_NONE);
  g_assert_cmpint (fresh->wash_test, ==, ((const BbDueLine *) lines->pdata[0])->line->id);
  g_assert_cmpint (fresh->cycles, ==, 12);
  g_assert_null (fresh->read_at);
  for (guint f = 0; f < bb_reading_table.n_fields; f++)
    if (bb_reading_table.fields[f].quick)
      g_assert_false (bb_field_is_set (&bb_reading_table.fields[f], fresh));

  due->cycles = 6;
  again = bb_wash_line_dup_next_reading (((const BbDueLine *) lines->pdata[0])->line, due);
  g_assert_cmpint (again->id, !=, BB_INTEGER_NONE);
  g_assert_cmpint (again->cycles, ==, 6);
  g_assert_cmpstr (again->read_at, ==, "2025-05-31");
  helper_close (book);
}

/* Nobody can judge it; the others are on the list all the same. */
static void
test_damaged_revision (void)
{
  g_autofree char *path = helper_new_path ();
  BbBook *book = helper_create (path);
  g_autoptr (Shop) shop = helper_fill (book);
  sqlite3 *plain = helper_open_plain (path);
  g_autoptr (GPtrArray) before = bb_due_load (book, "2025-06-10", NULL);
  g_autoptr (GPtrArray) after = NULL;
  g_autoptr (GPtrArray) damaged = NULL;
  g_autoptr (BbWashVerdictOut) verdict = bb_wash_verdict_out_new ();
  g_autoptr (GError) error = NULL;

  g_assert_cmpuint (before->len, ==, 1);
  g_assert_cmpint (helper_run_plain (plain, "DROP TRIGGER revision_update; UPDATE revision SET cure_c = 170"), ==,
                   SQLITE_OK);
  sqlite3_close (plain);
  after = bb_due_load (book, "2025-06-10", &error);
  g_assert_no_error (error);
  g_assert_cmpuint (after->len, ==, 0);
  damaged = bb_book_load_lines (book, &bb_wash_test_table, &shop->wash_test->id, 1, &error);
  g_assert_false (bb_wash_line_judge (damaged->pdata[0], "2025-06-10", verdict, NULL, &error));
  helper_assert_line (error->message);
  helper_close (book);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, G_TEST_OPTION_ISOLATE_DIRS, NULL);

  g_test_add_func ("/due-load/order", test_order);
  g_test_add_func ("/due-load/next-reading", test_next_reading);
  g_test_add_func ("/due-load/damaged-revision", test_damaged_revision);

  return g_test_run ();
}
