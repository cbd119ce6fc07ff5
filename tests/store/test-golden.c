/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-test"

#include "store-helpers.h"

#include <string.h>

#include "bb-migrate.h"

/* A book of every released schema, as make-golden.c made it then, opens with all that is in it. */

#define FIRST_WITH_JOBS 3
#define LAST_WITH_FREE_ORIGIN 11

static char *
copy_golden (guint schema)
{
  g_autofree char *name = g_strdup_printf ("golden-%u.book", schema);
  g_autofree char *golden = g_test_build_filename (G_TEST_DIST, "store", name, NULL);
  g_autofree char *path = helper_new_path ();
  g_autofree char *contents = NULL;
  gsize length = 0;
  g_autoptr (GError) error = NULL;

  g_assert_true (g_file_get_contents (golden, &contents, &length, &error));
  g_assert_no_error (error);
  g_assert_true (g_file_set_contents (path, contents, (gssize) length, NULL));

  return g_steal_pointer (&path);
}

static BbBook *
open_golden (guint schema)
{
  g_autofree char *path = copy_golden (schema);

  return helper_open (path);
}

static void
check_revisions (BbBook *book,
                 gint64  recipe,
                 gint64  sheet)
{
  g_autoptr (BbRevision) current = bb_book_load_current (book, recipe, NULL);
  g_autoptr (BbRevision) next = bb_book_load_by_code (book, &bb_revision_table, "R-1.2", NULL);
  g_autoptr (BbStanding) standing = NULL;

  g_assert_nonnull (current);
  g_assert_cmpstr (current->code, ==, "R-1.1");
  g_assert_cmpfloat (current->pretreat_laydown_g_per_m2, ==, 165.55555555555554);
  standing = bb_book_load_standing (book, current->id, NULL);
  g_assert_cmpint (standing->state, ==, BB_STATE_PROVEN);
  g_assert_cmpstr (standing->reason, ==, "3 of 3.");

  g_assert_nonnull (next);
  g_assert_cmpstr (next->note, ==, "Grüße vom Prüfstand.");
  g_assert_cmpint (next->dry_sheet, ==, sheet);
  g_assert_cmpint (bb_book_revision_is_used (book, next->id, NULL), ==, 0);
}

/* From the third schema on there are jobs. */
static void
check_jobs (BbBook *book)
{
  g_autoptr (BbJob) job = bb_book_load_by_code (book, &bb_job_table, "2503-01", NULL);
  g_autoptr (BbRun) run = bb_book_load_by_code (book, &bb_run_table, "2503-01.1.1", NULL);
  g_autoptr (BbLot) lot = bb_book_load_by_code (book, &bb_lot_table, "L-1", NULL);
  double left_g = 0;

  g_assert_cmpint (job->state, ==, BB_JOB_RUNNING);
  g_assert_cmpint (run->good, ==, 10);
  g_assert_cmpuint (run->weighed->len, ==, 1);
  g_assert_cmpfloat (g_array_index (run->weighed, BbWeighed, 0).wet_g, ==, 176.5);
  g_assert_cmpstr (g_array_index (run->departures, BbDeparture, 0).setting, ==, "cure_s");
  g_assert_true (bb_book_get_lot_left (book, lot->id, &left_g, NULL));
  g_assert_cmpfloat (left_g, ==, 750);
}

