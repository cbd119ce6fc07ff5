/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-run-view"

#include "bb-run-view.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#include "bb-chain-view.h"
#include "bb-evidence-load.h"
#include "bb-facts.h"
#include "bb-record-dialog.h"
#include "bb-run-actions.h"
#include "bb-run-details.h"
#include "bb-run-take.h"
#include "bb-run-trace.h"
#include "bb-run-words.h"
#include "bb-show.h"
#include "bb-sign.h"

struct _BbRunView
{
  AdwBin parent_instance;

  /* template */
  BbSign *sign;
  GtkLabel *state_label;
  GtkLabel *title_label;
  GtkLabel *summary_label;
  GtkLabel *rest_label;
  GtkExpander *steps_expander;
  BbChainView *chain;
  GtkBox *work_box;
  GtkMenuButton *finish_button;
  GtkPopover *finish_popover;
  GtkLabel *finish_label;
  GtkButton *finish_now_button;
  GtkBox *facts;
  BbRunDetails *details;
  BbRunTake *take;
  BbRunTrace *trace;
  GtkEntry *remark_entry;

  guint n_remarks;
  gboolean writing;

  /* owned */
  BbSession *session;
  BbRun *run;
};

G_DEFINE_FINAL_TYPE (BbRunView, bb_run_view, ADW_TYPE_BIN)

static void
record_action (GtkWidget  *widget,
               const char *name,
               GVariant   *parameter)
{
  BbRunView *self = BB_RUN_VIEW (widget);
  GtkRoot *root = gtk_widget_get_root (widget);
  BbRecordDialog *dialog = NULL;

  (void) name;
  (void) parameter;

  if (self->run == NULL)
    return;
  dialog = bb_record_dialog_new (GTK_IS_WINDOW (root) ? GTK_WINDOW (root) : NULL, self->session, _("Record the Run"),
                                 &bb_run_table, bb_record_copy (&bb_run_table, self->run));
  gtk_window_set_default_size (GTK_WINDOW (dialog), 640, 620);
  gtk_window_present (GTK_WINDOW (dialog));
}

static void
finish_action (GtkWidget  *widget,
               const char *name,
               GVariant   *parameter)
{
  BbRunView *self = BB_RUN_VIEW (widget);

  (void) name;
  (void) parameter;

  gtk_popover_popdown (self->finish_popover);
  if (self->run != NULL)
    bb_run_finish (self->session, self->run);
}

/* What a person pressed twice is entered once: until it is written, what was typed is still there. */
static void
written_cb (gpointer data)
{
  g_autoptr (BbRunView) self = data;

  self->writing = FALSE;
}

static void
remark_action (GtkWidget  *widget,
               const char *name,
               GVariant   *parameter)
{
  BbRunView *self = BB_RUN_VIEW (widget);
  const char *text = gtk_editable_get_text (GTK_EDITABLE (self->remark_entry));

  (void) name;
  (void) parameter;

  if (self->run == NULL || *text == '\0' || self->writing)
    return;
  self->writing = TRUE;
  bb_run_annotate (self->session, self->run->id, text, written_cb, g_object_ref (self));
}

/* What the book would say to the run's end: a message names the field it speaks of before a colon. */
static char *
find_obstacle (const BbRun *run)
{
  g_autoptr (BbRun) ended = bb_record_copy (&bb_run_table, run);
  g_autoptr (GError) error = NULL;
  const char *colon = NULL;

  g_free (ended->finished_at);
  ended->finished_at = g_strdup (run->started_at);
  if (bb_run_table.check (ended, &error))
    return NULL;
  colon = strstr (error->message, ": ");

  return g_strdup (colon != NULL ? colon + strlen (": ") : error->message);
}

static void
show_end (BbRunView *self)
{
  g_autofree char *obstacle = find_obstacle (self->run);
  g_autofree char *text = NULL;

  if (obstacle != NULL)
    /* Translators: what has to be said first, as a sentence that begins in lower case. */
    text = g_strdup_printf (_("Before the run can end, record it: %s"), obstacle);
  gtk_widget_set_sensitive (GTK_WIDGET (self->finish_now_button), obstacle == NULL);
  gtk_label_set_label (self->finish_label,
                       text != NULL ? text : _("A finished run can't be edited any more, only annotated."));
}

static void
show_head (BbRunView        *self,
           const BbRevision *revision)
{
  const BbRun *run = self->run;
  const gboolean is_finished = run->finished_at != NULL;
  g_autofree char *title = g_strdup_printf (_("Run %s by %s"), run->code, revision->code);
  g_autofree char *day = bb_show_date (is_finished ? run->finished_at : run->started_at);
  g_autofree char *counts = bb_words_of_counts (run->good, run->spoiled);
  g_autofree char *when = g_strdup_printf (is_finished ? _("Finished on %s") : _("Started on %s"), day);
  g_autofree char *summary = *counts != '\0' ? g_strjoin (" · ", when, counts, NULL) : g_strdup (when);

  bb_sign_set_shape (self->sign, is_finished ? BB_SIGN_TICK : BB_SIGN_HALF);
  gtk_label_set_label (self->state_label, is_finished ? _("Finished") : _("Under way"));
  gtk_label_set_label (self->title_label, title);
  gtk_label_set_label (self->summary_label, summary);
  gtk_widget_set_visible (GTK_WIDGET (self->work_box), !is_finished);
  gtk_widget_set_visible (GTK_WIDGET (self->take), !is_finished);
  show_end (self);
}

