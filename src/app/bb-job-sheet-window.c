/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-job-sheet-window"

#include "bb-job-sheet-window.h"

#include <glib/gi18n-lib.h>

#include "bb-document-view.h"
#include "bb-job-report.h"
#include "bb-moment.h"

struct _BbJobSheetWindow
{
  AdwWindow parent_instance;

  /* template */
  AdwToastOverlay *toasts;
  BbDocumentView *document;
};

G_DEFINE_FINAL_TYPE (BbJobSheetWindow, bb_job_sheet_window, ADW_TYPE_WINDOW)

/* What a sheet is made from, off the main loop: a snapshot, which the source shares by g_atomic_rc_box_acquire(). */
typedef struct {
  gint64 job;
  char *today;
  BbUnitContext units;
} Order;

static void
order_clear (gpointer data)
{
  g_free (((Order *) data)->today);
}

static gpointer
make_report (BbBook    *book,
             gpointer   data,
             GError   **error)
{
  const Order *self = data;

  return bb_job_report_new (book, self->job, self->today, &self->units, error);
}

static Order *
make_order (BbSession   *session,
            const BbJob *job)
{
  Order *order = g_atomic_rc_box_new0 (Order);

  order->job = job->id;
  order->today = bb_dup_today ();
  order->units = bb_session_copy_units (session);

  return order;
}

static void
say_cb (BbJobSheetWindow *self,
        const char       *text)
{
  adw_toast_overlay_add_toast (self->toasts, adw_toast_new (text));
}

/**
 * bb_job_sheet_window_new:
 * @parent: (nullable): the window that asks
 * @session: the session
 * @job: the job
 *
 * Returns: (transfer none): a window, not yet presented
 */
GtkWidget *
bb_job_sheet_window_new (GtkWindow   *parent,
                         BbSession   *session,
                         const BbJob *job)
{
  BbJobSheetWindow *self = NULL;
  g_autoptr (BbDocumentSource) source = NULL;
  g_autofree char *name = NULL;
  g_autofree char *title = NULL;

  g_return_val_if_fail (BB_IS_SESSION (session) && job != NULL, NULL);

  self = g_object_new (BB_TYPE_JOB_SHEET_WINDOW, "transient-for", parent, NULL);
  title = g_strdup_printf (_("Job sheet %s"), job->code);
  gtk_window_set_title (GTK_WINDOW (self), title);
  name = g_strdup_printf (_("job-sheet-%s"), job->code);
  /* A code may have what a file's name can't. */
  g_strdelimit (name, G_DIR_SEPARATOR_S, '-');
  source = bb_document_source_new (session, make_report, make_order (session, job), order_clear,
                                   bb_session_get_units (session)->system == BB_UNITS_US ? BB_PAPER_LETTER
                                                                                         : BB_PAPER_A4);
  bb_document_view_show (self->document, source, name);

  return GTK_WIDGET (self);
}

static void
bb_job_sheet_window_dispose (GObject *object)
{
  gtk_widget_dispose_template (GTK_WIDGET (object), BB_TYPE_JOB_SHEET_WINDOW);

  G_OBJECT_CLASS (bb_job_sheet_window_parent_class)->dispose (object);
}

static void
bb_job_sheet_window_class_init (BbJobSheetWindowClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = bb_job_sheet_window_dispose;
  g_type_ensure (BB_TYPE_DOCUMENT_VIEW);
  gtk_widget_class_set_template_from_resource (widget_class, "/io/blankbook/Blankbook/bb-job-sheet-window.ui");
  gtk_widget_class_bind_template_child (widget_class, BbJobSheetWindow, toasts);
  gtk_widget_class_bind_template_child (widget_class, BbJobSheetWindow, document);
  gtk_widget_class_bind_template_callback (widget_class, say_cb);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_Escape, 0, "window.close", NULL);
}

static void
bb_job_sheet_window_init (BbJobSheetWindow *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}
