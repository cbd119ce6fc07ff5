/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-test"

#include "store-helpers.h"

/* What the database refuses by itself of jobs, runs and lots, whoever asks: plain SQL, without our settings. */

typedef struct {
  BbBook *book;
  Shop *shop;
  sqlite3 *plain;
} Rules;

static void
set_up (Rules         *rules,
        gconstpointer  data)
{
  g_autofree char *path = helper_new_path ();
  g_autoptr (GError) error = NULL;

  (void) data;
  rules->book = helper_create (path);
  rules->shop = helper_fill (rules->book);
  helper_fill_jobs (rules->book, rules->shop);
  g_assert_true (bb_book_finish_run (rules->book, rules->shop->run, &error));
  g_assert_no_error (error);
  rules->plain = helper_open_plain (path);
}

static void
tear_down (Rules         *rules,
           gconstpointer  data)
{
  (void) data;
  sqlite3_close (rules->plain);
  helper_shop_free (rules->shop);
  helper_close (rules->book);
}

static void
expect (Rules      *rules,
        int         wanted,
        const char *sql)
{
  int found = helper_run_plain (rules->plain, sql);

  if (found != wanted)
    g_error ("%s: %d, expected %d (%s)", sql, found, wanted, sqlite3_errmsg (rules->plain));
}

static char *
dump (Rules         *rules,
      const BbTable *table)
{
  g_autoptr (GString) sql = g_string_new ("SELECT group_concat (''");

  for (guint i = 0; i < table->n_fields; i++)
    if (table->fields[i].kind != BB_KIND_LIST)
      g_string_append_printf (sql, " || '|' || quote (%s)", table->fields[i].name);
  g_string_append_printf (sql, ") FROM %s", table->name);

  return helper_query_plain (rules->plain, sql->str);
}

/* Every column of a record that is only ever added, and the ways around its triggers. */
static void
check_fixed (Rules         *rules,
             const BbTable *table)
{
  g_autofree char *before = dump (rules, table);
  g_autofree char *after = NULL;
  g_autofree char *delete = g_strdup_printf ("DELETE FROM %s", table->name);
  g_autofree char *replace = g_strdup_printf ("INSERT OR REPLACE INTO %s SELECT * FROM %s", table->name, table->name);

  for (guint i = 0; i < table->n_fields; i++)
    {
      const char *name = table->fields[i].name;
      g_autofree char *same = g_strdup_printf ("UPDATE %s SET %s = %s", table->name, name, name);
      g_autofree char *over = g_strdup_printf ("UPDATE OR REPLACE %s SET %s = %s", table->name, name, name);

      if (table->fields[i].kind == BB_KIND_LIST)
        continue;
      expect (rules, SQLITE_CONSTRAINT_TRIGGER, same);
      expect (rules, SQLITE_CONSTRAINT_TRIGGER, over);
    }
  expect (rules, SQLITE_CONSTRAINT_TRIGGER, delete);
  expect (rules, SQLITE_CONSTRAINT_TRIGGER, replace);

  after = dump (rules, table);
  g_assert_cmpstr (after, ==, before);
}

static void
test_what_happened_is_fixed (Rules         *rules,
                             gconstpointer  data)
{
  (void) data;
  check_fixed (rules, &bb_run_table);
  check_fixed (rules, &bb_annotation_table);
  check_fixed (rules, &bb_lot_entry_table);
}

static void
test_lists_of_a_finished_run_are_fixed (Rules         *rules,
                                        gconstpointer  data)
{
  (void) data;
  expect (rules, SQLITE_CONSTRAINT_TRIGGER, "UPDATE run_weighed SET wet_g = 190");
  expect (rules, SQLITE_CONSTRAINT_TRIGGER, "DELETE FROM run_weighed");
  expect (rules, SQLITE_CONSTRAINT_TRIGGER, "INSERT INTO run_weighed VALUES (1, 5, 160, 170, 0.1)");
  expect (rules, SQLITE_CONSTRAINT_TRIGGER, "INSERT OR REPLACE INTO run_weighed VALUES (1, 0, 160, 170, 0.1)");
  expect (rules, SQLITE_CONSTRAINT_TRIGGER, "UPDATE run_departures SET done = '50'");
  expect (rules, SQLITE_CONSTRAINT_TRIGGER, "DELETE FROM run_departures");
  expect (rules, SQLITE_CONSTRAINT_TRIGGER, "INSERT INTO run_departures VALUES (1, 5, 'cure_c', '170', NULL)");
}

