/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-test"

#include "bb-wash-charts.h"

#include <math.h>
#include <string.h>

#include "bb-evidence-load.h"
#include "lives.h"
#include "store-helpers.h"

/* From a wash log in a book to the series that page and report draw. */

typedef struct {
  BbBook *book;
  Shop *shop;
} Log;

static void
set_up (Log           *self,
        gconstpointer  data)
{
  g_autofree char *path = helper_new_path ();

  (void) data;
  self->book = helper_create (path);
  self->shop = helper_fill (self->book);
}

static void
tear_down (Log           *self,
           gconstpointer  data)
{
  (void) data;
  helper_shop_free (self->shop);
  helper_close (self->book);
}

static gint64
add_revision (Log *self)
{
  g_autoptr (BbRevision) revision = helper_make_revision (self->shop->recipe->id, self->shop->pretreat->id);
  g_autoptr (GError) error = NULL;

  revision->reason = g_strdup ("Another.");
  g_assert_true (bb_book_save_revision (self->book, revision, &error));
  g_assert_no_error (error);

  return revision->id;
}

static BbWashEvidence *
load (Log    *self,
      gint64  revision)
{
  g_autoptr (GError) error = NULL;
  BbWashEvidence *evidence = bb_evidence_load (self->book, revision, "2025-05-01", &error);

  g_assert_no_error (error);

  return evidence;
}

static void
test_published_curve (Log           *self,
                      gconstpointer  data)
{
  const char *strata[] = { "Maintained", "Nonmaintained", "all" };

  (void) data;
  for (guint i = 0; i < G_N_ELEMENTS (strata); i++)
    {
      gint64 revision = add_revision (self);
      g_autoptr (BbWashEvidence) evidence = NULL;
      BbChart *chart = NULL;

      lives_add (self->book, revision, strata[i]);
      evidence = load (self, revision);
      chart = bb_wash_chart_survival (evidence);
      lives_check_curve (lives_find_series (chart, "still good, with"), strata[i]);
      bb_chart_unref (chart);
    }
}

/* Of the maintained group four leave while they are good: at 13, 28, 45 and 161 weeks. */
static void
test_who_left (Log           *self,
               gconstpointer  data)
{
  const double left[] = { 13, 28, 45, 161 };
  gint64 revision = add_revision (self);
  g_autoptr (BbWashEvidence) evidence = NULL;
  const BbSeries *leavings = NULL;
  BbChart *chart = NULL;

  (void) data;
  lives_add (self->book, revision, "Maintained");
  evidence = load (self, revision);
  chart = bb_wash_chart_survival (evidence);
  leavings = lives_find_series (chart, "when last read");
  g_assert_cmpuint (leavings->points->len, ==, G_N_ELEMENTS (left));
  for (guint i = 0; i < G_N_ELEMENTS (left); i++)
    g_assert_cmpfloat (lives_get_point (leavings, i)->x, ==, left[i]);
  bb_chart_unref (chart);
}

