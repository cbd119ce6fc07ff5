/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-trace-view"

#include "bb-trace-view.h"

#include <glib/gi18n-lib.h>

#include "bb-compat.h"
#include "bb-run-words.h"
#include "bb-save.h"
#include "bb-show.h"
#include "bb-trace-keep.h"
#include "bb-trace-report.h"

/* More than these nobody reads through; the table that is saved has all. */
#define MOST_RUNS 200

struct _BbTraceView
{
  GtkBox parent_instance;

  /* template */
  GtkLabel *title_label;
  GtkLabel *sum_label;
  GtkBox *found_box;
  GtkListBox *customers;
  GtkListBox *runs;

  /* owned */
  BbSession *session;
  BbTrace *trace;
  GCancellable *loading;

  const BbTable *table;
  gint64 id;
};

G_DEFINE_FINAL_TYPE (BbTraceView, bb_trace_view, GTK_TYPE_BOX)

enum {
  SIGNAL_OPENED,
  N_SIGNALS
};

static guint signals[N_SIGNALS];

static void
named_pdf_cb (GFile    *file,
              gpointer  data)
{
  bb_trace_view_save (data, file, TRUE);
}

static void
named_csv_cb (GFile    *file,
              gpointer  data)
{
  bb_trace_view_save (data, file, FALSE);
}

static void
save_action (GtkWidget  *widget,
             const char *name,
             GVariant   *parameter)
{
  BbTraceView *self = BB_TRACE_VIEW (widget);
  const gboolean as_pdf = g_str_has_suffix (name, "pdf");
  g_autofree char *file = NULL;

  (void) parameter;

  if (self->trace == NULL)
    return;
  /* Translators: the name of a file; the code of what is traced. */
  file = g_strdup_printf (as_pdf ? _("fault-%s.pdf") : _("fault-%s.csv"), self->trace->code);
  bb_save_ask (widget, _("Save the Trace"), file, as_pdf ? named_pdf_cb : named_csv_cb, g_object_ref (self),
               g_object_unref);
}

static void
open_cb (BbTraceView   *self,
         GtkListBoxRow *row)
{
  const int index = gtk_list_box_row_get_index (row);
  const BbRunCard *run = &g_array_index (self->trace->runs, BbRunCard, index);
  g_autoptr (GError) error = NULL;
  g_autoptr (BbJob) job = bb_book_load_by_code (bb_session_get_book (self->session), &bb_job_table, run->job, &error);

  if (job == NULL)
    {
      bb_session_report (self->session, error);
      return;
    }
  bb_session_show (self->session, "jobs", job->id);
  g_signal_emit (self, signals[SIGNAL_OPENED], 0);
}

static GtkWidget *
make_row (const char *title,
          const char *subtitle,
          const char *suffix)
{
  GtkWidget *row = adw_action_row_new ();
  GtkWidget *label = gtk_label_new (suffix);
  g_autofree char *plain_title = g_markup_escape_text (title, -1);
  g_autofree char *plain_subtitle = g_markup_escape_text (subtitle, -1);

  adw_preferences_row_set_title (ADW_PREFERENCES_ROW (row), plain_title);
  adw_action_row_set_subtitle (ADW_ACTION_ROW (row), plain_subtitle);
  gtk_widget_add_css_class (label, "numeral");
  gtk_widget_add_css_class (label, "dim-label");
  adw_action_row_add_suffix (ADW_ACTION_ROW (row), label);

  return row;
}

static GtkWidget *
make_customer (const BbTouched *touched)
{
  g_autofree char *counts = bb_words_of_counts (touched->good, BB_INTEGER_NONE);
  g_autofree char *subtitle = *touched->contact != '\0' ? g_strjoin (" · ", touched->jobs, touched->contact, NULL)
                                                        : g_strdup (touched->jobs);

  return make_row (touched->customer, subtitle, counts);
}

static GtkWidget *
make_run (const BbRunCard *run)
{
  g_autofree char *counts = bb_words_of_counts (run->good, run->spoiled);
  g_autofree char *day = bb_show_date (run->started_at);
  g_autofree char *title = g_strjoin (" · ", run->code, run->customer, NULL);
  g_autofree char *subtitle = g_strjoin (" · ", day, run->blank, run->colourway, run->revision,
                                         *run->lots != '\0' ? run->lots : NULL, NULL);
  GtkWidget *row = make_row (title, subtitle, counts);

  gtk_list_box_row_set_activatable (GTK_LIST_BOX_ROW (row), TRUE);

  return row;
}

/**
 * bb_trace_view_new:
 *
 * Returns: (transfer floating): a trace of nothing
 */
GtkWidget *
bb_trace_view_new (void)
{
  return g_object_new (BB_TYPE_TRACE_VIEW, NULL);
}

/* What is traced. */
typedef struct {
  const BbTable *table;
  gint64 id;
} Subject;

static gpointer
read_trace (BbBook    *book,
            gpointer   data,
            GError   **error)
{
  const Subject *self = data;

  return bb_trace_load (book, self->table, self->id, error);
}

