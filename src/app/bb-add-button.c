/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-add-button"

#include "bb-add-button.h"

#include "bb-compat.h"
#include "bb-record-dialog.h"

struct _BbAddButton
{
  AdwBin parent_instance;

  /* owned */
  BbSession *session;
  char *title;

  const BbTable *table;
};

G_DEFINE_FINAL_TYPE (BbAddButton, bb_add_button, ADW_TYPE_BIN)

enum {
  SIGNAL_ADDED,
  N_SIGNALS
};

static guint signals[N_SIGNALS];

static void
saved_cb (BbAddButton *self,
          gint64       id)
{
  g_signal_emit (self, signals[SIGNAL_ADDED], 0, id);
}

static void
clicked_cb (BbAddButton *self)
{
  GtkRoot *root = gtk_widget_get_root (GTK_WIDGET (self));
  gpointer record = bb_record_new (self->table);
  BbRecordDialog *dialog = NULL;

  bb_session_fill_in (self->session, self->table, record);
  dialog = bb_record_dialog_new (GTK_IS_WINDOW (root) ? GTK_WINDOW (root) : NULL, self->session, self->title,
                                 self->table, record);
  g_signal_connect_object (dialog, "saved", G_CALLBACK (saved_cb), self, G_CONNECT_SWAPPED);
  gtk_window_present (GTK_WINDOW (dialog));
}

static void
bb_add_button_dispose (GObject *object)
{
  BbAddButton *self = BB_ADD_BUTTON (object);

  adw_bin_set_child (ADW_BIN (self), NULL);
  g_clear_object (&self->session);

  G_OBJECT_CLASS (bb_add_button_parent_class)->dispose (object);
}

static void
bb_add_button_finalize (GObject *object)
{
  g_free (BB_ADD_BUTTON (object)->title);

  G_OBJECT_CLASS (bb_add_button_parent_class)->finalize (object);
}

static void
bb_add_button_class_init (BbAddButtonClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = bb_add_button_dispose;
  G_OBJECT_CLASS (klass)->finalize = bb_add_button_finalize;

  /**
   * BbAddButton::added:
   * @id: the record's key
   */
  signals[SIGNAL_ADDED] = g_signal_new ("added", BB_TYPE_ADD_BUTTON, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                        G_TYPE_NONE, 1, G_TYPE_INT64);
}

static void
bb_add_button_init (BbAddButton *self)
{
  GtkWidget *button = gtk_button_new_from_icon_name ("list-add-symbolic");

  gtk_widget_set_valign (button, GTK_ALIGN_CENTER);
  g_signal_connect_swapped (button, "clicked", G_CALLBACK (clicked_cb), self);
  adw_bin_set_child (ADW_BIN (self), button);
}

/**
 * bb_add_button_new:
 * @session: the session
 * @table: the table that the record is added to
 * @title: what the button does, translated, like "Add a Customer"
 *
 * Returns: (transfer floating): a button
 */
GtkWidget *
bb_add_button_new (BbSession     *session,
                   const BbTable *table,
                   const char    *title)
{
  BbAddButton *self = NULL;
  GtkWidget *button = NULL;

  g_return_val_if_fail (BB_IS_SESSION (session) && table != NULL && title != NULL, NULL);

  self = g_object_new (BB_TYPE_ADD_BUTTON, NULL);
  self->session = g_object_ref (session);
  self->table = table;
  self->title = g_strdup (title);
  button = adw_bin_get_child (ADW_BIN (self));
  gtk_widget_set_tooltip_text (button, title);
  bb_compat_set_name (button, title);

  return GTK_WIDGET (self);
}
