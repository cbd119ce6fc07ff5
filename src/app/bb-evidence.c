/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-evidence"

#include "bb-evidence.h"

#include <glib/gi18n-lib.h>

#include "bb-compat.h"
#include "bb-proof-box.h"
#include "bb-proof-charts.h"
#include "bb-show.h"
#include "bb-verdict-badge.h"

/* Wide enough for most verdicts in one line, each starting below the other. */
#define BADGE_WIDTH 190

struct _BbEvidence
{
  GtkBox parent_instance;

  /* template */
  GtkLabel *empty_label;
  GtkListBox *list;
  BbProofBox *proof;
  BbProofCharts *charts;

  /* owned */
  BbSession *session;
  BbRevision *revision;
  GArray *ids;
};

G_DEFINE_FINAL_TYPE (BbEvidence, bb_evidence, GTK_TYPE_BOX)

enum {
  SIGNAL_LOADED,
  N_SIGNALS
};

static guint signals[N_SIGNALS];

static void
row_activated_cb (BbEvidence    *self,
                  GtkListBoxRow *row)
{
  bb_session_show (self->session, "wash",
                   g_array_index (self->ids, gint64, gtk_list_box_row_get_index (row)));
}

static void
loaded_cb (BbEvidence *self)
{
  bb_proof_box_show (self->proof, self->session, self->revision, bb_proof_charts_get_evidence (self->charts));
  g_signal_emit (self, signals[SIGNAL_LOADED], 0);
}

static void
add_row (BbEvidence       *self,
         const BbWashLine *line)
{
  const BbWashTest *test = line->test;
  GtkWidget *row = adw_action_row_new ();
  GtkWidget *badge = bb_verdict_badge_new ();
  g_autofree char *made = bb_show_date (test->made_at);
  g_autofree char *colour = bb_show_name (self->session, &bb_colourway_table, test->colourway);
  g_autofree char *subtitle = *colour != '\0' ? g_strjoin (" · ", colour, made, NULL) : g_strdup (made);

  adw_preferences_row_set_use_markup (ADW_PREFERENCES_ROW (row), FALSE);
  adw_preferences_row_set_title (ADW_PREFERENCES_ROW (row), test->code);
  adw_action_row_set_subtitle (ADW_ACTION_ROW (row), subtitle);
  gtk_list_box_row_set_activatable (GTK_LIST_BOX_ROW (row), TRUE);
  gtk_widget_set_valign (badge, GTK_ALIGN_CENTER);
  bb_verdict_badge_show (BB_VERDICT_BADGE (badge), line);
  gtk_widget_set_size_request (badge, BADGE_WIDTH, -1);
  adw_action_row_add_suffix (ADW_ACTION_ROW (row), badge);
  gtk_list_box_append (self->list, row);
  g_array_append_val (self->ids, line->id);
}

static GPtrArray *
load_lines (BbBook  *book,
            gint64   revision,
            GError **error)
{
  g_autoptr (GArray) ids = g_array_new (FALSE, FALSE, sizeof (gint64));
  g_autoptr (GPtrArray) tests = bb_book_load_referring (book, &bb_wash_test_table, &bb_revision_table, revision, error);

  for (guint i = 0; tests != NULL && i < tests->len; i++)
    {
      const BbWashTest *test = tests->pdata[i];

      if (test->withdrawn_at == NULL)
        g_array_append_val (ids, test->id);
    }
  if (tests == NULL)
    return NULL;

  return bb_book_load_lines (book, &bb_wash_test_table, (const gint64 *) (gpointer) ids->data, ids->len, error);
}

/**
 * bb_evidence_show:
 * @self: the evidence
 * @session: the session
 * @revision: whose wash tests to show
 *
 * Shows its wash tests now, and what follows from them once that is computed.
 */
void
bb_evidence_show (BbEvidence       *self,
                  BbSession        *session,
                  const BbRevision *revision)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GPtrArray) lines = NULL;

  g_return_if_fail (BB_IS_EVIDENCE (self));

  g_set_object (&self->session, session);
  g_clear_pointer (&self->revision, bb_revision_free);
  self->revision = bb_record_copy (&bb_revision_table, revision);
  bb_proof_box_show (self->proof, session, revision, NULL);
  bb_compat_empty_list (self->list);
  g_array_set_size (self->ids, 0);
  bb_proof_charts_show (self->charts, session, revision->id, 0);
  lines = load_lines (bb_session_get_book (session), revision->id, &error);
  if (lines == NULL)
    {
      bb_session_report (session, error);
      return;
    }
  for (guint i = 0; i < lines->len; i++)
    add_row (self, lines->pdata[i]);

  gtk_widget_set_visible (GTK_WIDGET (self->list), lines->len > 0);
  gtk_widget_set_visible (GTK_WIDGET (self->empty_label), lines->len == 0);
}