static void
test_grades (Log           *self,
             gconstpointer  data)
{
  g_autoptr (BbWashTest) aside = helper_make_wash_test ("W-2", self->shop->revision->id);
  g_autoptr (BbWashEvidence) evidence = NULL;
  const BbSeries *series = NULL;
  const BbSeries *apart = NULL;
  BbChart *chart = NULL;

  (void) data;
  aside->method = BB_WASH_ISO_6330;
  helper_save (self->book, &bb_wash_test_table, aside);
  lives_add_reading (self->book, aside->id, 5, BB_GRADE_5);
  lives_add_reading (self->book, self->shop->wash_test->id, 10, BB_GRADE_3);
  evidence = load (self, self->shop->revision->id);
  chart = bb_wash_chart_grades (evidence, 0);
  series = lives_find_series (chart, "W-1");
  apart = lives_find_series (chart, "W-2");
  g_assert_cmpuint (series->points->len, ==, 2);
  g_assert_cmpfloat (lives_get_point (series, 0)->x, ==, 5);
  g_assert_cmpfloat (lives_get_point (series, 0)->y, ==, 4.5);
  g_assert_cmpint (lives_get_point (series, 0)->marker, ==, BB_MARKER_NONE);
  g_assert_cmpfloat (lives_get_point (series, 1)->y, ==, 3);
  g_assert_cmpint (lives_get_point (series, 1)->marker, ==, BB_MARKER_CROSS);
  g_assert_true (g_str_has_prefix (lives_get_point (series, 1)->note, "Fails\n"));
  g_assert_cmpint (series->stroke, ==, BB_STROKE_SOLID);
  g_assert_cmpint (apart->stroke, ==, BB_STROKE_DOTTED);
  g_assert_cmpint (apart->marker, !=, series->marker);
  /* Nothing is drawn short of the washes that it had. */
  for (guint l = 0; l < chart->layers->len; l++)
    g_assert_cmpfloat (((const BbLayer *) chart->layers->pdata[l])->shift, >=, 0.0);
  /* The cross is told in the legend. */
  lives_find_series (chart, "a reading that fails");
  bb_chart_unref (chart);
}

static void
test_nothing_yet (Log           *self,
                  gconstpointer  data)
{
  gint64 revision = add_revision (self);
  g_autoptr (BbWashEvidence) evidence = load (self, revision);
  BbChart *charts[] = { bb_wash_chart_grades (evidence, 0), bb_wash_chart_survival (evidence),
                        bb_wash_chart_compare (evidence, evidence) };

  (void) data;
  for (guint i = 0; i < G_N_ELEMENTS (charts); i++)
    {
      g_assert_true (bb_chart_is_empty (charts[i]));
      bb_chart_unref (charts[i]);
    }
}

/* 3 of 3 against 0 of 1 at 90 %: bounds by hand, 0.05^(1/3) = 0.3684 and 1 − 0.05 = 0.95. */
static void
test_two_revisions (Log           *self,
                    gconstpointer  data)
{
  gint64 second = add_revision (self);
  g_autoptr (BbWashEvidence) good = NULL;
  g_autoptr (BbWashEvidence) bad = NULL;
  const BbSeries *series = NULL;
  BbChart *chart = NULL;

  (void) data;
  helper_add_passed (self->book, second, 3);
  lives_add_reading (self->book, self->shop->wash_test->id, 10, BB_GRADE_1);
  good = load (self, second);
  bad = load (self, self->shop->revision->id);
  chart = bb_wash_chart_compare (good, bad);
  series = lives_find_series (chart, "passed");
  g_assert_cmpuint (series->points->len, ==, 2);
  g_assert_cmpfloat (lives_get_point (series, 0)->y, ==, 1);
  g_assert_cmpfloat_with_epsilon (lives_get_point (series, 0)->low, cbrt (0.05), 1e-9);
  g_assert_cmpfloat (lives_get_point (series, 1)->y, ==, 0);
  g_assert_cmpfloat_with_epsilon (lives_get_point (series, 1)->high, 0.95, 1e-9);
  /* Fisher: 1 of C(4, 3) = 4 splits is as uneven. */
  g_assert_nonnull (strstr (chart->caption, "p = 0.25"));
  g_assert_nonnull (strstr (chart->caption, "does not show which is better"));
  bb_chart_unref (chart);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, G_TEST_OPTION_ISOLATE_DIRS, NULL);

#define ADD(path, func) g_test_add (path, Log, NULL, set_up, func, tear_down)
  ADD ("/wash-charts/published-curve", test_published_curve);
  ADD ("/wash-charts/who-left", test_who_left);
  ADD ("/wash-charts/grades", test_grades);
  ADD ("/wash-charts/nothing-yet", test_nothing_yet);
  ADD ("/wash-charts/two-revisions", test_two_revisions);
#undef ADD

  return g_test_run ();
}
