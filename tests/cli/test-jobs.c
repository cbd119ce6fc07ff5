/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <glib/gstdio.h>
#include <string.h>
#include <unistd.h>

#include "run.h"

#define RUN(...) run_cli ("", 0, "--book", self->book, __VA_ARGS__, NULL)

static void
test_lists (Fixture       *self,
            gconstpointer  data)
{
  g_autoptr (Answer) jobs = RUN ("job", "list");
  g_autoptr (Answer) planned = RUN ("job", "list", "--state", "planned", "--json");
  g_autoptr (Answer) runs = RUN ("run", "list", "--limit", "3");
  g_autoptr (Answer) lots = RUN ("lot", "list");
  g_autoptr (JsonNode) node = parse (planned);
  JsonArray *array = json_node_get_array (node);

  (void) data;
  assert_told (jobs, "2610-04");
  assert_told (jobs, "Skelligrove Cold-Water Swimmers");
  assert_told (runs, "2610-04.1.1");
  assert_told (lots, "BIT-2606");
  g_assert_cmpuint (json_array_get_length (array), >, 0);
  for (guint i = 0; i < json_array_get_length (array); i++)
    {
      JsonObject *job = json_array_get_object_element (array, i);

      g_assert_cmpstr (json_object_get_string_member (job, "state"), ==, "planned");
      g_assert_false (json_object_has_member (job, "id"));
    }
}

static void
test_show (Fixture       *self,
           gconstpointer  data)
{
  g_autoptr (Answer) job = RUN ("job", "show", "2610-04");
  g_autoptr (Answer) job_json = RUN ("job", "show", "2610-04", "--json");
  g_autoptr (Answer) run = RUN ("run", "show", "2610-04.1.1");
  g_autoptr (Answer) run_json = RUN ("run", "show", "2610-04.1.1", "--json");
  g_autoptr (Answer) lot = RUN ("lot", "show", "BIT-2606");
  g_autoptr (Answer) lot_json = RUN ("lot", "show", "BIT-2606", "--json");
  g_autoptr (JsonNode) job_node = parse (job_json);
  g_autoptr (JsonNode) run_node = parse (run_json);
  g_autoptr (JsonNode) lot_node = parse (lot_json);

  (void) data;
  assert_told (job, "MUD-BLACK.3");
  assert_told (job, "wave-and-flask.png");
  assert_told (run, "Sprayer by the window");
  assert_told (run, "Containers");
  assert_told (lot, "Left: ");
  g_assert_cmpuint (json_array_get_length (json_object_get_array_member (json_node_get_object (job_node), "lines")), ==,
                    2);
  g_assert_cmpuint (json_array_get_length (json_object_get_array_member (json_node_get_object (run_node),
                                                                         "lot_entries")), ==, 3);
  g_assert_cmpfloat (json_object_get_double_member (json_node_get_object (lot_node), "left_g"), >, 0);
}

/* The numbers of the sheet are those of its calculators; here only that they arrive. */
static void
test_sheet (Fixture       *self,
            gconstpointer  data)
{
  g_autoptr (Answer) text = RUN ("job", "sheet", "2610-04", "--today", "2026-11-04");
  g_autoptr (Answer) json = RUN ("job", "sheet", "2610-04", "--today", "2026-11-04", "--json");
  g_autoptr (JsonNode) node = parse (json);
  JsonObject *sheet = json_node_get_object (node);
  JsonObject *mix = json_array_get_object_element (json_object_get_array_member (sheet, "mixes"), 0);

  (void) data;
  assert_told (text, "Line 2610-04.1");
  assert_told (text, "Mix of Bittern");
  assert_told (text, "BIT-2606");
  g_assert_cmpint (json_object_get_int_member (sheet, "garments"), ==, 88);
  g_assert_false (json_object_has_member (mix, "supply"));
  g_assert_false (json_object_has_member (json_array_get_object_element (json_object_get_array_member (mix, "takes"),
                                                                         0), "lot"));
}

/* Looking changes nothing; opening makes a job that can be shown. */
static void
test_repeat (Fixture       *self,
             gconstpointer  data)
{
  g_autoptr (Answer) looked = RUN ("job", "repeat", "2610-04", "--today", "2026-11-04");
  g_autoptr (Answer) before = RUN ("job", "show", "2611-01");
  g_autoptr (Answer) opened = RUN ("job", "repeat", "2610-04", "--today", "2026-11-04", "--open", "--json");
  g_autoptr (JsonNode) node = parse (opened);
  const char *code = json_object_get_string_member (json_node_get_object (node), "opened");
  g_autoptr (Answer) shown = RUN ("job", "show", code);

  (void) data;
  assert_told (looked, "was calibrated on 2026-11-02");
  assert_told (looked, "Nothing has changed since.");
  g_assert_cmpint (before->status, ==, 1);
  g_assert_cmpstr (code, ==, "2611-01");
  assert_told (shown, "Repeats");
  assert_told (shown, "MUD-BLACK.3");
  assert_told (shown, "Planned");
}

