/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <glib/gstdio.h>
#include <string.h>
#include <unistd.h>

#include "run.h"

#define RUN(...) run_cli ("", 0, "--book", self->book, __VA_ARGS__, NULL)

static void
test_plans (Fixture       *self,
            gconstpointer  data)
{
  g_autoptr (Answer) few = RUN ("wash", "plans");
  g_autoptr (Answer) added = RUN ("wash", "plan", "new", "OURS", "--name", "Softener, 30 °C", "--wash-c", "30",
                                  "--grade-at", "1, 4,8");
  g_autoptr (Answer) all = RUN ("wash", "plans", "--add-published");
  g_autoptr (Answer) json = RUN ("wash", "plans", "--json");
  g_autoptr (Answer) specimen = RUN ("wash", "new", "X-9", "--revision", "MUD-BLACK.3", "--plan", "OURS");
  g_autoptr (JsonNode) node = parse (json);

  (void) data;
  assert_told (few, "6330-4N-F");
  assert_told (few, "ISO 6330:2021");
  assert_told (few, "From memory: check it against the standard");
  g_assert_null (strstr (few->out, "LP1-IV"));
  assert_told (added, "ends after 8 cycles");
  assert_told (all, "LP1-IV");
  assert_told (all, "1, 4, 8");
  g_assert_cmpuint (json_array_get_length (json_node_get_array (node)), >, 20);
  assert_told (specimen, "to be washed 8 times");
}

static void
test_plan_refusals (Fixture       *self,
                    gconstpointer  data)
{
  g_autoptr (Answer) no_stops = RUN ("wash", "plan", "new", "A", "--name", "A");
  g_autoptr (Answer) falling = RUN ("wash", "plan", "new", "A", "--name", "A", "--grade-at", "5,1");
  g_autoptr (Answer) words = RUN ("wash", "plan", "new", "A", "--name", "A", "--grade-at", "often");
  g_autoptr (Answer) too_many = RUN ("wash", "plan", "new", "A", "--name", "A", "--grade-at", "1,501");
  g_autoptr (Answer) no_standard = RUN ("wash", "plan", "new", "A", "--name", "A", "--grade-at", "1", "--standard",
                                        "iso-6330");
  g_autoptr (Answer) twice = RUN ("wash", "plan", "new", "SHOP-60", "--name", "A", "--grade-at", "1");
  g_autoptr (Answer) other_cycles = RUN ("wash", "new", "X-9", "--revision", "MUD-BLACK.3", "--plan", "SHOP-60",
                                         "--plan-cycles", "20");

  (void) data;
  assert_refused (no_stops, 2, "grade_at: missing");
  assert_refused (falling, 2, "grade_at: give the cycles in rising order");
  assert_refused (words, 2, "grade_at: 'often' is not a number of cycles");
  assert_refused (too_many, 2, "grade_at: '501' is not a number of cycles");
  assert_refused (no_standard, 2, "publication: name the edition");
  assert_refused (twice, 1, "SHOP-60");
  assert_refused (other_cycles, 1, "have to be those of its wash plan");
}

/* The demo shop's last readings are of October 2026. */
static void
test_due (Fixture       *self,
          gconstpointer  data)
{
  g_autoptr (Answer) text = RUN ("wash", "due", "--today", "2026-11-04");
  g_autoptr (Answer) json = RUN ("wash", "due", "--today", "2026-11-04", "--json");
  g_autoptr (Answer) no_day = RUN ("wash", "due", "--today", "soon");
  g_autoptr (JsonNode) node = parse (json);
  JsonArray *lines = json_node_get_array (node);
  gboolean seen[4] = { FALSE };

  (void) data;
  assert_told (text, "Specimen");
  assert_refused (no_day, 2, "today: give a date like");
  for (guint i = 0; i < json_array_get_length (lines); i++)
    {
      JsonObject *line = json_array_get_object_element (lines, i);
      gint64 late = json_object_get_int_member (line, "days_late");
      const char *state = json_object_get_string_member (line, "state");

      seen[g_str_equal (state, "overdue") ? 0 : g_str_equal (state, "due") ? 1 : 2] = TRUE;
      g_assert_cmpint (late < 0, ==, g_str_equal (state, "running"));
      g_assert_nonnull (strstr (text->out, json_object_get_string_member (line, "specimen")));
    }
  g_assert_true (seen[0] && seen[1] && seen[2]);
}

