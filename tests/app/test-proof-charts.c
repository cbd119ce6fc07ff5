/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-test"

#include "bb-proof-charts.h"

#include <math.h>
#include <string.h>

#include "app-helpers.h"
#include "bb-chart-view.h"
#include "bb-proof-compare.h"
#include "bb-wash-report.h"
#include "lives.h"
#include "paper.h"
#include "store-helpers.h"

/* From a wash log in a book to what a person sees of it, on the page and in the report. */

typedef struct {
  char *path;
  gint64 revision;
  gint64 before;
  gint64 wash_test;
  BbSession *session;
} Log;

static gint64
add_group (BbBook     *book,
           Shop       *shop,
           const char *group)
{
  g_autoptr (BbRevision) revision = helper_make_revision (shop->recipe->id, shop->pretreat->id);
  g_autoptr (GError) error = NULL;

  revision->reason = g_strdup (group);
  g_assert_true (bb_book_save_revision (book, revision, &error));
  g_assert_no_error (error);
  lives_add (book, revision->id, group);

  return revision->id;
}

static void
set_up (Log           *self,
        gconstpointer  data)
{
  const char * const *groups = data;
  BbBook *book = NULL;
  Shop *shop = NULL;

  self->path = helper_new_path ();
  book = helper_create (self->path);
  shop = helper_fill (book);
  self->revision = shop->revision->id;
  self->wash_test = shop->wash_test->id;
  for (guint i = 0; groups != NULL && groups[i] != NULL; i++)
    {
      self->before = self->revision;
      self->revision = add_group (book, shop, groups[i]);
    }
  helper_shop_free (shop);
  helper_close (book);
  self->session = helper_open_session (self->path);
}

static void
tear_down (Log           *self,
           gconstpointer  data)
{
  (void) data;
  helper_end_session (self->session);
  g_free (self->path);
}

static gboolean
has_evidence (gpointer charts)
{
  return bb_proof_charts_get_evidence (charts) != NULL;
}

static GtkWidget *
show (Log    *self,
      gint64  wash_test)
{
  GtkWidget *charts = g_object_ref_sink (bb_proof_charts_new ());

  bb_proof_charts_show (BB_PROOF_CHARTS (charts), self->session, self->revision, wash_test);
  helper_wait_until (has_evidence, charts);

  return charts;
}

static void
let_go (GtkWidget *charts)
{
  helper_wait_idle ();
  g_assert_finalize_object (charts);
}

/* The chart views of a widget, in their order; those that take no place are counted. */
static BbChart *
get_chart (GtkWidget *within,
           guint      index)
{
  GtkWidget *view = NULL;
  GtkWidget *child = NULL;
  GtkWidget *box = gtk_widget_get_last_child (within);

  g_assert_true (GTK_IS_FLOW_BOX (box));
  child = GTK_WIDGET (gtk_flow_box_get_child_at_index (GTK_FLOW_BOX (box), (int) index));
  view = helper_find_widget (child, BB_TYPE_CHART_VIEW);

  return bb_chart_view_get_chart (BB_CHART_VIEW (view));
}

static gpointer
read_report (BbBook    *book,
             gpointer   data,
             GError   **error)
{
  const BbUnitContext units = { .system = BB_UNITS_METRIC };
  const BbWashReportAbout about = { .revision = *(const gint64 *) data, .today = "2025-05-01", .units = &units };

  return bb_wash_report_new (book, &about, error);
}

static void
report_read_cb (GObject      *source,
                GAsyncResult *result,
                gpointer      data)
{
  BbDocument **document = data;
  g_autoptr (GError) error = NULL;

  *document = bb_session_read_finish (BB_SESSION (source), result, &error);
  g_assert_no_error (error);
}

static gboolean
is_set (gpointer data)
{
  return *(gpointer *) data != NULL;
}

static char *
read_words (Log *self)
{
  BbDocument *document = NULL;
  g_autoptr (GBytes) pdf = NULL;
  g_autofree char *text = NULL;
  g_autoptr (GError) error = NULL;
  g_auto (GStrv) words = NULL;
  g_autoptr (GString) out = g_string_new (NULL);

  bb_session_read_async (self->session, read_report, &self->revision, NULL, (GDestroyNotify) bb_document_free, NULL,
                         report_read_cb, &document);
  helper_wait_until (is_set, &document);
  pdf = bb_document_to_pdf (document, BB_PAPER_A4, &error);
  g_assert_no_error (error);
  bb_document_free (document);
  text = paper_read_text (pdf);
  words = g_strsplit_set (text, " \n\f", -1);
  for (guint i = 0; words[i] != NULL; i++)
    if (*words[i] != '\0')
      g_string_append_printf (out, "%s%s", out->len > 0 ? " " : "", words[i]);

  return g_strdup (out->str);
}

static void
check_report (Log        *self,
              const char *group)
{
  g_autoptr (Reference) wanted = reference_load ("km-aml");
  g_autofree char *words = read_words (self);

  for (guint i = 0; i < reference_get_length (wanted); i++)
    {
      const double survival = reference_get_number (wanted, i, "surv_fraction") * 100.0;
      const int events = (int) reference_get_number (wanted, i, "n_event_count");
      g_autofree char *start = NULL;
      g_autofree char *band = NULL;
      g_autofree char *line = NULL;

      if (!g_str_equal (reference_get_text (wanted, i, "stratum"), group) || events < 1)
        continue;
      start = g_strdup_printf ("%.0f %.0f %d %.1f %%", reference_get_number (wanted, i, "time_weeks"),
                               reference_get_number (wanted, i, "n_risk_count"), events, survival);
      band = survival <= 0 ? g_strdup ("–")
                           : g_strdup_printf ("%.1f to %.1f %%",
                                              reference_get_number (wanted, i, "lower95_loglog") * 100.0,
                                              reference_get_number (wanted, i, "upper95_loglog") * 100.0);
      line = g_strjoin (" ", start, band, NULL);
      if (strstr (words, line) == NULL)
        g_error ("“%s” is not in: %s", line, words);
    }
}

