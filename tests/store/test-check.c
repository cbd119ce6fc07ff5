/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-test"

#include "store-helpers.h"

#include <string.h>

/* Each way in which another program can spoil a book, and that the check says so. */

static GPtrArray *
check (BbBook *book)
{
  g_autoptr (GError) error = NULL;
  GPtrArray *findings = bb_book_check (book, NULL, &error);

  g_assert_no_error (error);

  return findings;
}

static void
spoil (const char *sql,
       const char *wanted)
{
  g_autofree char *path = helper_new_path ();
  BbBook *book = helper_create (path);
  g_autoptr (Shop) shop = helper_fill (book);
  g_autoptr (GPtrArray) before = NULL;
  g_autoptr (GPtrArray) after = NULL;
  sqlite3 *plain = NULL;
  gboolean found = FALSE;

  helper_fill_jobs (book, shop);
  before = check (book);
  g_assert_cmpuint (before->len, ==, 0);

  plain = helper_open_plain (path);
  if (helper_run_plain (plain, sql) != SQLITE_OK)
    g_error ("%s: %s", sql, sqlite3_errmsg (plain));
  sqlite3_close (plain);

  after = check (book);
  g_assert_cmpuint (after->len, >, 0);
  for (guint i = 0; i < after->len; i++)
    found = found || strstr (g_ptr_array_index (after, i), wanted) != NULL;
  if (!found)
    g_error ("%s: nothing says “%s”, but “%s”", sql, wanted, (const char *) g_ptr_array_index (after, 0));
  helper_close (book);
}

static void
test_records (void)
{
  spoil ("UPDATE blank SET name = 'Tee' || char (8238) || 'x'", "blank 1: name");
  spoil ("UPDATE blank_composition SET fraction = 0.5 WHERE position = 0", "blank 1: composition");
  spoil ("UPDATE colourway SET srgb = 'nothing'", "colourway 1: srgb");
  spoil ("UPDATE reading SET read_at = '2025-02-31'", "reading 1: read_at");
  spoil ("PRAGMA ignore_check_constraints = ON; UPDATE blank SET mass_g_per_m2 = 4000", "blank 1: mass_g_per_m2");
  spoil ("PRAGMA ignore_check_constraints = ON; UPDATE blank SET knit = 'lace'", "lace");
}

static void
test_last_runs (void)
{
  spoil ("DELETE FROM last_run", "summary of the runs");
  spoil ("UPDATE last_run SET revision = 7", "summary of the runs");
}

static void
test_references (void)
{
  spoil ("UPDATE wash_test SET colourway = 77", "wash_test 1: its colourway");
  spoil ("DELETE FROM person", "person");
  spoil ("DROP TRIGGER supply_kind; UPDATE supply SET kind = 'ink' WHERE id = 1",
         "revision 1: pretreat_product: The record is of the kind 'Ink'");
}

static void
test_search (void)
{
  spoil ("UPDATE recipe SET name = 'Ruby'", "recipe: 1 record is found by the wrong words");
  spoil ("UPDATE recipe SET name = 'Ruby'", "wash_test: 1 record is found by the wrong words");
  spoil ("UPDATE supply SET kind = 'ink' WHERE id = 2", "supply: 1 record is found by the wrong words");
  spoil ("DELETE FROM search_blank", "blank: 1 record is found by the wrong words");
  spoil ("INSERT INTO search_recipe (rowid, code) VALUES (77, 'X')", "recipe: 1 record is found by the wrong words");
  spoil ("DELETE FROM search_gram", "words are not found when they are mistyped");
  spoil ("UPDATE search_supply_content SET c1 = 'Ruby'", "supply: the search is damaged");
  spoil ("DELETE FROM search_wash_test_data WHERE id > 10", "wash_test: the search is damaged");
}

static void
test_rules (void)
{
  spoil ("DROP TRIGGER event_delete", "trigger event_delete");
  spoil ("DROP TRIGGER event_delete; CREATE TRIGGER event_delete BEFORE DELETE ON event BEGIN SELECT 1; END",
         "trigger event_delete");
  spoil ("CREATE TRIGGER more AFTER INSERT ON blank BEGIN DELETE FROM reading; END", "trigger more");
  spoil ("CREATE TABLE other (x)", "table other");
  spoil ("CREATE TABLE \"an\nother\" (x)", "table an\\u000aother");
  spoil ("DROP INDEX recipe_blank", "index recipe_blank");
}

static void
test_can_be_stopped (void)
{
  g_autofree char *path = helper_new_path ();
  BbBook *book = helper_create (path);
  g_autoptr (GCancellable) cancellable = g_cancellable_new ();
  g_autoptr (GPtrArray) findings = NULL;
  g_autoptr (GError) error = NULL;

  g_cancellable_cancel (cancellable);
  g_assert_null (bb_book_check (book, cancellable, &error));
  g_assert_error (error, G_IO_ERROR, G_IO_ERROR_CANCELLED);
  g_clear_error (&error);
  findings = bb_book_check (book, NULL, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (findings->len, ==, 0);
  helper_close (book);
}

static gpointer
cancel_soon (gpointer data)
{
  g_usleep (G_USEC_PER_SEC / 50);
  g_cancellable_cancel (data);

  return NULL;
}

static gboolean
fill_much (BbBook    *book,
           gpointer   data,
           GError   **error)
{
  (void) data;
  (void) error;
  for (guint i = 0; i < 4000; i++)
    {
      g_autofree char *code = g_strdup_printf ("B-%u", i);
      g_autoptr (BbBlank) blank = helper_make_blank (code, "Tee");

      helper_save (book, &bb_blank_table, blank);
    }

  return TRUE;
}

static void
test_can_be_stopped_on_the_way (void)
{
  g_autofree char *path = helper_new_path ();
  BbBook *book = helper_create (path);
  g_autoptr (GCancellable) cancellable = g_cancellable_new ();
  GThread *thread = NULL;
  g_autoptr (GError) error = NULL;

  g_assert_true (bb_book_in_transaction (book, fill_much, NULL, &error));
  thread = g_thread_new ("cancel", cancel_soon, cancellable);
  for (guint i = 0; error == NULL && i < 1000; i++)
    {
      g_autoptr (GPtrArray) findings = bb_book_check (book, cancellable, &error);

      g_assert_true ((findings == NULL) == (error != NULL));
    }
  g_assert_error (error, G_IO_ERROR, G_IO_ERROR_CANCELLED);
  g_thread_join (thread);

  /* And the book is as usable as before. */
  g_clear_error (&error);
  g_assert_true (bb_book_keep_form (book, "x", "{}", &error));
  g_assert_no_error (error);
  helper_close (book);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, G_TEST_OPTION_ISOLATE_DIRS, NULL);

  g_test_add_func ("/check/records", test_records);
  g_test_add_func ("/check/last-runs", test_last_runs);
  g_test_add_func ("/check/references", test_references);
  g_test_add_func ("/check/search", test_search);
  g_test_add_func ("/check/rules", test_rules);
  g_test_add_func ("/check/can-be-stopped", test_can_be_stopped);
  g_test_add_func ("/check/can-be-stopped-on-the-way", test_can_be_stopped_on_the_way);

  return g_test_run ();
}
