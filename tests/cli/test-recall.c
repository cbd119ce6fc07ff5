/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <glib/gstdio.h>
#include <sqlite3.h>
#include <string.h>
#include <unistd.h>

#include "run.h"

#define RUN(...) run_cli ("", 0, "--book", self->book, "recall", __VA_ARGS__, NULL)

static void
test_words (Fixture       *self,
            gconstpointer  data)
{
  g_autoptr (Answer) both = RUN ("mudwhistle", "BLACK");
  g_autoptr (Answer) customer = RUN ("skelligrove");
  g_autoptr (Answer) one = RUN ("mudwhistle", "--limit", "1", "--state", "proven");
  g_autoptr (Answer) mistyped = RUN ("mudwistle");
  g_autoptr (Answer) none = RUN ("xylophone");
  g_autoptr (Answer) quoted = RUN ("\" OR * NEAR(");

  (void) data;
  assert_told (both, "MUD-BLACK.3 ");
  assert_told (both, "Proven");
  assert_told (both, "1:2 150 g/m² · dry 150 °C 40 s · Underbase with knockout 170 g/m² · cure 160 °C 75 s\n");
  assert_told (both, "\nJobs:\n");
  g_assert_true (g_str_has_prefix (customer->out, "Jobs:\n"));
  assert_told (customer, "Winter series");
  g_assert_cmpint (strchr (one->out, '\n') - one->out, ==, (gssize) strlen (one->out) - 1);
  g_assert_true (g_str_has_prefix (mistyped->out, "Showing “mudwhistle” for “mudwistle”.\n"));
  assert_told (none, "No recipe and no job has all of this.");
  g_assert_cmpint (quoted->status, ==, 0);
}

/* The demo's polyester tees are 140 g/m²; the heaviest fabrics are its hoodies. */
static void
test_filters (Fixture       *self,
              gconstpointer  data)
{
  g_autoptr (Answer) heavy = RUN ("--mass-least-g-per-m2", "300", "--state", "proven");
  g_autoptr (Answer) fibre = RUN ("--fibre", "hemp");
  g_autoptr (Answer) colour = RUN ("--srgb", "#161618", "--state", "proven");
  g_autoptr (Answer) pale = RUN ("tee", "--srgb", "#ffffff", "--state", "proven");
  g_autoptr (Answer) jobs = RUN ("--job-state", "planned", "--since", "2026-10-01");

  (void) data;
  assert_told (heavy, "KILN-");
  g_assert_null (strstr (heavy->out, "MUD-"));
  assert_told (fibre, "RETT-HEMP.1");
  assert_told (colour, "MUD-BLACK.3");
  g_assert_null (strstr (colour->out, "MUD-WHITE"));
  g_assert_null (strstr (colour->out, "MUD-LIGHT"));
  assert_told (pale, "MUD-WHITE.2");
  g_assert_null (strstr (pale->out, "MUD-BLACK"));
  g_assert_true (g_str_has_prefix (jobs->out, "Jobs:\n"));
  assert_told (jobs, "Planned");
}

static void
test_json (Fixture       *self,
           gconstpointer  data)
{
  g_autoptr (Answer) json = RUN ("mudwistle", "--json");
  g_autoptr (Answer) nearest = RUN ("--nearest", "MUDWHISTLE/MUDWHISTLE-BLACK", "--json");
  g_autoptr (JsonNode) node = parse (json);
  g_autoptr (JsonNode) near_node = parse (nearest);
  JsonObject *found = json_node_get_object (node);
  JsonArray *recipes = json_object_get_array_member (found, "recipes");
  JsonArray *jobs = json_object_get_array_member (found, "jobs");
  JsonArray *near = json_object_get_array_member (json_node_get_object (near_node), "nearest");
  JsonObject *first = json_array_get_object_element (near, 0);

  (void) data;
  g_assert_cmpstr (json_object_get_string_member (found, "corrected"), ==, "mudwhistle");
  g_assert_cmpuint (json_array_get_length (recipes), >, 3);
  g_assert_cmpuint (json_array_get_length (jobs), >, 3);
  g_assert_true (json_object_has_member (json_array_get_object_element (recipes, 0), "revision"));
  g_assert_false (json_object_has_member (json_array_get_object_element (jobs, 0), "id"));
  g_assert_false (json_object_has_member (found, "nearest"));

  g_assert_cmpuint (json_array_get_length (near), ==, 5);
  g_assert_true (json_object_get_boolean_member (first, "same_garment"));
  g_assert_cmpstr (json_object_get_string_member (first, "reasons"), ==,
                   "same fabric; same colour; proven on 3 specimens");
  g_assert_cmpfloat (json_object_get_double_member (first, "distance"), <, 0.05);
}

