/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-test"

#include "app-helpers.h"
#include "bb-line-list.h"
#include "store-helpers.h"

/* The model behind every list: all keys at once, lines when they are looked at. */

typedef struct {
  guint n_calls;
  guint position;
  guint removed;
  guint added;
} Change;

static void
changed_cb (GListModel *model,
            guint       position,
            guint       removed,
            guint       added,
            Change     *change)
{
  (void) model;
  change->n_calls++;
  change->position = position;
  change->removed = removed;
  change->added = added;
}

static void
search (BbLineList *list,
        const char *text,
        gint64      recipe)
{
  const BbQuery query = { .text = text, .recipe = recipe };

  bb_line_list_search (list, &query);
}

static guint
count (BbLineList *list)
{
  return g_list_model_get_n_items (G_LIST_MODEL (list));
}

/* The key of what is shown at a position, 0 where nothing is. */
static gint64
load_id (BbLineList    *list,
         const BbTable *table,
         guint          position)
{
  const BbTable *lines = bb_book_get_line_table (table);
  gconstpointer record = bb_line_list_load (list, position);

  return record != NULL ? bb_field_get_integer (bb_table_find_field (lines, "id"), record) : 0;
}

static void
test_loads_what_is_looked_at (void)
{
  const BbTable * const tables[] = { &bb_blank_table, &bb_supply_table, &bb_wash_test_table };
  BbSession *session = helper_open_crowd ();

  for (guint i = 0; i < G_N_ELEMENTS (tables); i++)
    {
      BbLineList *list = bb_line_list_new (session, tables[i]);
      Change change = { 0 };

      g_signal_connect (list, "items-changed", G_CALLBACK (changed_cb), &change);
      g_assert_true (g_list_model_get_item_type (G_LIST_MODEL (list)) == G_TYPE_OBJECT);
      g_assert_cmpuint (count (list), ==, 0);
      search (list, "", 0);
      g_assert_cmpuint (change.n_calls, ==, 1);
      g_assert_cmpuint (change.position, ==, 0);
      g_assert_cmpuint (change.removed, ==, 0);
      g_assert_cmpuint (change.added, ==, count (list));
      /* The supplies have the recipes' pretreat among them. */
      g_assert_cmpuint (count (list), ==, MANY + (tables[i] == &bb_supply_table ? 1 : 0));
      g_assert_cmpuint (bb_line_list_get_n_loaded (list), ==, 0);

      /* The newest first. */
      g_assert_cmpint (bb_line_list_get_id (list, 0), ==, 1000 + MANY);
      g_assert_cmpint (bb_line_list_get_id (list, 1), ==, 1000 + MANY - 1);
      g_assert_cmpint (bb_line_list_get_id (list, MANY - 1), ==, 1001);
      g_assert_cmpint (bb_line_list_get_id (list, count (list)), ==, 0);
      g_assert_cmpuint (bb_line_list_get_n_loaded (list), ==, 0);
      g_assert_cmpint (load_id (list, tables[i], 0), ==, 1000 + MANY);
      g_assert_cmpint (load_id (list, tables[i], 1), ==, 1000 + MANY - 1);
      g_assert_cmpint (load_id (list, tables[i], MANY - 1), ==, 1001);
      g_assert_cmpuint (bb_line_list_get_n_loaded (list), ==, 2);

      g_assert_cmpuint (bb_line_list_find (list, 1001), ==, MANY - 1);
      g_assert_cmpuint (bb_line_list_find (list, 7), ==, G_MAXUINT);
      g_assert_cmpuint (bb_line_list_get_n_loaded (list), ==, 2);

      search (list, "", 0);
      g_assert_cmpuint (change.n_calls, ==, 1);
      g_assert_cmpuint (bb_line_list_get_n_loaded (list), ==, 0);
      g_assert_finalize_object (list);
    }
  helper_end_session (session);
}

/* What is found is what plain SQL finds. */
static void
test_counts (void)
{
  static const struct {
    const BbTable *table;
    const char *text;
    gint64 recipe;
    const char *sql;
  } cases[] = {
    { &bb_blank_table, "amber", 0, "SELECT COUNT (*) FROM blank WHERE name LIKE '%amber%'" },
    { &bb_blank_table, "amb te", 0, "SELECT COUNT (*) FROM blank WHERE name LIKE 'amber%' AND name LIKE '% te%'" },
    { &bb_blank_table, "C-77", 0, "SELECT COUNT (*) FROM blank WHERE code LIKE 'C-77%'" },
    { &bb_blank_table, "nobody", 0, "SELECT 0" },
    { &bb_supply_table, "clean", 0, "SELECT COUNT (*) FROM supply WHERE kind = 'cleaner'" },
    { &bb_supply_table, "umber ink", 0, "SELECT COUNT (*) FROM supply WHERE kind = 'ink' AND name LIKE 'umber%'" },
    { &bb_wash_test_table, "", 5, "SELECT COUNT (*) FROM wash_test WHERE revision = 5" },
    { &bb_wash_test_table, "W-1", 5, "SELECT COUNT (*) FROM wash_test WHERE revision = 5 AND code LIKE 'W-1%'" },
    { &bb_wash_test_table, "R-19.1", 0, "SELECT COUNT (*) FROM wash_test WHERE revision = 20" },
  };
  BbSession *session = helper_open_crowd ();
  sqlite3 *plain = helper_open_plain (bb_book_get_path (bb_session_get_book (session)));

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (BbLineList) list = bb_line_list_new (session, cases[i].table);

      search (list, cases[i].text, cases[i].recipe);
      if (count (list) != helper_count_plain (plain, cases[i].sql))
        g_error ("“%s”: %u, but %s", cases[i].text, count (list), cases[i].sql);
    }
  sqlite3_close (plain);
  helper_end_session (session);
}

