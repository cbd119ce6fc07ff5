/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-test"

#include "app-helpers.h"
#include "bb-field-row.h"
#include "bb-run.h"
#include "store-helpers.h"

/* What was set otherwise in a run is chosen from the settings of a revision, not spelt. */

static BbSession *
open_empty (void)
{
  g_autofree char *path = helper_new_path ();

  helper_close (helper_create (path));

  return helper_open_session (path);
}

static BbFieldRow *
make_row (BbSession *session)
{
  return g_object_ref_sink (bb_field_row_new (session, &bb_departure_table,
                                              bb_table_find_field (&bb_departure_table, "setting")));
}

static void
test_name_is_kept (void)
{
  BbSession *session = open_empty ();
  BbFieldRow *row = make_row (session);
  BbFieldRow *later = make_row (session);
  g_autoptr (BbDeparture) departure = bb_departure_new ();
  g_autoptr (BbDeparture) read = bb_departure_new ();
  g_autofree char *state = NULL;
  g_autofree char *message = NULL;

  departure->setting = g_strdup ("cure_c");
  bb_field_row_load (row, departure);
  g_assert_true (bb_field_row_store (row, read, &message));
  g_assert_cmpstr (read->setting, ==, "cure_c");

  state = bb_field_row_dup_state (row);
  bb_field_row_set_state (later, state, BB_UNITS_METRIC);
  g_assert_true (bb_field_row_store (later, read, &message));
  g_assert_cmpstr (read->setting, ==, "cure_c");

  g_object_unref (row);
  g_object_unref (later);
  helper_end_session (session);
}

static void
test_nothing_is_chosen_at_first (void)
{
  BbSession *session = open_empty ();
  BbFieldRow *row = make_row (session);
  g_autoptr (BbDeparture) read = bb_departure_new ();
  g_autofree char *message = NULL;

  read->setting = g_strdup ("dry_s");
  g_assert_true (bb_field_row_store (row, read, &message));
  g_assert_null (read->setting);

  g_object_unref (row);
  helper_end_session (session);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, G_TEST_OPTION_ISOLATE_DIRS, NULL);
  adw_init ();

  g_test_add_func ("/setting-row/name-is-kept", test_name_is_kept);
  g_test_add_func ("/setting-row/nothing-is-chosen-at-first", test_nothing_is_chosen_at_first);

  return g_test_run ();
}