static void
test_published_curve (Log           *self,
                      gconstpointer  data)
{
  const char *group = ((const char * const *) data)[0];
  GtkWidget *charts = show (self, 0);

  lives_check_curve (lives_find_series (get_chart (charts, 1), "still good, with"), group);
  check_report (self, group);
  let_go (charts);
}

/* The page of one specimen: its grades among the others', with the limit, and without the curve. */
static void
test_one_specimen (Log           *self,
                   gconstpointer  data)
{
  GtkWidget *charts = show (self, self->wash_test);
  const BbChart *grades = get_chart (charts, 0);
  guint n_standing_out = 0;

  (void) data;
  g_assert_true (gtk_widget_get_visible (charts));
  g_assert_null (get_chart (charts, 1));
  for (guint i = 0; i < grades->layers->len; i++)
    n_standing_out += ((const BbLayer *) grades->layers->pdata[i])->stands_out ? 1 : 0;
  g_assert_cmpuint (n_standing_out, ==, 1);
  g_assert_cmpfloat (lives_get_point (lives_find_series (grades, "W-1"), 0)->y, ==, 4.5);
  let_go (charts);
}

/* Another revision is asked for before the first is there: only the last is shown. */
static void
test_last_asked_is_shown (Log           *self,
                          gconstpointer  data)
{
  GtkWidget *charts = g_object_ref_sink (bb_proof_charts_new ());

  (void) data;
  bb_proof_charts_show (BB_PROOF_CHARTS (charts), self->session, self->revision + 1000, 0);
  bb_proof_charts_show (BB_PROOF_CHARTS (charts), self->session, self->revision, 0);
  helper_wait_until (has_evidence, charts);
  g_assert_cmpint (bb_proof_charts_get_evidence (BB_PROOF_CHARTS (charts))->revision->id, ==, self->revision);
  let_go (charts);
}

static gboolean
has_sentence (gpointer compare)
{
  g_autofree char *sentence = NULL;

  g_object_get (compare, "sentence", &sentence, NULL);

  return sentence != NULL;
}

/* Two published curves in one chart, each of its own stroke. */
static void
test_two_curves (Log           *self,
                 gconstpointer  data)
{
  const char * const *groups = data;
  GtkWidget *compare = g_object_ref_sink (bb_proof_compare_new ());
  const BbSeries *first = NULL;
  const BbSeries *second = NULL;
  g_autofree char *sentence = NULL;

  bb_proof_compare_show (BB_PROOF_COMPARE (compare), self->session, self->before, self->revision);
  helper_wait_until (has_sentence, compare);
  first = lives_find_series (get_chart (compare, 0), "R-1.2, with its 95 % band");
  second = lives_find_series (get_chart (compare, 0), "R-1.3, with its 95 % band");
  lives_check_curve (first, groups[0]);
  lives_check_curve (second, groups[1]);
  g_assert_cmpint (first->stroke, !=, second->stroke);
  /* Nobody stood 500 washes: 7 of 11 and 11 of 12 failed, and none passed. */
  g_object_get (compare, "sentence", &sentence, NULL);
  g_assert_cmpstr (sentence, ==, "R-1.2 passed 0 of 7, R-1.3 0 of 11. That is the same share (Fisher's exact test, "
                                 "p = 1): it does not show which is better.");
  g_assert_cmpuint (get_chart (compare, 1)->layers->len, ==, 1);

  /* Of one revision there is nothing to compare. */
  bb_proof_compare_show (BB_PROOF_COMPARE (compare), self->session, self->revision, self->revision);
  g_assert_false (has_sentence (compare));
  g_assert_false (gtk_widget_get_visible (compare));
  let_go (compare);
}

static void
said_cb (const char **said,
         const char  *text)
{
  *said = g_intern_string (text);
}

static void
test_what_is_gone_is_said (Log           *self,
                           gconstpointer  data)
{
  GtkWidget *charts = g_object_ref_sink (bb_proof_charts_new ());
  const char *said = NULL;
  gulong id = g_signal_connect_swapped (self->session, "say", G_CALLBACK (said_cb), &said);

  (void) data;
  bb_proof_charts_show (BB_PROOF_CHARTS (charts), self->session, self->revision + 1000, 0);
  helper_wait_until (is_set, &said);
  g_assert_null (bb_proof_charts_get_evidence (BB_PROOF_CHARTS (charts)));
  g_assert_false (gtk_widget_get_visible (charts));
  g_signal_handler_disconnect (self->session, id);
  let_go (charts);
}

static const char * const published[] = { "Maintained", NULL };
static const char * const two_published[] = { "Maintained", "Nonmaintained", NULL };

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, G_TEST_OPTION_ISOLATE_DIRS, NULL);
  adw_init ();

#define ADD(path, data, func) g_test_add (path, Log, data, set_up, func, tear_down)
  ADD ("/proof-charts/published-curve", published, test_published_curve);
  ADD ("/proof-charts/one-specimen", NULL, test_one_specimen);
  ADD ("/proof-charts/last-asked-is-shown", NULL, test_last_asked_is_shown);
  ADD ("/proof-charts/two-curves", two_published, test_two_curves);
  ADD ("/proof-charts/what-is-gone-is-said", NULL, test_what_is_gone_is_said);
#undef ADD

  return g_test_run ();
}