/* Another program took a record away after the search: its place stays empty, and the others where they are. */
static void
test_gone_meanwhile (void)
{
  BbSession *session = helper_open_crowd ();
  BbLineList *list = bb_line_list_new (session, &bb_supply_table);
  sqlite3 *plain = helper_open_plain (bb_book_get_path (bb_session_get_book (session)));

  search (list, "", 0);
  g_assert_cmpint (helper_run_plain (plain, "DELETE FROM supply WHERE code = 'S-19998'"), ==, SQLITE_OK);
  sqlite3_close (plain);
  g_assert_cmpint (load_id (list, &bb_supply_table, 1), ==, 1000 + 19999);
  g_assert_cmpint (load_id (list, &bb_supply_table, 2), ==, 0);
  g_assert_cmpint (load_id (list, &bb_supply_table, 3), ==, 1000 + 19997);
  g_assert_finalize_object (list);
  helper_end_session (session);
}

static void
say_cb (BbSession  *session,
        const char *text,
        guint      *n_said)
{
  (void) session;
  g_test_message ("%s", text);
  (*n_said)++;
}

/* What can't be read is complained of once, and the list stays usable. */
static void
test_unreadable (void)
{
  BbSession *session = helper_open_crowd ();
  BbLineList *list = bb_line_list_new (session, &bb_blank_table);
  sqlite3 *plain = helper_open_plain (bb_book_get_path (bb_session_get_book (session)));
  guint n_said = 0;

  g_signal_connect (session, "say", G_CALLBACK (say_cb), &n_said);
  search (list, "", 0);
  g_assert_cmpint (helper_run_plain (plain, "PRAGMA ignore_check_constraints = ON;"
                                            "UPDATE blank SET knit = 'lace' WHERE id = 20990"), ==, SQLITE_OK);
  sqlite3_close (plain);
  g_assert_cmpint (load_id (list, &bb_blank_table, 0), ==, 0);
  g_assert_cmpint (load_id (list, &bb_blank_table, 1), ==, 0);
  g_assert_cmpuint (n_said, ==, 1);
  g_assert_cmpint (load_id (list, &bb_blank_table, 100), ==, 1000 + MANY - 100);
  g_assert_cmpuint (n_said, ==, 1);
  g_assert_finalize_object (list);
  helper_end_session (session);
}

static void
reloaded_cb (BbLineList *list,
             guint      *n_reloaded)
{
  (void) list;
  (*n_reloaded)++;
}

/* A place stays the same object whatever is in it, and the list tells of no more than places that come and go. */
static void
test_places_stay (void)
{
  BbSession *session = helper_open_crowd ();
  BbLineList *list = bb_line_list_new (session, &bb_wash_test_table);
  g_autoptr (GObject) first = NULL;
  g_autoptr (GObject) again = NULL;
  Change change = { 0 };
  guint n_reloaded = 0;

  search (list, "", 0);
  first = g_list_model_get_item (G_LIST_MODEL (list), 0);
  g_signal_connect (list, "items-changed", G_CALLBACK (changed_cb), &change);
  g_signal_connect (list, "reloaded", G_CALLBACK (reloaded_cb), &n_reloaded);

  search (list, "W-1234", 0);
  g_assert_cmpuint (count (list), ==, 11);
  g_assert_cmpuint (change.n_calls, ==, 1);
  g_assert_cmpuint (change.position, ==, 11);
  g_assert_cmpuint (change.removed, ==, MANY - 11);
  g_assert_cmpuint (change.added, ==, 0);
  again = g_list_model_get_item (G_LIST_MODEL (list), 0);
  g_assert_true (first == again);
  g_assert_cmpint (load_id (list, &bb_wash_test_table, 0), ==, 1000 + 12349);

  search (list, "W-1235", 0);
  g_assert_cmpuint (change.n_calls, ==, 1);
  g_assert_cmpint (load_id (list, &bb_wash_test_table, 0), ==, 1000 + 12359);
  search (list, "", 0);
  g_assert_cmpuint (change.n_calls, ==, 2);
  g_assert_cmpuint (change.position, ==, 11);
  g_assert_cmpuint (change.removed, ==, 0);
  g_assert_cmpuint (change.added, ==, MANY - 11);
  g_assert_cmpuint (n_reloaded, ==, 3);
  g_assert_finalize_object (list);
  helper_end_session (session);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, G_TEST_OPTION_ISOLATE_DIRS, NULL);
  gtk_init ();

  g_test_add_func ("/line-list/loads-what-is-looked-at", test_loads_what_is_looked_at);
  g_test_add_func ("/line-list/counts", test_counts);
  g_test_add_func ("/line-list/gone-meanwhile", test_gone_meanwhile);
  g_test_add_func ("/line-list/unreadable", test_unreadable);
  g_test_add_func ("/line-list/places-stay", test_places_stay);

  return g_test_run ();
}
