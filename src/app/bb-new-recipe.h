/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bb-session.h"

G_BEGIN_DECLS

/**
 * BbNewRecipe:
 *
 * A recipe that is being written for a garment nobody has printed, with the settings that were proposed for it. They
 * become its first revision once the recipe itself is saved, and outlive the window until then.
 */
#define BB_TYPE_NEW_RECIPE (bb_new_recipe_get_type ())
G_DECLARE_FINAL_TYPE (BbNewRecipe, bb_new_recipe, BB, NEW_RECIPE, GObject)

BbNewRecipe *bb_new_recipe_new       (BbSession         *session);
BbRecipe    *bb_new_recipe_start     (BbNewRecipe       *self,
                                      const BbRevision  *settings,
                                      const BbBlank     *blank,
                                      const BbColourway *colourway,
                                      int                shade);
void         bb_new_recipe_resume    (BbNewRecipe       *self);
void         bb_new_recipe_forget    (BbNewRecipe       *self);
BbRevision  *bb_new_recipe_dup_first (BbNewRecipe       *self,
                                      gint64             recipe);

G_END_DECLS
