/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-recipe-band"

#include "bb-recipe-band.h"

/* What identifies the garment, below the recipe's name. */
static char *
describe_garment (BbSession         *session,
                  const BbRecipe    *recipe,
                  const BbColourway *colourway)
{
  g_autoptr (BbBlank) blank = NULL;
  g_autofree char *fibres = NULL;
  g_autofree char *mass = NULL;
  const char *colour = colourway != NULL ? colourway->name : bb_choices_get_title (&bb_shade_choices, recipe->shade);

  if (recipe->blank != 0)
    blank = bb_book_load (bb_session_get_book (session), &bb_blank_table, recipe->blank, NULL);
  if (blank == NULL)
    return recipe->family != NULL ? g_strjoin (" · ", recipe->code, recipe->family, colour, NULL)
                                  : g_strjoin (" · ", recipe->code, colour, NULL);

  fibres = bb_composition_dup_text (blank->composition);
  mass = bb_quantity_format_with_unit (BB_QUANTITY_MASS_PER_AREA, blank->mass_g_per_m2,
                                       bb_session_get_units (session));

  return g_strjoin (" · ", recipe->code, blank->name, colour, fibres, mass, NULL);
}

/**
 * bb_recipe_band_show:
 * @band: the head of a page
 * @session: the session
 * @recipe: a recipe
 *
 * Shows a recipe's name, and which garment it is for, in the garment's colour.
 */
void
bb_recipe_band_show (BbGarmentBand  *band,
                     BbSession      *session,
                     const BbRecipe *recipe)
{
  g_autoptr (BbColourway) colourway = NULL;
  g_autofree char *garment = NULL;

  g_return_if_fail (BB_IS_GARMENT_BAND (band) && BB_IS_SESSION (session) && recipe != NULL);

  if (recipe->colourway != 0)
    colourway = bb_book_load (bb_session_get_book (session), &bb_colourway_table, recipe->colourway, NULL);
  garment = describe_garment (session, recipe, colourway);
  bb_garment_band_set_title (band, recipe->name, garment);
  bb_garment_band_set_colour (band, colourway != NULL ? colourway->srgb : NULL, (BbShade) recipe->shade);
}
