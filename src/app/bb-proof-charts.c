/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-proof-charts"

#include "bb-proof-charts.h"

#include <glib/gi18n-lib.h>

#include "bb-chart-view.h"
#include "bb-evidence-load.h"
#include "bb-moment.h"
#include "bb-report-window.h"
#include "bb-wash-charts.h"

struct _BbProofCharts
{
  GtkBox parent_instance;

  /* template */
  GtkLabel *heading_label;
  GtkLabel *rate_label;
  GtkFlowBox *charts_box;
  BbChartView *grades_view;
  GtkWidget *survival_child;
  BbChartView *survival_view;

  /* owned */
  BbSession *session;
  GCancellable *loading;
  BbWashEvidence *evidence;

  gint64 revision;
  gint64 wash_test;
};

G_DEFINE_FINAL_TYPE (BbProofCharts, bb_proof_charts, GTK_TYPE_BOX)

enum {
  SIGNAL_LOADED,
  N_SIGNALS
};

static guint signals[N_SIGNALS];

static gboolean
is_read (const BbWashEvidence *evidence)
{
  for (guint i = 0; i < evidence->specimens->len; i++)
    if (((const BbSpecimen *) evidence->specimens->pdata[i])->readings->len > 0)
      return TRUE;

  return FALSE;
}

static void
show_words (BbProofCharts *self)
{
  g_autofree char *heading = g_strdup_printf (_("All Specimens of %s"), self->evidence->revision->code);
  g_autofree char *rate = bb_wash_evidence_describe_rate (self->evidence);

  gtk_label_set_label (self->heading_label, self->wash_test != 0 ? heading : _("Grades and Wash Life"));
  gtk_label_set_label (self->rate_label, rate);
  /* Of a revision the page says that at its top. */
  gtk_widget_set_visible (GTK_WIDGET (self->rate_label), self->wash_test != 0);
}

static void
show_evidence (BbProofCharts *self)
{
  const gboolean read = self->evidence != NULL && is_read (self->evidence);
  const gboolean survives = read && self->wash_test == 0;

  gtk_widget_set_visible (GTK_WIDGET (self), self->evidence != NULL && self->evidence->specimens->len > 0);
  gtk_widget_set_visible (GTK_WIDGET (self->charts_box), read);
  gtk_widget_set_visible (self->survival_child, survives);
  gtk_flow_box_set_max_children_per_line (self->charts_box, survives ? 2 : 1);
  if (self->evidence != NULL)
    show_words (self);
  bb_chart_view_set_chart (self->grades_view, read ? bb_wash_chart_grades (self->evidence, self->wash_test) : NULL);
  bb_chart_view_set_chart (self->survival_view, survives ? bb_wash_chart_survival (self->evidence) : NULL);
}

static void
clear (BbProofCharts *self)
{
  g_clear_pointer (&self->evidence, bb_wash_evidence_free);
}

static gpointer
read_evidence (BbBook    *book,
               gpointer   data,
               GError   **error)
{
  const gint64 *revision = data;
  g_autofree char *today = bb_dup_today ();

  return bb_evidence_load (book, *revision, today, error);
}

static void
loaded_cb (GObject      *source,
           GAsyncResult *result,
           gpointer      data)
{
  g_autoptr (BbProofCharts) self = data;
  g_autoptr (GError) error = NULL;
  BbWashEvidence *evidence = bb_session_read_finish (BB_SESSION (source), result, &error);

  if (g_error_matches (error, G_IO_ERROR, G_IO_ERROR_CANCELLED))
    return;

  clear (self);
  self->evidence = evidence;
  if (evidence == NULL)
    bb_session_report (BB_SESSION (source), error);
  show_evidence (self);
  g_signal_emit (self, signals[SIGNAL_LOADED], 0);
}

static void
cancel (BbProofCharts *self)
{
  if (self->loading != NULL)
    g_cancellable_cancel (self->loading);
  g_clear_object (&self->loading);
}

static void
say_cb (BbProofCharts *self,
        const char    *text)
{
  bb_session_say (self->session, text);
}

