/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-notice-bar"

#include "bb-notice-bar.h"

#include <glib/gi18n-lib.h>

#include "bb-children.h"
#include "bb-notice-words.h"
#include "bb-session-proof.h"

struct _BbNoticeBar
{
  AdwBin parent_instance;

  /* template */
  GtkRevealer *revealer;
  GtkBox *box;

  /* owned */
  BbSession *session;
};

G_DEFINE_FINAL_TYPE (BbNoticeBar, bb_notice_bar, ADW_TYPE_BIN)

static void
open_action (GtkWidget  *widget,
             const char *name,
             GVariant   *parameter)
{
  BbNoticeBar *self = BB_NOTICE_BAR (widget);
  g_autoptr (GError) error = NULL;
  g_autoptr (BbRevision) revision = bb_book_load (bb_session_get_book (self->session), &bb_revision_table,
                                                  g_variant_get_int64 (parameter), &error);

  (void) name;

  if (revision != NULL)
    bb_session_show (self->session, "recipes", revision->recipe);
  else
    bb_session_report (self->session, error);
}

static void
see_action (GtkWidget  *widget,
            const char *name,
            GVariant   *parameter)
{
  (void) name;

  bb_session_see_notice (BB_NOTICE_BAR (widget)->session, g_variant_get_int64 (parameter));
}

static GtkWidget *
make_button (const char *label,
             const char *action,
             gint64      target)
{
  GtkWidget *button = gtk_button_new_with_label (label);

  gtk_widget_set_valign (button, GTK_ALIGN_CENTER);
  gtk_actionable_set_action_name (GTK_ACTIONABLE (button), action);
  gtk_actionable_set_action_target (GTK_ACTIONABLE (button), "x", target);

  return button;
}

static GtkBox *
add_row (BbNoticeBar *self,
         const char  *text)
{
  GtkWidget *row = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 8);
  GtkWidget *icon = gtk_image_new_from_icon_name ("dialog-warning-symbolic");
  GtkWidget *label = gtk_label_new (text);

  gtk_widget_add_css_class (row, "notice");
  gtk_widget_add_css_class (icon, "warning-sign");
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_xalign (GTK_LABEL (label), 0.0f);
  gtk_widget_set_hexpand (label, TRUE);
  gtk_box_append (GTK_BOX (row), icon);
  gtk_box_append (GTK_BOX (row), label);
  gtk_box_append (self->box, row);

  return GTK_BOX (row);
}

static void
add_notice (BbNoticeBar    *self,
            const BbNotice *notice,
            const char     *text)
{
  GtkBox *row = add_row (self, text);

  gtk_box_append (row, make_button (_("Open Recipe"), "notices.open", notice->revision));
  if (bb_book_can_write (bb_session_get_book (self->session)))
    gtk_box_append (row, make_button (_("Take Note"), "notices.see", notice->id));
}

static void
refresh (BbNoticeBar *self)
{
  BbBook *book = bb_session_get_book (self->session);
  g_autoptr (GError) error = NULL;
  g_autoptr (GPtrArray) notices = bb_book_load_notices (book, FALSE, &error);

  bb_children_empty_box (self->box);
  if (!bb_book_can_write (book))
    add_row (self, _("This book can only be read where it is: nothing that you enter is saved. Copy it to a folder "
                     "that you may write in, and open the copy."));
  for (guint i = 0; notices != NULL && error == NULL && i < notices->len; i++)
    {
      g_autofree char *text = bb_words_of_notice (book, notices->pdata[i], &error);

      if (text != NULL)
        add_notice (self, notices->pdata[i], text);
    }
  if (error != NULL)
    bb_session_report (self->session, error);
  gtk_revealer_set_reveal_child (self->revealer, gtk_widget_get_first_child (GTK_WIDGET (self->box)) != NULL);
}

static void
bb_notice_bar_dispose (GObject *object)
{
  adw_bin_set_child (ADW_BIN (object), NULL);
  g_clear_object (&BB_NOTICE_BAR (object)->session);

  G_OBJECT_CLASS (bb_notice_bar_parent_class)->dispose (object);
}

static void
bb_notice_bar_class_init (BbNoticeBarClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = bb_notice_bar_dispose;
  gtk_widget_class_set_template_from_resource (widget_class, "/io/blankbook/Blankbook/bb-notice-bar.ui");
  gtk_widget_class_bind_template_child (widget_class, BbNoticeBar, revealer);
  gtk_widget_class_bind_template_child (widget_class, BbNoticeBar, box);
  gtk_widget_class_install_action (widget_class, "notices.open", "x", open_action);
  gtk_widget_class_install_action (widget_class, "notices.see", "x", see_action);
}

static void
bb_notice_bar_init (BbNoticeBar *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

/**
 * bb_notice_bar_set_session:
 * @self: a bar
 * @session: the session whose book has the news; to be called once
 */
void
bb_notice_bar_set_session (BbNoticeBar *self,
                           BbSession   *session)
{
  g_return_if_fail (BB_IS_NOTICE_BAR (self) && BB_IS_SESSION (session) && self->session == NULL);

  self->session = g_object_ref (session);
  g_signal_connect_object (session, "changed", G_CALLBACK (refresh), self, G_CONNECT_SWAPPED);
  refresh (self);
}
