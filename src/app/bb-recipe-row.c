/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-recipe-row"

#include "bb-recipe-row.h"

#include <glib/gi18n-lib.h>

#include "bb-book.h"
#include "bb-item.h"
#include "bb-row.h"
#include "bb-state-badge.h"

static void
setup_cb (GtkSignalListItemFactory *factory,
          GtkListItem              *list_item,
          gpointer                  data)
{
  GtkWidget *row = bb_row_new ();
  GtkWidget *badge = bb_state_badge_new ();

  (void) factory;
  (void) data;

  bb_row_set_badge (BB_ROW (row), badge);
  g_object_set_data (G_OBJECT (row), "badge", badge);
  gtk_list_item_set_child (list_item, row);
}

static char *
describe (const BbRecipeLine *line)
{
  const gboolean has_colour = line->colourway != NULL && *line->colourway != '\0';

  return g_strjoin (" · ", line->blank != NULL ? line->blank : "",
                    has_colour ? line->colourway : bb_choices_get_title (&bb_shade_choices, line->shade), NULL);
}

static void
bind_cb (GtkSignalListItemFactory *factory,
         GtkListItem              *list_item,
         gpointer                  data)
{
  BbRow *row = BB_ROW (gtk_list_item_get_child (list_item));
  GtkWidget *badge = g_object_get_data (G_OBJECT (row), "badge");
  const BbRecipeLine *line = bb_item_get_record (gtk_list_item_get_item (list_item));
  g_autofree char *description = NULL;

  (void) factory;
  (void) data;

  gtk_widget_set_visible (badge, line->state >= 0);
  if (line->id == BB_INTEGER_NONE)
    {
      bb_row_set (row, "", "", "");
      return;
    }

  description = describe (line);
  bb_row_set (row, line->name, line->code, description);
  bb_row_set_garment (row, line->srgb, (BbShade) line->shade);
  if (line->state >= 0)
    bb_state_badge_set_state (BB_STATE_BADGE (badge), (BbState) line->state);
}

/**
 * bb_recipe_row_factory_new:
 *
 * Returns: (transfer full): makes the lines of a list of recipes: colour, name, garment, state
 */
GtkListItemFactory *
bb_recipe_row_factory_new (void)
{
  GtkListItemFactory *factory = gtk_signal_list_item_factory_new ();

  g_signal_connect (factory, "setup", G_CALLBACK (setup_cb), NULL);
  g_signal_connect (factory, "bind", G_CALLBACK (bind_cb), NULL);

  return factory;
}
