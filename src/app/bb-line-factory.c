/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-line-factory"

#include "bb-line-factory.h"

/* A function pointer is no data pointer: it travels in a struct. */
typedef struct {
  BbLineList *lines;
  BbLineFill fill;
} Filling;

static void
filling_free (gpointer  data,
              GClosure *closure)
{
  Filling *self = data;

  (void) closure;

  g_object_unref (self->lines);
  g_free (self);
}

static void
bind_cb (GtkSignalListItemFactory *factory,
         GtkListItem              *list_item,
         const Filling            *filling)
{
  BbRow *row = BB_ROW (gtk_list_item_get_child (list_item));
  gconstpointer record = bb_line_list_load (filling->lines, gtk_list_item_get_position (list_item));

  (void) factory;

  gtk_widget_set_visible (GTK_WIDGET (row), record != NULL);
  if (record != NULL)
    filling->fill (row, bb_line_list_get_session (filling->lines), record);
}

/* A row stays with its place in the list, and is not bound again when that holds something else. */
static void
reloaded_cb (GtkListItem *list_item)
{
  if (gtk_list_item_get_item (list_item) != NULL)
    bind_cb (NULL, list_item, g_object_get_data (G_OBJECT (list_item), "filling"));
}

static void
setup_cb (GtkSignalListItemFactory *factory,
          GtkListItem              *list_item,
          Filling                  *filling)
{
  (void) factory;

  g_object_set_data (G_OBJECT (list_item), "filling", filling);
  g_signal_connect_object (filling->lines, "reloaded", G_CALLBACK (reloaded_cb), list_item, G_CONNECT_SWAPPED);
  gtk_list_item_set_child (list_item, bb_row_new ());
}

/**
 * bb_line_factory_new:
 * @lines: the list
 * @fill: shows a line of it in a row
 *
 * Returns: (transfer full): makes the rows of @lines
 */
GtkListItemFactory *
bb_line_factory_new (BbLineList *lines,
                     BbLineFill  fill)
{
  GtkListItemFactory *factory = gtk_signal_list_item_factory_new ();
  Filling *filling = g_new0 (Filling, 1);

  filling->lines = g_object_ref (lines);
  filling->fill = fill;
  g_signal_connect (factory, "setup", G_CALLBACK (setup_cb), filling);
  g_signal_connect_data (factory, "bind", G_CALLBACK (bind_cb), filling, filling_free, 0);

  return factory;
}