static void
test_nearest (Fixture       *self,
              gconstpointer  data)
{
  g_autoptr (Answer) garment = RUN ("--nearest", "MUDWHISTLE/bLaCk", "--limit", "2");
  g_autoptr (Answer) blank = RUN ("--nearest", "MUDWHISTLE");
  g_autoptr (Answer) both = RUN ("hemp", "--nearest", "MUDWHISTLE");

  (void) data;
  assert_told (garment, "Nearest to Mudwhistle everyday tee, Black:\nMUD-BLACK.3 ");
  assert_told (garment, "same fabric; same colour; proven on 3 specimens\n");
  assert_told (blank, "Nearest to Mudwhistle everyday tee:\n");
  assert_told (both, "RETT-HEMP.1");
  assert_told (both, "\n\nNearest to ");
}

static void
test_refusals (Fixture       *self,
               gconstpointer  data)
{
  g_autoptr (Answer) nothing = run_cli ("", 0, "recall", "--book", self->book, NULL);
  g_autoptr (Answer) no_limit = RUN ("a", "--limit", "0");
  g_autoptr (Answer) no_blank = RUN ("--nearest", "NO-SUCH");
  g_autoptr (Answer) no_colour = RUN ("--nearest", "MUDWHISTLE/plaid");
  g_autoptr (Answer) no_srgb = RUN ("--srgb", "#12345g");
  g_autoptr (Answer) no_fibre = RUN ("--fibre", "straw");
  g_autoptr (Answer) backwards = RUN ("--since", "2026-02-01", "--until", "2026-01-01");
  g_autoptr (Answer) no_day = RUN ("--since", "2026-02-30");

  (void) data;
  assert_refused (nothing, 2, "needs words to look for, a filter, or --nearest");
  assert_refused (no_limit, 2, "--limit: 0 is below the minimum 1");
  assert_refused (no_blank, 1, "--nearest: there is no blank “NO-SUCH”.");
  assert_refused (no_colour, 1, "--nearest: MUDWHISTLE comes in no colour “plaid”.");
  assert_refused (no_srgb, 2, "srgb: #12345g is not a colour");
  assert_refused (no_fibre, 2, "fibre");
  assert_refused (backwards, 2, "until: the last day lies before the first.");
  assert_refused (no_day, 2, "since");
}

/* What can't be read is not the same as what is not there. */
static void
test_damage (Fixture       *self,
             gconstpointer  data)
{
  g_autoptr (Answer) nearest = NULL;
  sqlite3 *db = NULL;

  (void) data;
  g_assert_cmpint (sqlite3_open (self->book, &db), ==, SQLITE_OK);
  g_assert_cmpint (sqlite3_exec (db, "DROP TABLE blank_composition", NULL, NULL, NULL), ==, SQLITE_OK);
  g_assert_cmpint (sqlite3_close (db), ==, SQLITE_OK);

  nearest = RUN ("--nearest", "MUDWHISTLE");
  assert_refused (nearest, 1, "blank_composition");
}

#define ADD(path, func) g_test_add ("/cli-recall/" path, Fixture, demo, set_up, func, tear_down)

int
main (int   argc,
      char *argv[])
{
  g_autofree char *demo = g_strdup_printf ("%s/blankbook-cli-recall-%d.book", g_get_tmp_dir (), (int) getpid ());
  int status = 0;

  g_test_init (&argc, &argv, G_TEST_OPTION_ISOLATE_DIRS, NULL);
  ADD ("words", test_words);
  ADD ("filters", test_filters);
  ADD ("json", test_json);
  ADD ("nearest", test_nearest);
  ADD ("refusals", test_refusals);
  ADD ("damage", test_damage);
  status = g_test_run ();
  g_unlink (demo);

  return status;
}