static void
test_trace (Fixture       *self,
            gconstpointer  data)
{
  g_autofree char *csv = g_build_filename (self->folder, "fault.csv", NULL);
  g_autofree char *pdf = g_build_filename (self->folder, "fault.pdf", NULL);
  g_autoptr (Answer) text = RUN ("trace", "lot", "BIT-2606", "--csv", csv, "--pdf", pdf);
  g_autoptr (Answer) again = RUN ("trace", "lot", "BIT-2606", "--csv", csv);
  g_autoptr (Answer) json = RUN ("trace", "person", "TV", "--json");
  g_autoptr (Answer) revision = RUN ("trace", "revision", "MUD-BLACK.3");
  g_autoptr (Answer) machine = RUN ("trace", "equipment", "PRINT-2");
  g_autoptr (JsonNode) node = parse (json);
  g_autofree char *table = NULL;
  g_autofree char *report = NULL;

  (void) data;
  assert_told (text, "Lot BIT-2606, Bittern");
  assert_told (text, "Skelligrove Cold-Water Swimmers");
  assert_refused (again, 1, "exists");
  assert_told (revision, "2610-04.1.1");
  assert_told (machine, "2610-04.1.1");
  g_assert_cmpstr (json_object_get_string_member (json_node_get_object (node), "kind"), ==, "person");
  g_assert_true (g_file_get_contents (csv, &table, NULL, NULL));
  g_assert_true (g_str_has_prefix (table, "code,job,customer_code,customer,contact,"));
  g_assert_nonnull (strstr (table, "2610-04.1.1,2610-04,SKELLIGROVE,Skelligrove Cold-Water Swimmers,"));
  g_assert_true (g_file_get_contents (pdf, &report, NULL, NULL));
  g_assert_true (g_str_has_prefix (report, "%PDF-1."));
}

static void
test_refusals (Fixture       *self,
               gconstpointer  data)
{
  g_autoptr (Answer) state = RUN ("job", "list", "--state", "lost");
  g_autoptr (Answer) no_job = RUN ("job", "show", "NOPE");
  g_autoptr (Answer) no_code = RUN ("job", "sheet");
  g_autoptr (Answer) day = RUN ("job", "repeat", "2610-04", "--today", "soon");
  g_autoptr (Answer) newest = RUN ("job", "repeat", "2610-04", "--newest");
  g_autoptr (Answer) limit = RUN ("run", "list", "--limit", "0");
  g_autoptr (Answer) no_run = RUN ("run", "show", "NOPE");
  g_autoptr (Answer) no_lot = RUN ("lot", "show", "NOPE");
  g_autoptr (Answer) table = RUN ("trace", "reading", "X");
  g_autoptr (Answer) nothing = RUN ("trace", "lot", "NOPE");
  g_autoptr (Answer) paper = RUN ("trace", "lot", "BIT-2606", "--paper", "a5");

  (void) data;
  assert_refused (state, 2, "planned, running, done, cancelled");
  assert_refused (no_job, 1, "NOPE");
  assert_refused (no_code, 2, "needs the number of one job");
  assert_refused (day, 2, "--today");
  assert_refused (newest, 2, "--open");
  assert_refused (limit, 2, "below the minimum 1");
  assert_refused (no_run, 1, "NOPE");
  assert_refused (no_lot, 1, "NOPE");
  assert_refused (table, 2, "'reading' is not one of: ");
  assert_refused (nothing, 1, "NOPE");
  assert_refused (paper, 2, "'a5' is not one of: a4, letter");
}

#define ADD(path, func) g_test_add ("/cli-jobs/" path, Fixture, demo, set_up, func, tear_down)

int
main (int   argc,
      char *argv[])
{
  g_autofree char *demo = g_strdup_printf ("%s/blankbook-cli-jobs-%d.book", g_get_tmp_dir (), (int) getpid ());
  int status = 0;

  g_test_init (&argc, &argv, G_TEST_OPTION_ISOLATE_DIRS, NULL);
  ADD ("lists", test_lists);
  ADD ("show", test_show);
  ADD ("sheet", test_sheet);
  ADD ("repeat", test_repeat);
  ADD ("trace", test_trace);
  ADD ("refusals", test_refusals);
  status = g_test_run ();
  g_unlink (demo);

  return status;
}