static void
test_sign (Fixture       *self,
           gconstpointer  data)
{
  g_autoptr (Answer) early = RUN ("recipe", "sign", "COB-ZIP.3", "--person", "MOQ");
  g_autoptr (Answer) not_lead = RUN ("recipe", "sign", "COB-ZIP.3", "--person", "TV", "--overrule", "--reason",
                                     "Looks fine");
  g_autoptr (Answer) no_reason = RUN ("recipe", "sign", "COB-ZIP.3", "--person", "MOQ", "--overrule");
  g_autoptr (Answer) nobody = RUN ("recipe", "sign", "COB-ZIP.3");
  g_autoptr (Answer) stranger = RUN ("recipe", "sign", "COB-ZIP.3", "--person", "XX");
  g_autoptr (Answer) draft = RUN ("recipe", "sign", "MUD-DARK.4", "--person", "MOQ");
  g_autoptr (Answer) overruled = RUN ("recipe", "sign", "COB-ZIP.3", "--person", "MOQ", "--overrule", "--reason",
                                      "Sold as one-offs");
  g_autoptr (Answer) failed = RUN ("wash", "add", "2610-05", "--cycles", "20", "--change", "2", "--person", "SL");
  g_autoptr (Answer) shown = RUN ("recipe", "show", "COB-ZIP.3");

  (void) data;
  assert_refused (early, 1, "asks for 3 specimens");
  assert_refused (not_lead, 1, "Only a lead");
  assert_refused (no_reason, 2, "reason: say why");
  assert_refused (nobody, 2, "--person");
  assert_refused (stranger, 1, "XX");
  assert_refused (draft, 1, "on trial");
  assert_told (overruled, "although the shop's rule is not met. 1 of 1 passed; with 90 % confidence at least 10 %");
  assert_told (failed, "COB-ZIP.3 is back on trial: specimen 2610-05 failed after 20 washes.");
  assert_told (shown, "On trial since");
}

static void
test_failure_names_open_jobs (Fixture       *self,
                              gconstpointer  data)
{
  g_autoptr (Answer) specimen = RUN ("wash", "new", "X-1", "--revision", "MUD-DARK.3", "--plan", "6330-4N-F");
  g_autoptr (Answer) failed = RUN ("wash", "add", "X-1", "--cycles", "5", "--change", "4-5", "--crack", "visible",
                                    "--person", "SL");
  g_autoptr (Answer) again = RUN ("wash", "add", "X-1", "--cycles", "10", "--change", "1", "--person", "SL");

  (void) data;
  assert_told (specimen, "to be washed 20 times");
  assert_told (failed, "MUD-DARK.3 is back on trial: specimen X-1 failed after 5 washes. Open jobs use it: 2610-04, "
               "2610-07.");
  assert_told (again, "Added the reading of X-1");
  g_assert_null (strstr (again->out, "on trial"));
}

static void
test_sign_by_the_rule (Fixture       *self,
                       gconstpointer  data)
{
  g_autoptr (Answer) third = RUN ("wash", "add", "2610-04", "--cycles", "20", "--change", "4", "--stain", "4-5",
                                   "--person", "SL");
  g_autoptr (Answer) signed_off = RUN ("recipe", "sign", "MUD-BLACK.4", "--person", "MOQ", "--json");
  g_autoptr (JsonNode) node = NULL;

  (void) data;
  g_test_message ("%s%s", third->out, third->err);
  node = parse (signed_off);
  g_assert_false (json_object_get_boolean_member (json_node_get_object (node), "overruled"));
  g_assert_cmpint (json_object_get_int_member (json_node_get_object (node), "passed"), ==, 3);
}

static gboolean
is_file (const char *path,
         const char *begins)
{
  g_autofree char *contents = NULL;
  gsize length = 0;

  return g_file_get_contents (path, &contents, &length, NULL) && length > strlen (begins) &&
         memcmp (contents, begins, strlen (begins)) == 0;
}

