/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-advice-list"

#include "bb-advice-list.h"

#include <glib/gi18n-lib.h>

#include "bb-compat.h"
#include "bb-sign.h"
#include "bb-text-box.h"

/* How wide a sentence would like to be; it takes the width that there is. */
#define COLUMNS 34

struct _BbAdviceList
{
  AdwBin parent_instance;

  GtkWidget *box;
};

G_DEFINE_FINAL_TYPE (BbAdviceList, bb_advice_list, ADW_TYPE_BIN)

static GtkWidget *
make_row (GtkWidget  *sign,
          const char *sentence)
{
  GtkWidget *row = g_object_new (BB_TYPE_TEXT_BOX, "spacing", 8, NULL);
  GtkWidget *label = gtk_label_new (sentence);

  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_max_width_chars (GTK_LABEL (label), COLUMNS);
  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_widget_set_hexpand (label, TRUE);
  gtk_widget_set_valign (sign, GTK_ALIGN_START);
  gtk_widget_set_margin_top (sign, 2);
  gtk_widget_set_parent (sign, row);
  gtk_widget_set_parent (label, row);

  return row;
}

static void
bb_advice_list_class_init (BbAdviceListClass *klass)
{
  gtk_widget_class_set_css_name (GTK_WIDGET_CLASS (klass), "advicelist");
  gtk_widget_class_set_accessible_role (GTK_WIDGET_CLASS (klass), GTK_ACCESSIBLE_ROLE_GROUP);
}

static void
bb_advice_list_init (BbAdviceList *self)
{
  self->box = g_object_new (BB_TYPE_TEXT_BOX, "orientation", GTK_ORIENTATION_VERTICAL, "spacing", 6, NULL);
  adw_bin_set_child (ADW_BIN (self), self->box);
}

/**
 * bb_advice_list_clear:
 * @self: a list
 */
void
bb_advice_list_clear (BbAdviceList *self)
{
  GtkWidget *row = NULL;

  g_return_if_fail (BB_IS_ADVICE_LIST (self));

  while ((row = gtk_widget_get_first_child (self->box)) != NULL)
    gtk_widget_unparent (row);
}

/**
 * bb_advice_list_add_reason:
 * @self: a list
 * @sentence: why something is advised, translated
 */
void
bb_advice_list_add_reason (BbAdviceList *self,
                           const char   *sentence)
{
  GtkWidget *sign = NULL;

  g_return_if_fail (BB_IS_ADVICE_LIST (self));

  sign = bb_sign_new ();
  bb_sign_set_shape (BB_SIGN (sign), BB_SIGN_TICK);
  gtk_widget_set_parent (make_row (sign, sentence), self->box);
}

/**
 * bb_advice_list_add_warning:
 * @self: a list
 * @sentence: what to look at before printing, translated
 */
void
bb_advice_list_add_warning (BbAdviceList *self,
                            const char   *sentence)
{
  GtkWidget *sign = NULL;

  g_return_if_fail (BB_IS_ADVICE_LIST (self));

  /* Translators: what a screen reader says before a warning. */
  sign = gtk_image_new_from_icon_name ("dialog-warning-symbolic");
  bb_compat_set_name (sign, _("Warning"));
  gtk_widget_add_css_class (sign, "warning-sign");
  gtk_widget_set_parent (make_row (sign, sentence), self->box);
}
