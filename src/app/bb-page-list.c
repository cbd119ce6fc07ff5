/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-page-list"

#include "bb-page-list.h"

#include <glib/gi18n-lib.h>

#include "bb-blanks-page.h"
#include "bb-compat.h"
#include "bb-equipment-page.h"
#include "bb-jobs-page.h"
#include "bb-mix-page.h"
#include "bb-plans-page.h"
#include "bb-recipes-page.h"
#include "bb-safety-page.h"
#include "bb-supplies-page.h"
#include "bb-wash-page.h"

static const BbPageInfo pages[] = {
  { "jobs", N_("Jobs"), "blankbook-jobs-symbolic", N_("Bench"), bb_jobs_page_get_type },
  { "mix", N_("Mix"), "blankbook-mix-symbolic", N_("Bench"), bb_mix_page_get_type },
  { "recipes", N_("Recipes"), "blankbook-recipes-symbolic", N_("Develop"), bb_recipes_page_get_type },
  { "wash", N_("Wash Log"), "blankbook-wash-symbolic", N_("Develop"), bb_wash_page_get_type },
  { "plans", N_("Wash Plans"), "blankbook-plans-symbolic", N_("Develop"), bb_plans_page_get_type },
  { "blanks", N_("Blanks"), "blankbook-blanks-symbolic", N_("Shop"), bb_blanks_page_get_type },
  { "supplies", N_("Supplies"), "blankbook-supplies-symbolic", N_("Shop"), bb_supplies_page_get_type },
  { "equipment", N_("Equipment"), "blankbook-equipment-symbolic", N_("Shop"), bb_equipment_page_get_type },
  { "safety", N_("Safety"), "blankbook-safety-symbolic", N_("Shop"), bb_safety_page_get_type },
};

static void
update_header_cb (GtkListBoxRow *row,
                  GtkListBoxRow *before,
                  gpointer       data)
{
  const char *group = bb_page_list_get_info (row)->group;
  GtkWidget *label = NULL;

  (void) data;

  if (before != NULL && g_str_equal (bb_page_list_get_info (before)->group, group))
    {
      gtk_list_box_row_set_header (row, NULL);
      return;
    }
  label = gtk_label_new (_(group));
  gtk_label_set_xalign (GTK_LABEL (label), 0.0f);
  gtk_widget_add_css_class (label, "group-title");
  gtk_list_box_row_set_header (row, label);
}

static GtkWidget *
make_row (const BbPageInfo *info)
{
  GtkWidget *row = gtk_list_box_row_new ();
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 10);
  GtkWidget *label = gtk_label_new (_(info->title));

  gtk_box_append (GTK_BOX (box), gtk_image_new_from_icon_name (info->icon_name));
  gtk_box_append (GTK_BOX (box), label);
  gtk_list_box_row_set_child (GTK_LIST_BOX_ROW (row), box);
  bb_compat_set_name (row, _(info->title));

  return row;
}

/**
 * bb_page_list_fill:
 * @list: an empty list
 *
 * Makes it the list of pages.
 */
void
bb_page_list_fill (GtkListBox *list)
{
  g_return_if_fail (GTK_IS_LIST_BOX (list));

  gtk_list_box_set_header_func (list, update_header_cb, NULL, NULL);
  for (guint i = 0; i < G_N_ELEMENTS (pages); i++)
    gtk_list_box_append (list, make_row (&pages[i]));
}

/**
 * bb_page_list_select:
 * @list: the list of pages
 * @name: a page's name in the session; nothing is chosen where there is none of that name
 */
void
bb_page_list_select (GtkListBox *list,
                     const char *name)
{
  g_return_if_fail (GTK_IS_LIST_BOX (list) && name != NULL);

  for (guint i = 0; i < G_N_ELEMENTS (pages); i++)
    if (g_str_equal (pages[i].name, name))
      gtk_list_box_select_row (list, gtk_list_box_get_row_at_index (list, (int) i));
}

/**
 * bb_page_list_get_info:
 * @row: a row of the list of pages
 *
 * Returns: (transfer none): its page
 */
const BbPageInfo *
bb_page_list_get_info (GtkListBoxRow *row)
{
  g_return_val_if_fail (GTK_IS_LIST_BOX_ROW (row), NULL);

  return &pages[gtk_list_box_row_get_index (row)];
}

/**
 * bb_page_list_add_keys:
 * @klass: a class of widgets
 * @action: an action that takes the name of a page
 *
 * Lets Alt and a digit run the action, with 1 for the first page.
 */
void
bb_page_list_add_keys (GtkWidgetClass *klass,
                       const char     *action)
{
  g_return_if_fail (action != NULL);

  for (guint i = 0; i < G_N_ELEMENTS (pages); i++)
    gtk_widget_class_add_binding_action (klass, GDK_KEY_1 + i, GDK_ALT_MASK, action, "s", pages[i].name);
}