/* Who stands at the press has the settings, their cautions and the count on the run's own card. */
static void
show_steps (BbRunView        *self,
            gboolean          is_other,
            const BbRevision *revision)
{
  const gboolean is_finished = self->run->finished_at != NULL;
  g_autoptr (GPtrArray) lines = bb_book_load_lines (bb_session_get_book (self->session), &bb_job_line_table,
                                                    &self->run->line, 1, NULL);
  g_autofree char *rest = lines != NULL && lines->len > 0 ? bb_words_of_rest (lines->pdata[0]) : NULL;

  gtk_label_set_label (self->rest_label, rest != NULL ? rest : "");
  gtk_widget_set_visible (GTK_WIDGET (self->rest_label), rest != NULL && !is_finished);
  bb_chain_view_show (self->chain, self->session, revision, NULL);
  if (is_other)
    gtk_expander_set_expanded (self->steps_expander, !is_finished);
}

static void
show_remark_entry (BbRunView *self,
                   gboolean   is_other,
                   guint      n_remarks)
{
  if (is_other || self->n_remarks != n_remarks)
    gtk_editable_set_text (GTK_EDITABLE (self->remark_entry), "");
  self->n_remarks = n_remarks;
}

static gboolean
load (BbRunView   *self,
      gint64       id,
      BbRevision **revision,
      GPtrArray  **entries,
      GPtrArray  **remarks,
      GError     **error)
{
  BbBook *book = bb_session_get_book (self->session);

  g_clear_pointer (&self->run, bb_run_free);
  self->run = bb_book_load (book, &bb_run_table, id, error);
  if (self->run != NULL)
    *revision = bb_book_load (book, &bb_revision_table, self->run->revision, error);
  if (*revision != NULL)
    *entries = bb_book_load_referring (book, &bb_lot_entry_table, &bb_run_table, id, error);
  if (*entries != NULL)
    *remarks = bb_book_load_referring (book, &bb_annotation_table, &bb_run_table, id, error);

  return *remarks != NULL;
}

/**
 * bb_run_view_new:
 *
 * Returns: (transfer floating): a view of no run
 */
GtkWidget *
bb_run_view_new (void)
{
  return g_object_new (BB_TYPE_RUN_VIEW, NULL);
}

/**
 * bb_run_view_show:
 * @self: a view
 * @session: the session
 * @run: key of the run to show
 */
void
bb_run_view_show (BbRunView *self,
                  BbSession *session,
                  gint64     run)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (BbRevision) revision = NULL;
  g_autoptr (GPtrArray) entries = NULL;
  g_autoptr (GPtrArray) remarks = NULL;
  gint64 before = self->run != NULL ? self->run->id : 0;

  g_return_if_fail (BB_IS_RUN_VIEW (self));

  g_set_object (&self->session, session);
  if (!load (self, run, &revision, &entries, &remarks, &error))
    {
      bb_session_report (session, error);
      return;
    }
  show_head (self, revision);
  show_steps (self, before != run, revision);
  bb_facts_fill (self->facts, session, &bb_run_table, self->run);
  bb_run_details_show (self->details, session, self->run, revision, entries, remarks);
  bb_run_trace_show (self->trace, session, self->run, entries);
  bb_run_take_show (self->take, session, self->run, revision, entries->len);
  show_remark_entry (self, before != run, remarks->len);
}

static void
bb_run_view_dispose (GObject *object)
{
  BbRunView *self = BB_RUN_VIEW (object);

  g_clear_object (&self->session);
  g_clear_pointer (&self->run, bb_run_free);
  adw_bin_set_child (ADW_BIN (self), NULL);

  G_OBJECT_CLASS (bb_run_view_parent_class)->dispose (object);
}

static void
bb_run_view_class_init (BbRunViewClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = bb_run_view_dispose;

  g_type_ensure (BB_TYPE_CHAIN_VIEW);
  g_type_ensure (BB_TYPE_RUN_DETAILS);
  g_type_ensure (BB_TYPE_RUN_TAKE);
  g_type_ensure (BB_TYPE_RUN_TRACE);
  g_type_ensure (BB_TYPE_SIGN);
  gtk_widget_class_set_template_from_resource (widget_class, "/io/blankbook/Blankbook/bb-run-view.ui");
  gtk_widget_class_bind_template_child (widget_class, BbRunView, sign);
  gtk_widget_class_bind_template_child (widget_class, BbRunView, state_label);
  gtk_widget_class_bind_template_child (widget_class, BbRunView, title_label);
  gtk_widget_class_bind_template_child (widget_class, BbRunView, summary_label);
  gtk_widget_class_bind_template_child (widget_class, BbRunView, rest_label);
  gtk_widget_class_bind_template_child (widget_class, BbRunView, steps_expander);
  gtk_widget_class_bind_template_child (widget_class, BbRunView, chain);
  gtk_widget_class_bind_template_child (widget_class, BbRunView, work_box);
  gtk_widget_class_bind_template_child (widget_class, BbRunView, finish_button);
  gtk_widget_class_bind_template_child (widget_class, BbRunView, finish_popover);
  gtk_widget_class_bind_template_child (widget_class, BbRunView, finish_label);
  gtk_widget_class_bind_template_child (widget_class, BbRunView, finish_now_button);
  gtk_widget_class_bind_template_child (widget_class, BbRunView, trace);
  gtk_widget_class_bind_template_child (widget_class, BbRunView, facts);
  gtk_widget_class_bind_template_child (widget_class, BbRunView, details);
  gtk_widget_class_bind_template_child (widget_class, BbRunView, take);
  gtk_widget_class_bind_template_child (widget_class, BbRunView, remark_entry);
  gtk_widget_class_install_action (widget_class, "run.record", NULL, record_action);
  gtk_widget_class_install_action (widget_class, "run.finish", NULL, finish_action);
  gtk_widget_class_install_action (widget_class, "run.remark", NULL, remark_action);
}

static void
bb_run_view_init (BbRunView *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  bb_chain_view_set_last (self->chain, BB_STATION_CURE);
}