static void
test_reports (Fixture       *self,
              gconstpointer  data)
{
  g_autofree char *pdf = g_build_filename (self->folder, "report.pdf", NULL);
  g_autofree char *png = g_build_filename (self->folder, "report.png", NULL);
  g_autofree char *first = g_build_filename (self->folder, "report-1.png", NULL);
  g_autofree char *chart = g_build_filename (self->folder, "chart.png", NULL);
  g_autofree char *compare = g_build_filename (self->folder, "compare.pdf", NULL);
  g_autofree char *both = g_build_filename (self->folder, "both.pdf", NULL);
  g_autoptr (Answer) made = RUN ("report", "wash", "--revision", "MUD-BLACK.3", "--output", pdf);
  g_autoptr (Answer) again = RUN ("report", "wash", "--revision", "MUD-BLACK.3", "--output", pdf);
  g_autoptr (Answer) pages = RUN ("report", "wash", "--test", "2608-02", "--paper", "letter", "--units", "us",
                                  "--customer", "Fernside Choir", "--remark", "Kept for five years.", "--output", png);
  g_autoptr (Answer) drawn = RUN ("report", "chart", "survival", "--revision", "GROAT-BLACK.1", "--output", chart);
  g_autoptr (Answer) compared = RUN ("report", "chart", "compare", "--revision", "MUD-BLACK.3", "--with",
                                     "MUD-BLACK.1", "--output", compare);

  g_autoptr (Answer) lives = RUN ("report", "chart", "survival", "--revision", "MUD-BLACK.3", "--with", "MUD-BLACK.1",
                                  "--output", both);

  (void) data;
  assert_told (lives, "");
  g_assert_true (is_file (both, "%PDF-1."));
  assert_told (made, "");
  g_assert_true (is_file (pdf, "%PDF-1."));
  assert_refused (again, 1, "exists");
  assert_told (pages, "");
  g_assert_true (is_file (first, "\x89PNG"));
  assert_told (drawn, "");
  g_assert_true (is_file (chart, "\x89PNG"));
  assert_told (compared, "");
  g_assert_true (is_file (compare, "%PDF-1."));
}

static void
test_report_refusals (Fixture       *self,
                      gconstpointer  data)
{
  g_autoptr (Answer) nothing = RUN ("report", "wash", "--output", "x.pdf");
  g_autoptr (Answer) both = RUN ("report", "wash", "--revision", "A", "--test", "B", "--output", "x.pdf");
  g_autoptr (Answer) no_file = RUN ("report", "wash", "--revision", "MUD-BLACK.3");
  g_autoptr (Answer) other_file = RUN ("report", "wash", "--revision", "MUD-BLACK.3", "--output", "x.doc");
  g_autoptr (Answer) paper = RUN ("report", "wash", "--revision", "MUD-BLACK.3", "--output", "x.pdf", "--paper", "a5");
  g_autoptr (Answer) unknown = RUN ("report", "wash", "--revision", "NOPE", "--output", "x.pdf");
  g_autoptr (Answer) kind = RUN ("report", "chart", "pie", "--revision", "MUD-BLACK.3", "--output", "x.pdf");
  g_autoptr (Answer) alone = RUN ("report", "chart", "compare", "--revision", "MUD-BLACK.3", "--output", "x.pdf");

  (void) data;
  assert_refused (nothing, 2, "either --revision or --test");
  assert_refused (both, 2, "either --revision or --test");
  assert_refused (no_file, 2, "ends in .pdf or .png");
  assert_refused (other_file, 2, "ends in .pdf or .png");
  assert_refused (paper, 2, "'a5' is not one of: a4, letter");
  assert_refused (unknown, 1, "NOPE");
  assert_refused (kind, 2, "grades, survival and compare");
  assert_refused (alone, 2, "grades, survival and compare");
}

#define ADD(path, func) g_test_add ("/cli-proof/" path, Fixture, demo, set_up, func, tear_down)

int
main (int   argc,
      char *argv[])
{
  g_autofree char *demo = g_strdup_printf ("%s/blankbook-cli-proof-%d.book", g_get_tmp_dir (), (int) getpid ());
  int status = 0;

  g_test_init (&argc, &argv, G_TEST_OPTION_ISOLATE_DIRS, NULL);
  ADD ("plans", test_plans);
  ADD ("plan-refusals", test_plan_refusals);
  ADD ("due", test_due);
  ADD ("sign", test_sign);
  ADD ("failure-names-open-jobs", test_failure_names_open_jobs);
  ADD ("reports", test_reports);
  ADD ("report-refusals", test_report_refusals);
  ADD ("sign-by-the-rule", test_sign_by_the_rule);
  status = g_test_run ();
  g_unlink (demo);

  return status;
}
