/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-person-dialog"

#include "bb-person-dialog.h"

#include <glib/gi18n-lib.h>

#include "bb-editor.h"

/* Under this key a half-typed person is kept. */
#define KEPT_KEY "person"

struct _BbPersonDialog
{
  AdwWindow parent_instance;

  /* template */
  BbEditor *editor;

  /* owned */
  BbSession *session;
};

G_DEFINE_FINAL_TYPE (BbPersonDialog, bb_person_dialog, ADW_TYPE_WINDOW)

static void
done_cb (BbPersonDialog *self,
         const BbTable  *table,
         gint64          id)
{
  (void) table;

  if (id != 0)
    bb_session_set_person (self->session, id);
  gtk_window_close (GTK_WINDOW (self));
}

static void
map_cb (BbPersonDialog *self)
{
  bb_editor_focus (self->editor);
}

static void
bb_person_dialog_dispose (GObject *object)
{
  BbPersonDialog *self = BB_PERSON_DIALOG (object);

  g_clear_object (&self->session);
  gtk_widget_dispose_template (GTK_WIDGET (self), BB_TYPE_PERSON_DIALOG);

  G_OBJECT_CLASS (bb_person_dialog_parent_class)->dispose (object);
}

static void
bb_person_dialog_class_init (BbPersonDialogClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = bb_person_dialog_dispose;
  g_type_ensure (BB_TYPE_EDITOR);
  gtk_widget_class_set_template_from_resource (widget_class, "/io/blankbook/Blankbook/bb-person-dialog.ui");
  gtk_widget_class_bind_template_child (widget_class, BbPersonDialog, editor);
  gtk_widget_class_bind_template_callback (widget_class, done_cb);
  gtk_widget_class_bind_template_callback (widget_class, map_cb);
}

static void
bb_person_dialog_init (BbPersonDialog *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

/**
 * bb_person_dialog_new:
 * @parent: the window that asks
 * @session: the session
 *
 * Returns: (transfer none): a dialog, not yet presented, with what was half typed in it the last time
 */
GtkWidget *
bb_person_dialog_new (GtkWindow *parent,
                      BbSession *session)
{
  BbPersonDialog *self = g_object_new (BB_TYPE_PERSON_DIALOG, "transient-for", parent, NULL);

  self->session = g_object_ref (session);
  bb_editor_set_session (self->editor, session, KEPT_KEY);
  if (!bb_editor_resume (self->editor))
    bb_editor_open (self->editor, &bb_person_table, bb_person_new (), NULL);

  return GTK_WIDGET (self);
}
