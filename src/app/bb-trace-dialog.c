/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-trace-dialog"

#include "bb-trace-dialog.h"

#include "bb-trace-view.h"

struct _BbTraceDialog
{
  AdwWindow parent_instance;

  /* template */
  BbTraceView *view;
};

G_DEFINE_FINAL_TYPE (BbTraceDialog, bb_trace_dialog, ADW_TYPE_WINDOW)

static void
opened_cb (BbTraceDialog *self)
{
  gtk_window_close (GTK_WINDOW (self));
}

static void
bb_trace_dialog_dispose (GObject *object)
{
  gtk_widget_dispose_template (GTK_WIDGET (object), BB_TYPE_TRACE_DIALOG);

  G_OBJECT_CLASS (bb_trace_dialog_parent_class)->dispose (object);
}

static void
bb_trace_dialog_class_init (BbTraceDialogClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = bb_trace_dialog_dispose;

  g_type_ensure (BB_TYPE_TRACE_VIEW);
  gtk_widget_class_set_template_from_resource (widget_class, "/io/blankbook/Blankbook/bb-trace-dialog.ui");
  gtk_widget_class_bind_template_child (widget_class, BbTraceDialog, view);
  gtk_widget_class_bind_template_callback (widget_class, opened_cb);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_Escape, 0, "window.close", NULL);
}

static void
bb_trace_dialog_init (BbTraceDialog *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

static GtkWindow *
make_dialog (GtkRoot *root)
{
  return g_object_new (BB_TYPE_TRACE_DIALOG, "transient-for", GTK_IS_WINDOW (root) ? root : NULL, NULL);
}

/**
 * bb_trace_dialog_present:
 * @parent: the widget that asks
 * @session: the session
 * @table: the table of what had a part in runs; see bb_book_trace_runs()
 * @id: its key
 *
 * Shows what something had a part in.
 */
void
bb_trace_dialog_present (GtkWidget     *parent,
                         BbSession     *session,
                         const BbTable *table,
                         gint64         id)
{
  GtkWindow *window = make_dialog (gtk_widget_get_root (parent));

  bb_trace_view_show (BB_TRACE_DIALOG (window)->view, session, table, id);
  gtk_window_present (window);
}
