/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-sign-dialog"

#include "bb-sign-dialog.h"

#include <glib/gi18n-lib.h>

#include "bb-session-proof.h"
#include "bb-show.h"

struct _BbSignDialog
{
  AdwWindow parent_instance;

  /* template */
  GtkLabel *title_label;
  GtkLabel *rule_label;
  GtkLabel *person_label;
  GtkLabel *reason_label;
  GtkEntry *reason_entry;
  GtkLabel *fault_label;
  GtkButton *sign_button;

  /* owned */
  BbSession *session;

  gint64 revision;
  gboolean overrule;
  gboolean writing;
};

G_DEFINE_FINAL_TYPE (BbSignDialog, bb_sign_dialog, ADW_TYPE_WINDOW)

static char *
dup_reason (BbSignDialog *self)
{
  return g_strstrip (g_strdup (gtk_editable_get_text (GTK_EDITABLE (self->reason_entry))));
}

static void
update (BbSignDialog *self)
{
  g_autofree char *reason = dup_reason (self);

  gtk_widget_action_set_enabled (GTK_WIDGET (self), "dialog.sign",
                                 !self->writing && (!self->overrule || *reason != '\0'));
}

static void
reason_changed_cb (BbSignDialog *self)
{
  gtk_widget_set_visible (GTK_WIDGET (self->fault_label), FALSE);
  update (self);
}

static void
signed_cb (GObject      *source,
           GAsyncResult *result,
           gpointer      data)
{
  g_autoptr (BbSignDialog) self = data;
  g_autoptr (GError) error = NULL;

  self->writing = FALSE;
  if (bb_session_write_finish (BB_SESSION (source), result, &error))
    {
      gtk_window_close (GTK_WINDOW (self));
      return;
    }
  /* Who closed the dialog meanwhile reads it in the window. */
  if (!gtk_widget_get_visible (GTK_WIDGET (self)))
    {
      bb_session_report (BB_SESSION (source), error);
      return;
    }
  gtk_label_set_label (self->fault_label, error->message);
  gtk_widget_set_visible (GTK_WIDGET (self->fault_label), TRUE);
  update (self);
}

static void
sign_action (GtkWidget  *widget,
             const char *name,
             GVariant   *parameter)
{
  BbSignDialog *self = BB_SIGN_DIALOG (widget);
  g_autofree char *reason = dup_reason (self);

  (void) name;
  (void) parameter;

  self->writing = TRUE;
  update (self);
  bb_session_sign_async (self->session, self->revision, self->overrule, *reason != '\0' ? reason : NULL, signed_cb,
                         g_object_ref (self));
}

static void
bb_sign_dialog_dispose (GObject *object)
{
  BbSignDialog *self = BB_SIGN_DIALOG (object);

  g_clear_object (&self->session);
  gtk_widget_dispose_template (GTK_WIDGET (self), BB_TYPE_SIGN_DIALOG);

  G_OBJECT_CLASS (bb_sign_dialog_parent_class)->dispose (object);
}

static void
bb_sign_dialog_class_init (BbSignDialogClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = bb_sign_dialog_dispose;
  gtk_widget_class_set_template_from_resource (widget_class, "/io/blankbook/Blankbook/bb-sign-dialog.ui");
  gtk_widget_class_bind_template_child (widget_class, BbSignDialog, title_label);
  gtk_widget_class_bind_template_child (widget_class, BbSignDialog, rule_label);
  gtk_widget_class_bind_template_child (widget_class, BbSignDialog, person_label);
  gtk_widget_class_bind_template_child (widget_class, BbSignDialog, reason_label);
  gtk_widget_class_bind_template_child (widget_class, BbSignDialog, reason_entry);
  gtk_widget_class_bind_template_child (widget_class, BbSignDialog, fault_label);
  gtk_widget_class_bind_template_child (widget_class, BbSignDialog, sign_button);
  gtk_widget_class_bind_template_callback (widget_class, reason_changed_cb);
  gtk_widget_class_install_action (widget_class, "dialog.sign", NULL, sign_action);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_Escape, 0, "window.close", NULL);
}

static void
bb_sign_dialog_init (BbSignDialog *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  gtk_window_set_default_widget (GTK_WINDOW (self), GTK_WIDGET (self->sign_button));
}

/**
 * bb_sign_dialog_new:
 * @parent: the window that asks
 * @session: the session, with a person at the bench
 * @revision: the revision, on trial
 * @rule: whether the shop's rule is met, and what is missing
 * @overrule: whether to sign although it is not met
 *
 * Returns: (transfer none): a dialog, not yet presented
 */
GtkWidget *
bb_sign_dialog_new (GtkWindow        *parent,
                    BbSession        *session,
                    const BbRevision *revision,
                    const char       *rule,
                    gboolean          overrule)
{
  BbSignDialog *self = g_object_new (BB_TYPE_SIGN_DIALOG, "transient-for", parent, NULL);
  /* Translators: the code of a revision. */
  g_autofree char *title = g_strdup_printf (overrule ? _("Overrule the Shop's Rule for %s") : _("Sign %s as Proven"),
                                            revision->code);
  g_autofree char *name = bb_show_name (session, &bb_person_table, bb_session_get_person (session));
  /* Translators: a person's name. */
  g_autofree char *person = g_strdup_printf (_("In the name of %s."), name);

  self->session = g_object_ref (session);
  self->revision = revision->id;
  self->overrule = overrule;
  gtk_window_set_title (GTK_WINDOW (self), title);
  gtk_label_set_label (self->title_label, title);
  gtk_label_set_label (self->rule_label, rule);
  gtk_label_set_label (self->person_label, person);
  gtk_label_set_label (self->reason_label, overrule ? _("Why it counts as proven all the same (required)")
                                                    : _("What else speaks for it (may be left empty)"));
  update (self);

  return GTK_WIDGET (self);
}