static void
test_opens (gconstpointer data)
{
  BbBook *book = open_golden (GPOINTER_TO_UINT (data));
  g_autoptr (BbBlank) blank = bb_book_load_by_code (book, &bb_blank_table, "TEE-1", NULL);
  g_autoptr (BbRecipe) recipe = bb_book_load_by_code (book, &bb_recipe_table, "R-1", NULL);
  g_autoptr (BbSupply) sheet = bb_book_load_by_code (book, &bb_supply_table, "SH-1", NULL);
  g_autoptr (BbWashTest) test = bb_book_load_by_code (book, &bb_wash_test_table, "W-1", NULL);
  g_autoptr (GPtrArray) readings = bb_book_load_referring (book, &bb_reading_table, &bb_wash_test_table, test->id,
                                                           NULL);
  g_autoptr (GArray) found = helper_search (book, &bb_recipe_table, "prufstand tee", 0);
  g_autofree char *form = bb_book_dup_form (book, "blank/new", NULL);
  g_autoptr (GPtrArray) findings = NULL;
  g_autoptr (GError) error = NULL;

  g_assert_cmpstr (blank->maker, ==, "Quellenhof Mill");
  g_assert_cmpuint (blank->composition->len, ==, 2);
  g_assert_cmpfloat (g_array_index (blank->composition, BbFibreShare, 1).fraction, ==, 0.4);
  check_revisions (book, recipe->id, sheet->id);
  g_assert_cmpuint (readings->len, ==, 1);
  g_assert_cmpint (((const BbReading *) g_ptr_array_index (readings, 0))->change, ==, BB_GRADE_4_5);
  g_assert_cmpuint (found->len, ==, 1);
  g_assert_cmpstr (form, ==, "{\"name\":\"Ta\"}");
  if (GPOINTER_TO_UINT (data) >= FIRST_WITH_JOBS)
    check_jobs (book);

  findings = bb_book_check (book, NULL, &error);
  g_assert_no_error (error);
  for (guint i = 0; i < findings->len; i++)
    g_test_message ("%s", (const char *) g_ptr_array_index (findings, i));
  g_assert_cmpuint (findings->len, ==, 0);
  helper_close (book);
}

/* Before the twelfth schema any plan could be said to have the shop's numbers, or a standard's. */
static void
test_plan_origins (void)
{
  g_autofree char *path = copy_golden (LAST_WITH_FREE_ORIGIN);
  sqlite3 *plain = helper_open_plain (path);
  BbBook *book = NULL;
  g_autoptr (GPtrArray) problems = NULL;
  g_autoptr (BbWashPlan) published = NULL;
  g_autoptr (BbWashPlan) own = NULL;
  g_autoptr (GError) error = NULL;

  g_assert_cmpint (helper_run_plain (plain,
                                     "INSERT INTO wash_plan (code, name, standard, publication, procedure, "
                                     "launderings, rest_days, cycles_per_week, grace_days, origin) VALUES "
                                     "('P-ISO', 'Published', 'iso-6330', 'ISO 6330:2021', '4N', 1, 1, 5, 1, 'shop'), "
                                     "('P-OWN', 'Own', 'shop', NULL, NULL, 1, 1, 5, 1, 'standard');"
                                     "INSERT INTO wash_plan_grade_at (wash_plan, position, cycles) "
                                     "SELECT id, 0, 5 FROM wash_plan WHERE code LIKE 'P-%'"), ==, SQLITE_OK);
  sqlite3_close (plain);

  book = helper_open (path);
  published = bb_book_load_by_code (book, &bb_wash_plan_table, "P-ISO", NULL);
  own = bb_book_load_by_code (book, &bb_wash_plan_table, "P-OWN", NULL);
  g_assert_cmpint (published->origin, ==, BB_PLAN_ORIGIN_MEMORY);
  g_assert_cmpint (own->origin, ==, BB_PLAN_ORIGIN_SHOP);
  problems = bb_book_check (book, NULL, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (problems->len, ==, 0);

  helper_close (book);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, G_TEST_OPTION_ISOLATE_DIRS, NULL);

  for (guint i = bb_migrations_get_first (); i <= bb_migrations_get_latest (); i++)
    {
      g_autofree char *path = g_strdup_printf ("/golden/opens/%u", i);

      g_test_add_data_func (path, GUINT_TO_POINTER (i), test_opens);
    }

  g_test_add_func ("/golden/plan-origins", test_plan_origins);

  return g_test_run ();
}
