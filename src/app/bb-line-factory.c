/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-line-factory"

#include "bb-line-factory.h"

#include "bb-item.h"

/* A function pointer is no data pointer: it travels in a struct. */
typedef struct {
  BbSession *session;
  BbLineFill fill;
} Filling;

static void
filling_free (gpointer  data,
              GClosure *closure)
{
  Filling *self = data;

  (void) closure;

  g_object_unref (self->session);
  g_free (self);
}

static void
setup_cb (GtkSignalListItemFactory *factory,
          GtkListItem              *list_item,
          gpointer                  data)
{
  (void) factory;
  (void) data;

  gtk_list_item_set_child (list_item, bb_row_new ());
}

static void
bind_cb (GtkSignalListItemFactory *factory,
         GtkListItem              *list_item,
         Filling                  *filling)
{
  BbRow *row = BB_ROW (gtk_list_item_get_child (list_item));
  BbItem *item = gtk_list_item_get_item (list_item);
  const gboolean is_there = bb_item_get_id (item) != 0;

  (void) factory;

  gtk_widget_set_visible (GTK_WIDGET (row), is_there);
  if (is_there)
    filling->fill (row, filling->session, bb_item_get_record (item));
}

/**
 * bb_line_factory_new:
 * @session: the session
 * @fill: shows a line in a row
 *
 * Returns: (transfer full): makes the rows of a #BbLineList
 */
GtkListItemFactory *
bb_line_factory_new (BbSession  *session,
                     BbLineFill  fill)
{
  GtkListItemFactory *factory = gtk_signal_list_item_factory_new ();
  Filling *filling = g_new0 (Filling, 1);

  filling->session = g_object_ref (session);
  filling->fill = fill;
  g_signal_connect (factory, "setup", G_CALLBACK (setup_cb), NULL);
  g_signal_connect_data (factory, "bind", G_CALLBACK (bind_cb), filling, filling_free, 0);

  return factory;
}
