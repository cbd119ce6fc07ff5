/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <adwaita.h>

#include "bb-recipe.h"
#include "bb-session.h"

G_BEGIN_DECLS

/**
 * BbGarmentPicker:
 *
 * The colour of the garment in hand: the recipe's own, or one that the person picks from the blank's colours, from
 * plain ones, or freely. What a person picked holds as long as the recipe is the same.
 */
#define BB_TYPE_GARMENT_PICKER (bb_garment_picker_get_type ())
G_DECLARE_FINAL_TYPE (BbGarmentPicker, bb_garment_picker, BB, GARMENT_PICKER, AdwBin)

void        bb_garment_picker_set_session (BbGarmentPicker   *self,
                                           BbSession         *session);
void        bb_garment_picker_set_recipe  (BbGarmentPicker   *self,
                                           const BbRecipe    *recipe,
                                           const BbColourway *colourway);
void        bb_garment_picker_pick        (BbGarmentPicker   *self,
                                           const char        *srgb,
                                           const char        *name);
const char *bb_garment_picker_get_picked  (BbGarmentPicker   *self);
const char *bb_garment_picker_get_srgb    (BbGarmentPicker   *self);
const char *bb_garment_picker_get_name    (BbGarmentPicker   *self);

G_END_DECLS