static void
report_action (GtkWidget  *widget,
               const char *name,
               GVariant   *parameter)
{
  BbProofCharts *self = BB_PROOF_CHARTS (widget);
  GtkRoot *root = gtk_widget_get_root (widget);
  GtkWidget *window = NULL;

  (void) name;
  (void) parameter;
  if (self->session == NULL)
    return;
  window = bb_report_window_new (GTK_IS_WINDOW (root) ? GTK_WINDOW (root) : NULL, self->session, self->revision,
                                 self->wash_test);
  if (window != NULL)
    gtk_window_present (GTK_WINDOW (window));
}

/**
 * bb_proof_charts_new:
 *
 * Returns: (transfer floating): charts of nothing
 */
GtkWidget *
bb_proof_charts_new (void)
{
  return g_object_new (BB_TYPE_PROOF_CHARTS, NULL);
}

/**
 * bb_proof_charts_show:
 * @self: the charts
 * @session: the session
 * @revision: key of a revision
 * @wash_test: key of a specimen of it that is shown among the others; 0 to show the revision
 *
 * Loads what the wash log has on a revision, and shows it. What was shown of the same revision stays meanwhile.
 */
void
bb_proof_charts_show (BbProofCharts *self,
                      BbSession     *session,
                      gint64         revision,
                      gint64         wash_test)
{
  g_return_if_fail (BB_IS_PROOF_CHARTS (self) && BB_IS_SESSION (session));

  cancel (self);
  g_set_object (&self->session, session);
  if (self->revision != revision)
    {
      clear (self);
      show_evidence (self);
    }
  self->revision = revision;
  self->wash_test = wash_test;
  self->loading = g_cancellable_new ();
  bb_session_read_async (session, read_evidence, g_memdup2 (&revision, sizeof revision), g_free,
                         (GDestroyNotify) bb_wash_evidence_free, self->loading, loaded_cb, g_object_ref (self));
}

/**
 * bb_proof_charts_get_evidence:
 * @self: the charts
 *
 * Returns: (transfer none) (nullable): what is shown; %NULL until it is loaded
 */
const BbWashEvidence *
bb_proof_charts_get_evidence (BbProofCharts *self)
{
  g_return_val_if_fail (BB_IS_PROOF_CHARTS (self), NULL);

  return self->evidence;
}

static void
bb_proof_charts_dispose (GObject *object)
{
  BbProofCharts *self = BB_PROOF_CHARTS (object);

  cancel (self);
  clear (self);
  g_clear_object (&self->session);
  gtk_widget_dispose_template (GTK_WIDGET (self), BB_TYPE_PROOF_CHARTS);

  G_OBJECT_CLASS (bb_proof_charts_parent_class)->dispose (object);
}

static void
bb_proof_charts_class_init (BbProofChartsClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = bb_proof_charts_dispose;

  /**
   * BbProofCharts::loaded:
   *
   * The evidence is there, or could not be loaded and the person was told.
   */
  signals[SIGNAL_LOADED] = g_signal_new ("loaded", BB_TYPE_PROOF_CHARTS, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                         G_TYPE_NONE, 0);

  g_type_ensure (BB_TYPE_CHART_VIEW);
  gtk_widget_class_set_template_from_resource (widget_class, "/io/blankbook/Blankbook/bb-proof-charts.ui");
  gtk_widget_class_bind_template_child (widget_class, BbProofCharts, heading_label);
  gtk_widget_class_bind_template_child (widget_class, BbProofCharts, rate_label);
  gtk_widget_class_bind_template_child (widget_class, BbProofCharts, charts_box);
  gtk_widget_class_bind_template_child (widget_class, BbProofCharts, grades_view);
  gtk_widget_class_bind_template_child (widget_class, BbProofCharts, survival_child);
  gtk_widget_class_bind_template_child (widget_class, BbProofCharts, survival_view);
  gtk_widget_class_bind_template_callback (widget_class, say_cb);
  gtk_widget_class_install_action (widget_class, "proof.report", NULL, report_action);
}

static void
bb_proof_charts_init (BbProofCharts *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}
