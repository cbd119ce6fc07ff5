/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-children"

#include "bb-children.h"

/**
 * bb_children_empty_box:
 * @box: a box
 *
 * Removes all that is in a box.
 */
void
bb_children_empty_box (GtkBox *box)
{
  GtkWidget *child = NULL;

  while ((child = gtk_widget_get_first_child (GTK_WIDGET (box))) != NULL)
    gtk_box_remove (box, child);
}

/**
 * bb_children_empty_grid:
 * @grid: a grid
 *
 * Removes all that is in a grid.
 */
void
bb_children_empty_grid (GtkGrid *grid)
{
  GtkWidget *child = NULL;

  while ((child = gtk_widget_get_first_child (GTK_WIDGET (grid))) != NULL)
    gtk_grid_remove (grid, child);
}

/**
 * bb_children_add_text:
 * @box: a box
 * @text: whole sentences
 * @css_class: how they look
 *
 * Adds text that takes as many lines as it needs.
 */
void
bb_children_add_text (GtkBox     *box,
                      const char *text,
                      const char *css_class)
{
  GtkWidget *label = gtk_label_new (text);

  gtk_label_set_xalign (GTK_LABEL (label), 0.0f);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_wrap_mode (GTK_LABEL (label), PANGO_WRAP_WORD_CHAR);
  gtk_widget_add_css_class (label, css_class);
  gtk_box_append (box, label);
}
