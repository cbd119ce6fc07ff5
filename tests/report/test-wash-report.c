/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-test"

#include "bb-wash-report.h"

#include <math.h>
#include <string.h>

#include "bb-evidence-load.h"
#include "paper.h"
#include "store-helpers.h"

typedef struct {
  BbBook *book;
  Shop *shop;
} Log;

static const BbUnitContext metric = { .system = BB_UNITS_METRIC };
static const BbUnitContext us = { .system = BB_UNITS_US };

static void
set_up (Log           *self,
        gconstpointer  data)
{
  g_autofree char *path = helper_new_path ();
  g_autoptr (BbShop) rule = bb_shop_new ();

  (void) data;
  self->book = helper_create (path);
  self->shop = helper_fill (self->book);
  rule->name = g_strdup ("Quellenhof Prints");
  rule->address = g_strdup ("Mill Lane 3");
  helper_save (self->book, &bb_shop_table, rule);
}

static void
tear_down (Log           *self,
           gconstpointer  data)
{
  (void) data;
  helper_shop_free (self->shop);
  helper_close (self->book);
}

static char *
report (Log                 *self,
        gint64               wash_test,
        const BbUnitContext *units,
        BbPaper              paper,
        guint               *n_pages)
{
  const BbWashReportAbout about = {
    .revision = self->shop->revision->id, .wash_test = wash_test, .today = "2025-05-01", .units = units,
    .customer = "Fernside Choir", .remark = "Kept for five years.",
  };
  g_autoptr (GError) error = NULL;
  g_autoptr (BbDocument) document = bb_wash_report_new (self->book, &about, &error);
  g_autoptr (GBytes) pdf = NULL;

  g_assert_no_error (error);
  *n_pages = bb_document_lay_out (document, 595.276, 841.89);
  pdf = bb_document_to_pdf (document, paper, &error);
  g_assert_no_error (error);

  return paper_read_text (pdf);
}

/* Columns and lines are of the layout: words are compared with single spaces. */
static char *
squeeze (const char *text)
{
  g_auto (GStrv) words = g_strsplit_set (text, " \n\f", -1);
  g_autoptr (GString) out = g_string_new (NULL);

  for (guint i = 0; words[i] != NULL; i++)
    if (*words[i] != '\0')
      g_string_append_printf (out, "%s%s", out->len > 0 ? " " : "", words[i]);

  return g_strdup (out->str);
}

static void
assert_says (const char *text,
             const char *part)
{
  g_autofree char *words = squeeze (text);

  if (strstr (words, part) == NULL)
    g_error ("“%s” is not in: %s", part, words);
}

static void
test_proven (Log           *self,
             gconstpointer  data)
{
  guint n_pages = 0;
  g_autofree char *text = NULL;
  g_autofree char *rate = NULL;
  g_autoptr (BbWashEvidence) evidence = NULL;

  (void) data;
  helper_prove (self->book, self->shop->revision->id);
  text = report (self, 0, &metric, BB_PAPER_A4, &n_pages);
  evidence = bb_evidence_load (self->book, self->shop->revision->id, "2025-05-01", NULL);
  rate = bb_wash_evidence_describe_rate (evidence);
  /* The sentence of the page, from the same code: 0.1^(1/3) = 0.464. */
  g_assert_cmpstr (rate, ==, "3 of 3 passed; with 90 % confidence at least 46 % would.");
  assert_says (text, rate);
  assert_says (text, "R-1.1: Proven. Signed by Ilka Morgenroth on");
  assert_says (text, "by the shop's rule of 3 specimens that passed and none that failed.");
  assert_says (text, "1 specimen is still being washed.");
  assert_says (text, "Quellenhof Prints");
  assert_says (text, "Made for Fernside Choir");
  assert_says (text, "testing laboratory. Kept for five years.");
  assert_says (text, "Mill Lane 3");
  assert_says (text, "Dark tees, revision R-1.1");
  assert_says (text, "165.6 g/m²");
  assert_says (text, "Least grade of 4");
  assert_says (text, "P-1-1");
  assert_says (text, "W-1 5 4-5");
  assert_says (text, "Still good (%)");
  assert_says (text, "Grade of change in colour");
  assert_says (text, "no certificate of a testing laboratory");
  assert_says (text, "Made by Blankbook from the shop's wash log on 1 May 2025");
}

static void
test_overruled (Log           *self,
                gconstpointer  data)
{
  guint n_pages = 0;
  g_autofree char *text = NULL;
  g_autoptr (GError) error = NULL;

  (void) data;
  helper_put_on_trial (self->book, self->shop->revision->id);
  g_assert_true (bb_book_sign (self->book, self->shop->revision->id, TRUE, "Ten years of it.", &error));
  text = report (self, 0, &metric, BB_PAPER_A4, &n_pages);
  assert_says (text, "No specimen has been tested to the end yet.");
  assert_says (text, "although the shop's rule was not met: Ten years of it.");
}

