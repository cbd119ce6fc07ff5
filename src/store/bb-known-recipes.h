/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bb-book.h"
#include "bb-recipe.h"

G_BEGIN_DECLS

/**
 * BbKnownRecipe:
 *
 * What the book knows of one recipe on a garment whose fabric it knows: where the revision stands that counts now, and
 * on how many specimens that rests.
 */
#define BB_KNOWN_RECIPE_FIELDS(F, T) \
  F (T, INTEGER, id, N_("Key"), .help = N_("The recipe's key in this book.")) \
  F (T, TEXT, code, N_("Code"), .help = N_("The recipe's code.")) \
  F (T, TEXT, name, N_("Name"), .help = N_("The recipe's name.")) \
  F (T, INTEGER, blank, N_("Blank"), .help = N_("Key of the garment.")) \
  F (T, INTEGER, colourway, N_("Colour"), .help = N_("Key of the one colour that it is for; none for several.")) \
  F (T, TEXT, colour, N_("Colour"), .help = N_("The colour's name; empty for several.")) \
  F (T, TEXT, srgb, N_("sRGB"), .help = N_("That colour.")) \
  F (T, CHOICE, shade, N_("Colours"), .help = N_("Which garment colours it is for."), .choices = &bb_shade_choices) \
  F (T, INTEGER, revision, N_("Revision"), .help = N_("Key of the revision that counts now.")) \
  F (T, TEXT, revision_code, N_("Revision"), .help = N_("Code of that revision.")) \
  F (T, CHOICE, state, N_("State"), .help = N_("Where that revision stands."), .choices = &bb_state_choices) \
  F (T, INTEGER, passed, N_("Passed"), .help = N_("How many specimens it was signed on; 0 where it was not signed."))

BB_DECLARE_TABLE (BbKnownRecipe, bb_known_recipe, BB_KNOWN_RECIPE_FIELDS);

GPtrArray *bb_book_load_known_recipes (BbBook  *self,
                                       guint    limit,
                                       GError **error);

G_END_DECLS
