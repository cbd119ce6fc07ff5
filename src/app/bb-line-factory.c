/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-line-factory"

#include "bb-line-factory.h"

/* What a row is taken for until the first one has been laid out: the height of most. */
#define ROW_HEIGHT 64

static void
filling_free (gpointer  data,
              GClosure *closure)
{
  BbFilling *self = data;

  (void) closure;

  g_object_unref (self->lines);
  g_free (self);
}

static BbPlace *
get_place (GtkListItem *list_item)
{
  return BB_PLACE (gtk_list_item_get_child (list_item));
}

static void
bind_cb (GtkSignalListItemFactory *factory,
         GtkListItem              *list_item,
         gpointer                  data)
{
  (void) factory;
  (void) data;

  bb_place_show (get_place (list_item), gtk_list_item_get_position (list_item));
}

static void
unbind_cb (GtkSignalListItemFactory *factory,
           GtkListItem              *list_item,
           gpointer                  data)
{
  (void) factory;
  (void) data;

  bb_place_clear (get_place (list_item));
}

static void
setup_cb (GtkSignalListItemFactory *factory,
          GtkListItem              *list_item,
          BbFilling                *filling)
{
  GtkWidget *place = bb_place_new (filling);

  (void) factory;

  /* A widget stays with its place in the list, and is not bound again when that holds something else. */
  g_signal_connect_object (filling->lines, "reloaded", G_CALLBACK (bb_place_reload), place, G_CONNECT_SWAPPED);
  gtk_list_item_set_child (list_item, place);
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
  BbFilling *filling = g_new0 (BbFilling, 1);

  filling->lines = g_object_ref (lines);
  filling->fill = fill;
  filling->row_height = ROW_HEIGHT;
  g_signal_connect (factory, "setup", G_CALLBACK (setup_cb), filling);
  g_signal_connect (factory, "bind", G_CALLBACK (bind_cb), NULL);
  g_signal_connect_data (factory, "unbind", G_CALLBACK (unbind_cb), filling, filling_free, 0);

  return factory;
}
