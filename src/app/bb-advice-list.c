/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-advice-list"

#include "bb-advice-list.h"

#include <glib/gi18n-lib.h>

#include "bb-compat.h"
#include "bb-sign.h"

/* How wide a sentence would like to be; it takes the width that there is. */
#define COLUMNS 34

struct _BbAdviceList
{
  AdwBin parent_instance;

  GtkBox *box;
};

G_DEFINE_FINAL_TYPE (BbAdviceList, bb_advice_list, ADW_TYPE_BIN)

static void
add (BbAdviceList *self,
     GtkWidget    *sign,
     const char   *sentence)
{
  GtkWidget *row = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 8);
  GtkWidget *label = gtk_label_new (sentence);

  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_max_width_chars (GTK_LABEL (label), COLUMNS);
  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_widget_set_hexpand (label, TRUE);
  gtk_widget_set_valign (sign, GTK_ALIGN_START);
  gtk_widget_set_margin_top (sign, 2);
  gtk_box_append (GTK_BOX (row), sign);
  gtk_box_append (GTK_BOX (row), label);
  gtk_box_append (self->box, row);
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
  self->box = GTK_BOX (gtk_box_new (GTK_ORIENTATION_VERTICAL, 6));
  adw_bin_set_child (ADW_BIN (self), GTK_WIDGET (self->box));
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

  while ((row = gtk_widget_get_first_child (GTK_WIDGET (self->box))) != NULL)
    gtk_box_remove (self->box, row);
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
  add (self, sign, sentence);
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
  add (self, sign, sentence);
}