/**
 * bb_evidence_dup_summary:
 * @self: the evidence
 *
 * Returns: (transfer full) (nullable): in a sentence or two how the specimens stand, those that count, and what that
 *   says; %NULL until that is computed
 */
char *
bb_evidence_dup_summary (BbEvidence *self)
{
  const BbWashEvidence *evidence = NULL;
  g_autofree char *counted = NULL;
  g_autofree char *rate = NULL;
  g_autofree char *apart = NULL;

  g_return_val_if_fail (BB_IS_EVIDENCE (self), NULL);

  if (self->ids->len == 0)
    return g_strdup (_("No specimen has been washed yet."));
  evidence = bb_proof_charts_get_evidence (self->charts);
  if (evidence == NULL)
    return NULL;

  counted = g_strdup_printf (_("Specimens: %u passed, %u failed, %u running."), evidence->n_passed,
                             evidence->n_failed, evidence->n_open);
  rate = bb_wash_evidence_describe_rate (evidence);
  if (evidence->n_apart > 0)
    apart = g_strdup_printf (ngettext ("%u was washed by another method and does not count.",
                                       "%u were washed by another method and do not count.", evidence->n_apart),
                             evidence->n_apart);

  return g_strjoin (" ", counted, rate, apart, NULL);
}

/**
 * bb_evidence_get_n_failed:
 * @self: the evidence
 *
 * Returns: how many specimens count and failed; 0 until that is computed
 */
guint
bb_evidence_get_n_failed (BbEvidence *self)
{
  const BbWashEvidence *evidence = NULL;

  g_return_val_if_fail (BB_IS_EVIDENCE (self), 0);

  evidence = bb_proof_charts_get_evidence (self->charts);

  return evidence != NULL ? evidence->n_failed : 0;
}

/**
 * bb_evidence_dup_missing:
 * @self: the evidence
 *
 * Returns: (transfer full) (nullable): what a revision that is not proven still lacks, in sentences; %NULL for any
 *   other, and until that is computed
 */
char *
bb_evidence_dup_missing (BbEvidence *self)
{
  g_return_val_if_fail (BB_IS_EVIDENCE (self), NULL);

  return bb_proof_box_dup_missing (self->proof);
}

/**
 * bb_evidence_get_actions:
 * @self: the evidence
 *
 * Returns: (transfer none): `sign` and `overrule`, for a menu; each is enabled where it may be done
 */
GActionGroup *
bb_evidence_get_actions (BbEvidence *self)
{
  g_return_val_if_fail (BB_IS_EVIDENCE (self), NULL);

  return bb_proof_box_get_actions (self->proof);
}

static void
bb_evidence_dispose (GObject *object)
{
  BbEvidence *self = BB_EVIDENCE (object);

  g_clear_object (&self->session);
  gtk_widget_dispose_template (GTK_WIDGET (self), BB_TYPE_EVIDENCE);

  G_OBJECT_CLASS (bb_evidence_parent_class)->dispose (object);
}

static void
bb_evidence_finalize (GObject *object)
{
  g_array_unref (BB_EVIDENCE (object)->ids);
  g_clear_pointer (&BB_EVIDENCE (object)->revision, bb_revision_free);

  G_OBJECT_CLASS (bb_evidence_parent_class)->finalize (object);
}

static void
bb_evidence_class_init (BbEvidenceClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = bb_evidence_dispose;
  G_OBJECT_CLASS (klass)->finalize = bb_evidence_finalize;

  /**
   * BbEvidence::loaded:
   *
   * What follows from the wash tests is computed: bb_evidence_dup_summary() says it.
   */
  signals[SIGNAL_LOADED] = g_signal_new ("loaded", BB_TYPE_EVIDENCE, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                         G_TYPE_NONE, 0);

  g_type_ensure (BB_TYPE_PROOF_BOX);
  g_type_ensure (BB_TYPE_PROOF_CHARTS);
  gtk_widget_class_set_template_from_resource (widget_class, "/io/blankbook/Blankbook/bb-evidence.ui");
  gtk_widget_class_bind_template_child (widget_class, BbEvidence, empty_label);
  gtk_widget_class_bind_template_child (widget_class, BbEvidence, list);
  gtk_widget_class_bind_template_child (widget_class, BbEvidence, proof);
  gtk_widget_class_bind_template_child (widget_class, BbEvidence, charts);
  gtk_widget_class_bind_template_callback (widget_class, loaded_cb);
  gtk_widget_class_bind_template_callback (widget_class, row_activated_cb);
}

static void
bb_evidence_init (BbEvidence *self)
{
  self->ids = g_array_new (FALSE, FALSE, sizeof (gint64));
  gtk_widget_init_template (GTK_WIDGET (self));
}
