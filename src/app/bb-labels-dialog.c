/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-labels-dialog"

#include "bb-labels-dialog.h"

#include <glib/gi18n-lib.h>

#include "bb-compat.h"
#include "bb-label-load.h"
#include "bb-print-operation.h"
#include "bb-save.h"

struct _BbLabelsDialog
{
  AdwWindow parent_instance;

  /* template */
  AdwWindowTitle *title;
  GtkDrawingArea *preview;
  GtkDropDown *paper_drop_down;
  GtkSpinButton *count_spin;
  GtkSpinButton *place_spin;
  GtkLabel *sheets_label;

  /* owned */
  BbSession *session;
  BbLabel *label;
};

G_DEFINE_FINAL_TYPE (BbLabelsDialog, bb_labels_dialog, ADW_TYPE_WINDOW)

static const BbLabelLayout *
get_layout (BbLabelsDialog *self)
{
  return gtk_drop_down_get_selected (self->paper_drop_down) == 0 ? &bb_label_layout_a4 : &bb_label_layout_letter;
}

/* The same label as often as it is wanted. */
static BbLabelSheets *
make_sheets (BbLabelsDialog *self)
{
  GPtrArray *labels = g_ptr_array_new_with_free_func ((GDestroyNotify) bb_label_free);

  for (int i = 0; i < gtk_spin_button_get_value_as_int (self->count_spin); i++)
    g_ptr_array_add (labels, bb_label_copy (self->label));

  return bb_label_sheets_new (get_layout (self), labels,
                              (guint) gtk_spin_button_get_value_as_int (self->place_spin) - 1);
}

static void
draw_cb (GtkDrawingArea *area,
         cairo_t        *cr,
         int             width,
         int             height,
         gpointer        data)
{
  BbLabelsDialog *self = data;
  g_autoptr (BbLabelSheets) sheets = NULL;

  (void) area;

  if (self->label == NULL)
    return;
  sheets = make_sheets (self);
  bb_label_sheets_draw_fitted (sheets, cr, width, height);
}

static void
changed_cb (BbLabelsDialog *self)
{
  g_autoptr (BbLabelSheets) sheets = NULL;
  g_autofree char *text = NULL;
  guint n = 0;

  if (self->label == NULL)
    return;
  gtk_adjustment_set_upper (gtk_spin_button_get_adjustment (self->place_spin),
                            bb_label_layout_count_places (get_layout (self)));
  sheets = make_sheets (self);
  n = bb_label_sheets_count_pages (sheets);
  text = g_strdup_printf (ngettext ("%u sheet", "%u sheets", n), n);
  gtk_label_set_label (self->sheets_label, text);
  gtk_widget_queue_draw (GTK_WIDGET (self->preview));
}

/* The sheet follows what is typed, not only what is left. */
static void
typed_cb (GtkSpinButton *spin)
{
  if (*gtk_editable_get_text (GTK_EDITABLE (spin)) != '\0')
    gtk_spin_button_update (spin);
}

static void
print_action (GtkWidget  *widget,
              const char *name,
              GVariant   *parameter)
{
  BbLabelsDialog *self = BB_LABELS_DIALOG (widget);
  g_autoptr (BbPrintOperation) operation = bb_print_operation_new_labels (make_sheets (self), self->label->tag);

  (void) name;
  (void) parameter;

  /* The pages may be drawn when the dialog is closed already. */
  g_signal_connect_object (operation, "failed", G_CALLBACK (bb_session_report), self->session, G_CONNECT_SWAPPED);
  bb_print_operation_ask (operation, GTK_WINDOW (self));
}

static GBytes *
make_pdf (gpointer   data,
          GError   **error)
{
  return bb_label_sheets_to_pdf (data, error);
}

static void
named_cb (GFile    *file,
          gpointer  data)
{
  BbLabelsDialog *self = data;

  bb_save_run (bb_save_new (file, FALSE), make_pdf, make_sheets (self), (GDestroyNotify) bb_label_sheets_free,
               self->session);
  gtk_window_close (GTK_WINDOW (self));
}

static void
save_action (GtkWidget  *widget,
             const char *name,
             GVariant   *parameter)
{
  (void) name;
  (void) parameter;

  bb_save_ask (widget, _("Save as PDF"), _("labels.pdf"), named_cb, g_object_ref (widget), g_object_unref);
}

static void
bb_labels_dialog_dispose (GObject *object)
{
  BbLabelsDialog *self = BB_LABELS_DIALOG (object);

  if (self->preview != NULL)
    gtk_drawing_area_set_draw_func (self->preview, NULL, NULL, NULL);
  g_clear_pointer (&self->label, bb_label_free);
  g_clear_object (&self->session);
  gtk_widget_dispose_template (GTK_WIDGET (self), BB_TYPE_LABELS_DIALOG);

  G_OBJECT_CLASS (bb_labels_dialog_parent_class)->dispose (object);
}

static void
bb_labels_dialog_class_init (BbLabelsDialogClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = bb_labels_dialog_dispose;
  gtk_widget_class_set_template_from_resource (widget_class, "/io/blankbook/Blankbook/bb-labels-dialog.ui");
  gtk_widget_class_bind_template_child (widget_class, BbLabelsDialog, title);
  gtk_widget_class_bind_template_child (widget_class, BbLabelsDialog, preview);
  gtk_widget_class_bind_template_child (widget_class, BbLabelsDialog, paper_drop_down);
  gtk_widget_class_bind_template_child (widget_class, BbLabelsDialog, count_spin);
  gtk_widget_class_bind_template_child (widget_class, BbLabelsDialog, place_spin);
  gtk_widget_class_bind_template_child (widget_class, BbLabelsDialog, sheets_label);
  gtk_widget_class_bind_template_callback (widget_class, changed_cb);
  gtk_widget_class_bind_template_callback (widget_class, typed_cb);
  gtk_widget_class_install_action (widget_class, "labels.print", NULL, print_action);
  gtk_widget_class_install_action (widget_class, "labels.save", NULL, save_action);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_Escape, 0, "window.close", NULL);
}

static void
bb_labels_dialog_init (BbLabelsDialog *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  bb_compat_set_name (GTK_WIDGET (self->paper_drop_down), _("Paper"));
  gtk_drawing_area_set_draw_func (self->preview, draw_cb, self, NULL);
}

/**
 * bb_labels_dialog_new:
 * @parent: the window that asks
 * @session: the session
 * @table: the table of what is labelled
 * @id: its key
 * @error: return location for a #GError
 *
 * Returns: (transfer none) (nullable): a dialog, not yet presented; %NULL with an error where the thing can't be read
 */
GtkWidget *
bb_labels_dialog_new (GtkWindow      *parent,
                      BbSession      *session,
                      const BbTable  *table,
                      gint64          id,
                      GError        **error)
{
  BbLabel *label = bb_label_load (bb_session_get_book (session), table, id, error);
  BbLabelsDialog *self = NULL;

  if (label == NULL)
    return NULL;

  self = g_object_new (BB_TYPE_LABELS_DIALOG, "transient-for", parent, NULL);
  self->session = g_object_ref (session);
  self->label = label;
  adw_window_title_set_title (self->title, _("Labels"));
  adw_window_title_set_subtitle (self->title, label->tag);
  changed_cb (self);

  return GTK_WIDGET (self);
}
