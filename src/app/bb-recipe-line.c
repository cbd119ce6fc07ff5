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

/* What failed is not hidden by a proof: whoever takes the recipe knows it before they open it. */
static char *
describe_failed (const BbRecipeLine *line)
{
  const gulong n = line->failed > 0 && line->state != BB_STATE_WITHDRAWN ? (gulong) line->failed : 0;

  return n > 0 ? g_strdup_printf (ngettext ("%lu failed", "%lu failed", n), n) : g_strdup ("");
}

/**
 * bb_recipe_line_fill:
 * @row: a row
 * @session: the session
 * @record: (type BbRecipeLine): what to show in it
 *
 * Shows a recipe in a list: colour, name, garment, state, and how many specimens failed. A #BbLineFill.
 */
void
bb_recipe_line_fill (BbRow         *row,
                     BbSession     *session,
                     gconstpointer  record)
{
  const BbRecipeLine *recipe = record;
  GtkWidget *badge = ensure_badge (row);
  g_autofree char *description = describe (recipe);
  g_autofree char *failed = describe_failed (recipe);

  (void) session;

  bb_row_set (row, recipe->name, recipe->code, description);
  bb_row_set_garment (row, recipe->srgb, (BbShade) recipe->shade);
  gtk_widget_set_visible (badge, recipe->state >= 0);
  if (recipe->state >= 0)
    bb_state_badge_set_state (BB_STATE_BADGE (badge), (BbState) recipe->state);
  bb_row_set_mark (row, BB_TONE_BAD, failed);
}