static void
test_run_keeps_its_line (Rules         *rules,
                         gconstpointer  data)
{
  g_autoptr (BbRun) run = bb_run_new ();
  g_autoptr (GError) error = NULL;

  (void) data;
  run->line = rules->shop->line->id;
  g_assert_true (bb_book_start_run (rules->book, run, &error));
  g_assert_no_error (error);

  /* The same statements on one that has not ended: what is known so far may change, but not of what it is. */
  expect (rules, SQLITE_OK, "UPDATE run SET good = 5, note = 'So far.' WHERE id = 2");
  expect (rules, SQLITE_OK, "INSERT INTO run_weighed VALUES (2, 0, 160, 170, 0.1)");
  expect (rules, SQLITE_OK, "DELETE FROM run_weighed WHERE run = 2");
  expect (rules, SQLITE_CONSTRAINT_TRIGGER, "UPDATE run SET line = 9 WHERE id = 2");
  expect (rules, SQLITE_CONSTRAINT_TRIGGER, "UPDATE run SET revision = 9 WHERE id = 2");
  expect (rules, SQLITE_CONSTRAINT_TRIGGER, "UPDATE run SET number = 9 WHERE id = 2");
  expect (rules, SQLITE_CONSTRAINT_TRIGGER, "UPDATE run SET code = 'X' WHERE id = 2");
  expect (rules, SQLITE_CONSTRAINT_TRIGGER, "UPDATE OR REPLACE run SET id = 1 WHERE id = 2");
  expect (rules, SQLITE_CONSTRAINT_TRIGGER, "DELETE FROM run WHERE id = 2");
  expect (rules, SQLITE_CONSTRAINT_CHECK, "UPDATE run SET finished_at = '2025-03-14' WHERE id = 2");
}

static void
test_line_that_was_run (Rules         *rules,
                        gconstpointer  data)
{
  const char * const kept[] = {
    "code = 'X'", "number = 7", "colourway = 99", "artwork = 'other.png'", "artwork = NULL", "placement = 'back'",
    "print_width_mm = 281", "print_height_mm = NULL",
  };

  (void) data;
  for (guint i = 0; i < G_N_ELEMENTS (kept); i++)
    {
      g_autofree char *sql = g_strdup_printf ("UPDATE job_line SET %s", kept[i]);

      expect (rules, SQLITE_CONSTRAINT_TRIGGER, sql);
    }
  expect (rules, SQLITE_OK, "UPDATE job_line SET count = 30, note = 'Six more.', revision = NULL");
  expect (rules, SQLITE_CONSTRAINT_TRIGGER, "DELETE FROM job_line");
  expect (rules, SQLITE_CONSTRAINT_TRIGGER, "INSERT OR REPLACE INTO job_line SELECT * FROM job_line");
}

static void
test_job_that_was_run (Rules         *rules,
                       gconstpointer  data)
{
  (void) data;
  expect (rules, SQLITE_CONSTRAINT_TRIGGER, "UPDATE job SET code = 'OTHER'");
  expect (rules, SQLITE_OK, "UPDATE job SET code = code, title = 'Other'");
}

