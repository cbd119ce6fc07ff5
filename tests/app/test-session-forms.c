/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-test"

#include "app-helpers.h"
#include "bb-keeper.h"
#include "store-helpers.h"

#define PATIENCE_MS 20000

/* Half-typed forms, as the session keeps them in the book. */

static void
said_cb (guint *n_said)
{
  (*n_said)++;
}

static void
type (BbSession  *session,
      const char *text)
{
  bb_session_keep_form (session, "form", text);
}

static void
rename_table (sqlite3    *plain,
              const char *from,
              const char *to)
{
  g_autofree char *sql = g_strdup_printf ("ALTER TABLE %s RENAME TO %s", from, to);

  g_assert_cmpint (helper_run_plain (plain, sql), ==, SQLITE_OK);
}

static gboolean
has_said_once (gpointer data)
{
  return *(guint *) data == 1;
}

static gboolean
has_said_twice (gpointer data)
{
  return *(guint *) data == 2;
}

static gboolean
is_kept (gpointer data)
{
  g_autofree char *kept = bb_session_dup_form (data, "form");

  return g_strcmp0 (kept, "four") == 0;
}

/* A disk that is full refuses each letter: it is told once, and again only after it was not full in between. */
static void
test_refused (void)
{
  g_autofree char *path = helper_new_path ();
  BbSession *session = NULL;
  sqlite3 *plain = NULL;
  guint n_said = 0;
  gulong id = 0;

  helper_close (helper_create (path));
  session = helper_open_session (path);
  id = g_signal_connect_swapped (session, "say", G_CALLBACK (said_cb), &n_said);
  plain = helper_open_plain (path);
  /* The session may be writing what was typed before. */
  g_assert_cmpint (sqlite3_busy_timeout (plain, PATIENCE_MS), ==, SQLITE_OK);
  rename_table (plain, "form_draft", "elsewhere");
  type (session, "o");
  type (session, "on");
  type (session, "one");
  helper_wait_until (has_said_once, &n_said);
  rename_table (plain, "elsewhere", "form_draft");
  type (session, "four");
  helper_wait_until (is_kept, session);
  helper_wait_idle ();
  g_assert_cmpuint (n_said, ==, 1);
  rename_table (plain, "form_draft", "elsewhere");
  type (session, "five");
  helper_wait_until (has_said_twice, &n_said);
  sqlite3_close (plain);
  g_signal_handler_disconnect (session, id);
  helper_end_session (session);
}

static char *
describe (gpointer owner)
{
  return g_strdup (*(const char **) owner);
}

static gboolean
is_forgotten (gpointer data)
{
  g_autofree char *kept = bb_session_dup_form (data, "form");

  return kept == NULL;
}

/* What is typed is kept when the person pauses, at once when the window closes, and no more once it is done with. */
static void
test_keeper (void)
{
  g_autofree char *path = helper_new_path ();
  const char *typed = "four";
  BbSession *session = NULL;
  BbKeeper *keeper = NULL;
  g_autofree char *kept = NULL;

  helper_close (helper_create (path));
  session = helper_open_session (path);
  keeper = bb_keeper_new (session, "form", describe, &typed);
  bb_keeper_keep_soon (keeper);
  g_assert_null (bb_keeper_dup_kept (keeper));
  helper_wait_until (is_kept, session);
  bb_keeper_forget (keeper);
  helper_wait_until (is_forgotten, session);

  bb_keeper_keep_soon (keeper);
  bb_keeper_rest (keeper);
  g_signal_emit_by_name (session, "closing");
  helper_wait_idle ();
  g_assert_null (bb_keeper_dup_kept (keeper));

  bb_keeper_keep_soon (keeper);
  g_signal_emit_by_name (session, "closing");
  helper_wait_until (is_kept, session);
  typed = NULL;
  bb_keeper_keep (keeper);
  helper_wait_idle ();
  kept = bb_keeper_dup_kept (keeper);
  g_assert_cmpstr (kept, ==, "four");
  g_assert_finalize_object (keeper);
  helper_end_session (session);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, G_TEST_OPTION_ISOLATE_DIRS, NULL);
  adw_init ();

  g_test_add_func ("/session-forms/refused", test_refused);
  g_test_add_func ("/session-forms/keeper", test_keeper);

  return g_test_run ();
}