static void
test_failed_and_disputed (Log           *self,
                          gconstpointer  data)
{
  g_autoptr (BbReading) reading = helper_make_reading (self->shop->wash_test->id, 10);
  guint n_pages = 0;
  g_autofree char *text = NULL;
  g_autofree char *alone = NULL;

  (void) data;
  reading->change = BB_GRADE_3;
  reading->change_measured = BB_GRADE_4_5;
  reading->stain = BB_GRADE_5;
  reading->lifting = BB_FAULT_SLIGHT;
  reading->hand = 2;
  reading->note = g_strdup ("Left of the seam.");
  helper_save (self->book, &bb_reading_table, reading);
  text = report (self, 0, &us, BB_PAPER_LETTER, &n_pages);
  assert_says (text, "The one specimen that was tested failed.");
  assert_says (text, "Failed after 10 cycles");
  assert_says (text, "W-1 10 3 4-5 5 None Slight 2");
  assert_says (text, "Left of the seam.");
  assert_says (text, "Change is 3 by eye and 4-5 measured: look again under standard light");
  assert_says (text, "a reading that fails");
  assert_says (text, "oz/yd²");

  alone = report (self, self->shop->wash_test->id, &metric, BB_PAPER_A4, &n_pages);
  assert_says (alone, "specimen W-1");
  assert_says (alone, "Specimen W-1 failed after 10 wash cycles. The colour changed more than is allowed.");
  g_assert_null (strstr (alone, "How long prints last"));
}

/* The plan is named with the standard to buy, and what is from memory is said to be. */
static void
test_plan (Log           *self,
           gconstpointer  data)
{
  g_autoptr (BbWashPlan) plan = helper_make_wash_plan ("6330");
  g_autoptr (BbWashTest) test = bb_wash_test_new ();
  guint n_pages = 0;
  g_autofree char *text = NULL;

  (void) data;
  plan->standard = BB_WASH_ISO_6330;
  plan->publication = g_strdup ("ISO 6330:2021");
  plan->procedure = g_strdup ("4N");
  plan->origin = BB_PLAN_ORIGIN_MEMORY;
  helper_save (self->book, &bb_wash_plan_table, plan);
  test->code = g_strdup ("W-2");
  test->revision = self->shop->revision->id;
  test->plan = plan->id;
  test->made_at = g_strdup ("2025-03-14");
  helper_save (self->book, &bb_wash_test_table, test);
  text = report (self, 0, &metric, BB_PAPER_A4, &n_pages);
  assert_says (text, "Wash plan 6330: Household machine");
  assert_says (text, "ISO 6330:2021");
  assert_says (text, "5, 25");
  assert_says (text, "washed by another method, does not count");
  assert_says (text, "were not checked against the text of its standard");
}

/* Names as long as the book takes them, and forty specimens: everything is there, on as many pages as it takes. */
static void
test_long_names (Log           *self,
                 gconstpointer  data)
{
  g_autofree char *name = g_strnfill (120, 'N');
  guint n_pages = 0;
  g_autofree char *text = NULL;

  (void) data;
  g_free (self->shop->recipe->name);
  self->shop->recipe->name = g_strdup (name);
  helper_save (self->book, &bb_recipe_table, self->shop->recipe);
  g_free (self->shop->colourway->name);
  self->shop->colourway->name = g_strdup ("Washed Harbour Slate with a Breath of Old Rope and Faintly Greenish Seams");
  helper_save (self->book, &bb_colourway_table, self->shop->colourway);
  self->shop->wash_test->colourway = self->shop->colourway->id;
  self->shop->wash_test->note = g_strdup ("Grüße vom Prüfstand. Ωμέγα.");
  helper_save (self->book, &bb_wash_test_table, self->shop->wash_test);
  helper_add_passed (self->book, self->shop->revision->id, 40);
  text = report (self, 0, &metric, BB_PAPER_A4, &n_pages);
  g_assert_cmpuint (n_pages, >=, 4);
  assert_says (text, "Breath");
  assert_says (text, "Greenish");
  assert_says (text, "Grüße vom Prüfstand. Ωμέγα.");
  assert_says (text, "P-1-40");
  assert_says (text, "40 of 40 passed");
  assert_says (text, "and 29 more");
}

static void
test_nothing_yet (Log           *self,
                  gconstpointer  data)
{
  g_autoptr (BbRevision) empty = helper_make_revision (self->shop->recipe->id, self->shop->pretreat->id);
  BbWashReportAbout about = { .today = "2025-05-01", .units = &metric };
  g_autoptr (BbDocument) document = NULL;
  g_autoptr (GBytes) pdf = NULL;
  g_autofree char *text = NULL;
  g_autoptr (GError) error = NULL;

  (void) data;
  empty->reason = g_strdup ("Another.");
  g_assert_true (bb_book_save_revision (self->book, empty, &error));
  about.revision = empty->id;
  document = bb_wash_report_new (self->book, &about, &error);
  g_assert_no_error (error);
  pdf = bb_document_to_pdf (document, BB_PAPER_A4, &error);
  text = paper_read_text (pdf);
  assert_says (text, "No specimen has been made yet.");
  assert_says (text, "Draft since");
  g_clear_pointer (&document, bb_document_free);

  about.revision = 999;
  document = bb_wash_report_new (self->book, &about, &error);
  g_assert_null (document);
  g_assert_error (error, BB_STORE_ERROR, BB_STORE_ERROR_NOT_FOUND);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, G_TEST_OPTION_ISOLATE_DIRS, NULL);

#define ADD(path, func) g_test_add (path, Log, NULL, set_up, func, tear_down)
  ADD ("/wash-report/proven", test_proven);
  ADD ("/wash-report/overruled", test_overruled);
  ADD ("/wash-report/failed-and-disputed", test_failed_and_disputed);
  ADD ("/wash-report/plan", test_plan);
  ADD ("/wash-report/long-names", test_long_names);
  ADD ("/wash-report/nothing-yet", test_nothing_yet);
#undef ADD

  return g_test_run ();
}