static void
test_steps_of_a_job (Rules         *rules,
                     gconstpointer  data)
{
  (void) data;
  for (guint from = 0; from < bb_job_state_choices.n_items; from++)
    for (guint to = 0; to < bb_job_state_choices.n_items; to++)
      {
        gboolean allowed = from == to || bb_job_state_may_become ((BbJobState) from, (BbJobState) to);
        g_autofree char *add = g_strdup_printf ("INSERT INTO job (id, code, customer, ordered_at, state) "
                                                "VALUES (99, 'X', 1, '2025-03-14', '%s')",
                                                bb_job_state_choices.items[from].key);
        g_autofree char *move = g_strdup_printf ("UPDATE job SET state = '%s' WHERE id = 99",
                                                 bb_job_state_choices.items[to].key);

        expect (rules, SQLITE_OK, "BEGIN");
        expect (rules, SQLITE_OK, add);
        expect (rules, allowed ? SQLITE_OK : SQLITE_CONSTRAINT_TRIGGER, move);
        expect (rules, SQLITE_OK, "ROLLBACK");
      }
}

static void
test_lot_that_was_used (Rules         *rules,
                        gconstpointer  data)
{
  (void) data;
  expect (rules, SQLITE_CONSTRAINT_TRIGGER, "UPDATE lot SET supply = 2");
  expect (rules, SQLITE_CONSTRAINT_TRIGGER, "UPDATE lot SET id = 77");
  expect (rules, SQLITE_CONSTRAINT_TRIGGER, "DELETE FROM lot");
  expect (rules, SQLITE_CONSTRAINT_TRIGGER, "INSERT OR REPLACE INTO lot SELECT * FROM lot");
  expect (rules, SQLITE_OK, "UPDATE lot SET opened_at = '2025-03-14'");
}

static void
test_revision_that_was_run (Rules         *rules,
                            gconstpointer  data)
{
  (void) data;
  expect (rules, SQLITE_OK, "DELETE FROM reading; DELETE FROM wash_test");
  expect (rules, SQLITE_CONSTRAINT_TRIGGER, "UPDATE revision SET cure_c = 150");
  expect (rules, SQLITE_CONSTRAINT_TRIGGER, "DELETE FROM revision");
}

/* The newest run by each revision, for each customer and garment, whichever way it comes about. */
static void
test_last_runs_follow (Rules         *rules,
                       gconstpointer  data)
{
  const char *count = "SELECT group_concat (customer || ':' || colourway || ':' || revision || ':' || run) "
                      "FROM last_run";
  g_autofree char *first = helper_query_plain (rules->plain, count);
  g_autofree char *second = NULL;
  g_autofree char *moved = NULL;
  g_autoptr (BbRun) run = bb_run_new ();

  (void) data;
  g_assert_cmpstr (first, ==, "1:1:1:1");
  run->line = rules->shop->line->id;
  g_assert_true (bb_book_start_run (rules->book, run, NULL));
  second = helper_query_plain (rules->plain, count);
  g_assert_cmpstr (second, ==, "1:1:1:2");
  expect (rules, SQLITE_OK, "INSERT INTO customer (id, code, name) VALUES (5, 'C', 'C')");
  expect (rules, SQLITE_OK, "UPDATE job SET customer = 5");
  moved = helper_query_plain (rules->plain, count);
  g_assert_cmpstr (moved, ==, "5:1:1:2");
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, G_TEST_OPTION_ISOLATE_DIRS, NULL);

#define ADD(path, func) g_test_add (path, Rules, NULL, set_up, func, tear_down)
  ADD ("/job-rules/what-happened-is-fixed", test_what_happened_is_fixed);
  ADD ("/job-rules/lists-of-a-finished-run-are-fixed", test_lists_of_a_finished_run_are_fixed);
  ADD ("/job-rules/run-keeps-its-line", test_run_keeps_its_line);
  ADD ("/job-rules/line-that-was-run", test_line_that_was_run);
  ADD ("/job-rules/job-that-was-run", test_job_that_was_run);
  ADD ("/job-rules/steps-of-a-job", test_steps_of_a_job);
  ADD ("/job-rules/lot-that-was-used", test_lot_that_was_used);
  ADD ("/job-rules/revision-that-was-run", test_revision_that_was_run);
  ADD ("/job-rules/last-runs-follow", test_last_runs_follow);
#undef ADD

  return g_test_run ();
}