static void
show_words (BbTraceView *self)
{
  g_autofree char *title = bb_trace_dup_title (self->trace);
  g_autofree char *sum = bb_trace_describe (self->trace);
  g_autofree char *more = NULL;
  g_autofree char *text = NULL;

  if (self->trace->runs->len > MOST_RUNS)
    more = g_strdup_printf (_("The newest %d runs are listed here, and all in the table that you can save."),
                            MOST_RUNS);
  text = g_strjoin (" ", sum, more, NULL);
  gtk_label_set_label (self->title_label, title);
  gtk_label_set_label (self->sum_label, text);
}

static void
show_trace (BbTraceView *self)
{
  const GArray *customers = self->trace->customers;
  const GArray *runs = self->trace->runs;

  show_words (self);
  for (guint i = 0; i < MIN (customers->len, MOST_RUNS); i++)
    gtk_list_box_append (self->customers, make_customer (&g_array_index (customers, BbTouched, i)));
  for (guint i = 0; i < MIN (runs->len, MOST_RUNS); i++)
    gtk_list_box_append (self->runs, make_run (&g_array_index (runs, BbRunCard, i)));
  gtk_widget_set_visible (GTK_WIDGET (self->found_box), runs->len > 0);
}

static void
loaded_cb (GObject      *source,
           GAsyncResult *result,
           gpointer      data)
{
  g_autoptr (BbTraceView) self = data;
  g_autoptr (GError) error = NULL;
  BbTrace *trace = bb_session_read_finish (BB_SESSION (source), result, &error);

  if (trace == NULL)
    {
      bb_session_report (BB_SESSION (source), error);
      return;
    }
  self->trace = trace;
  show_trace (self);
}

static void
stop_loading (BbTraceView *self)
{
  g_cancellable_cancel (self->loading);
  g_clear_object (&self->loading);
}

/**
 * bb_trace_view_show:
 * @self: a view
 * @session: the session
 * @table: the table of what had a part in runs; see bb_book_trace_runs()
 * @id: its key
 *
 * Traces it off the main loop, and shows what was found.
 */
void
bb_trace_view_show (BbTraceView   *self,
                    BbSession     *session,
                    const BbTable *table,
                    gint64         id)
{
  const Subject subject = { table, id };

  g_return_if_fail (BB_IS_TRACE_VIEW (self) && table != NULL);

  stop_loading (self);
  g_set_object (&self->session, session);
  self->table = table;
  self->id = id;
  bb_compat_empty_list (self->customers);
  bb_compat_empty_list (self->runs);
  gtk_widget_set_visible (GTK_WIDGET (self->found_box), FALSE);
  g_clear_pointer (&self->trace, bb_trace_free);
  self->loading = g_cancellable_new ();
  bb_session_read_async (session, read_trace, g_memdup2 (&subject, sizeof subject), g_free,
                         (GDestroyNotify) bb_trace_free, self->loading, loaded_cb, g_object_ref (self));
}

/**
 * bb_trace_view_save:
 * @self: a view
 * @file: a file that a person has just named
 * @as_pdf: whether as a fault report, on the paper that goes with the units, or as a table of the runs
 *
 * Saves what the book says on it now: see bb_trace_keep().
 */
void
bb_trace_view_save (BbTraceView *self,
                    GFile       *file,
                    gboolean     as_pdf)
{
  g_return_if_fail (BB_IS_TRACE_VIEW (self) && G_IS_FILE (file));

  if (self->session != NULL)
    bb_trace_keep (self->session, self->table, self->id, file, as_pdf);
}

static void
bb_trace_view_dispose (GObject *object)
{
  BbTraceView *self = BB_TRACE_VIEW (object);

  stop_loading (self);
  g_clear_object (&self->session);
  g_clear_pointer (&self->trace, bb_trace_free);
  gtk_widget_dispose_template (GTK_WIDGET (self), BB_TYPE_TRACE_VIEW);

  G_OBJECT_CLASS (bb_trace_view_parent_class)->dispose (object);
}

static void
bb_trace_view_class_init (BbTraceViewClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = bb_trace_view_dispose;

  /**
   * BbTraceView::opened:
   *
   * A person opened one of the jobs that were found.
   */
  signals[SIGNAL_OPENED] = g_signal_new ("opened", BB_TYPE_TRACE_VIEW, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                         G_TYPE_NONE, 0);

  gtk_widget_class_set_template_from_resource (widget_class, "/io/blankbook/Blankbook/bb-trace-view.ui");
  gtk_widget_class_bind_template_child (widget_class, BbTraceView, title_label);
  gtk_widget_class_bind_template_child (widget_class, BbTraceView, sum_label);
  gtk_widget_class_bind_template_child (widget_class, BbTraceView, found_box);
  gtk_widget_class_bind_template_child (widget_class, BbTraceView, customers);
  gtk_widget_class_bind_template_child (widget_class, BbTraceView, runs);
  gtk_widget_class_bind_template_callback (widget_class, open_cb);
  gtk_widget_class_install_action (widget_class, "trace.save-csv", NULL, save_action);
  gtk_widget_class_install_action (widget_class, "trace.save-pdf", NULL, save_action);
}

static void
bb_trace_view_init (BbTraceView *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}
