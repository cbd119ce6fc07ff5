/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-recipe-line"

#include "bb-recipe-line.h"

#include <glib/gi18n-lib.h>

#include "bb-state-badge.h"

static char *
describe (const BbRecipeLine *line)
{
  const gboolean has_colour = line->colourway != NULL && *line->colourway != '\0';

  return g_strjoin (" · ", line->blank != NULL ? line->blank : "",
                    has_colour ? line->colourway : bb_choices_get_title (&bb_shade_choices, line->shade), NULL);
}

static GtkWidget *
ensure_badge (BbRow *row)
{
  if (bb_row_get_badge (row) == NULL)
    bb_row_set_badge (row, bb_state_badge_new ());

  return bb_row_get_badge (row);
}

/**
 * bb_recipe_line_fill:
 * @row: a row
 * @session: the session
 * @record: (type BbRecipeLine): what to show in it
 *
 * Shows a recipe in a list: colour, name, garment, state. A #BbLineFill.
 */
void
bb_recipe_line_fill (BbRow         *row,
                     BbSession     *session,
                     gconstpointer  record)
{
  const BbRecipeLine *recipe = record;
  GtkWidget *badge = ensure_badge (row);
  g_autofree char *description = describe (recipe);

  (void) session;

  bb_row_set (row, recipe->name, recipe->code, description);
  bb_row_set_garment (row, recipe->srgb, (BbShade) recipe->shade);
  gtk_widget_set_visible (badge, recipe->state >= 0);
  if (recipe->state >= 0)
    bb_state_badge_set_state (BB_STATE_BADGE (badge), (BbState) recipe->state);
}
