/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-record-dialog"

#include "bb-record-dialog.h"

#include "bb-editor.h"

struct _BbRecordDialog
{
  AdwWindow parent_instance;

  /* template */
  BbEditor *editor;

  /* owned */
  char *key;
};

G_DEFINE_FINAL_TYPE (BbRecordDialog, bb_record_dialog, ADW_TYPE_WINDOW)

enum {
  SIGNAL_SAVED,
  N_SIGNALS
};

static guint signals[N_SIGNALS];

static void
done_cb (BbRecordDialog *self,
         const BbTable  *table,
         gint64          id)
{
  (void) table;

  if (id != 0)
    g_signal_emit (self, signals[SIGNAL_SAVED], 0, id);

  /* Whoever asked for the dialog is told what is saved in it, also where somebody wants it back first. */
  if (bb_editor_is_put_aside (self->editor))
    gtk_widget_set_visible (GTK_WIDGET (self), FALSE);
  else
    gtk_window_close (GTK_WINDOW (self));
}

static void
taken_up_cb (BbRecordDialog *self)
{
  gtk_window_present (GTK_WINDOW (self));
}

static void
given_up_cb (BbRecordDialog *self,
             const char     *key)
{
  if (g_str_equal (key, self->key) && bb_editor_is_put_aside (self->editor))
    gtk_window_destroy (GTK_WINDOW (self));
}

static void
closing_cb (BbRecordDialog *self)
{
  if (bb_editor_is_put_aside (self->editor))
    gtk_window_destroy (GTK_WINDOW (self));
}

static void
map_cb (BbRecordDialog *self)
{
  bb_editor_focus (self->editor);
}

static void
bb_record_dialog_dispose (GObject *object)
{
  gtk_widget_dispose_template (GTK_WIDGET (object), BB_TYPE_RECORD_DIALOG);

  G_OBJECT_CLASS (bb_record_dialog_parent_class)->dispose (object);
}

static void
bb_record_dialog_finalize (GObject *object)
{
  g_free (BB_RECORD_DIALOG (object)->key);

  G_OBJECT_CLASS (bb_record_dialog_parent_class)->finalize (object);
}

static void
bb_record_dialog_class_init (BbRecordDialogClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = bb_record_dialog_dispose;
  G_OBJECT_CLASS (klass)->finalize = bb_record_dialog_finalize;

  /**
   * BbRecordDialog::saved:
   * @id: the record's key
   */
  signals[SIGNAL_SAVED] = g_signal_new ("saved", BB_TYPE_RECORD_DIALOG, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                        G_TYPE_NONE, 1, G_TYPE_INT64);

  g_type_ensure (BB_TYPE_EDITOR);
  gtk_widget_class_set_template_from_resource (widget_class, "/io/blankbook/Blankbook/bb-record-dialog.ui");
  gtk_widget_class_bind_template_child (widget_class, BbRecordDialog, editor);
  gtk_widget_class_bind_template_callback (widget_class, done_cb);
  gtk_widget_class_bind_template_callback (widget_class, taken_up_cb);
  gtk_widget_class_bind_template_callback (widget_class, map_cb);
}

static void
bb_record_dialog_init (BbRecordDialog *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

/* A new record and each that stands in the book are kept apart while they are half typed. */
static char *
make_key (const BbTable *table,
          gconstpointer  record)
{
  const gint64 id = bb_record_get_key (table, record);

  return id != 0 ? g_strdup_printf ("%s.%" G_GINT64_FORMAT, table->name, id) : g_strdup (table->name);
}

/**
 * bb_record_dialog_new:
 * @parent: the window that asks
 * @session: the session
 * @title: the dialog's title, translated
 * @table: the record's table
 * @record: (transfer full): the record to edit; a new one has no key
 *
 * Returns: (transfer none): a dialog, not yet presented, with what was half typed in it the last time
 */
BbRecordDialog *
bb_record_dialog_new (GtkWindow     *parent,
                      BbSession     *session,
                      const char    *title,
                      const BbTable *table,
                      gpointer       record)
{
  BbRecordDialog *self = g_object_new (BB_TYPE_RECORD_DIALOG, "transient-for", parent, "title", title, NULL);

  self->key = make_key (table, record);
  g_signal_connect_object (session, "given-up", G_CALLBACK (given_up_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (session, "closing", G_CALLBACK (closing_cb), self, G_CONNECT_SWAPPED);
  bb_editor_set_session (self->editor, session, self->key);
  if (bb_editor_resume (self->editor))
    bb_record_free (table, record);
  else
    bb_editor_open (self->editor, table, record, NULL);

  return self;
}
