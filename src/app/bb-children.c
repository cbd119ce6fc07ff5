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
