/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <adwaita.h>

#include "bb-session.h"

G_BEGIN_DECLS

/**
 * BbRecipeFilter:
 *
 * Narrows a list to what belongs to one recipe, and lets go of it again.
 */
#define BB_TYPE_RECIPE_FILTER (bb_recipe_filter_get_type ())
G_DECLARE_FINAL_TYPE (BbRecipeFilter, bb_recipe_filter, BB, RECIPE_FILTER, AdwBin)

void   bb_recipe_filter_set_session (BbRecipeFilter *self,
                                     BbSession      *session);
gint64 bb_recipe_filter_get_recipe  (BbRecipeFilter *self);
void   bb_recipe_filter_clear       (BbRecipeFilter *self);

G_END_DECLS
