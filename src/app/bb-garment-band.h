/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <adwaita.h>

#include "bb-recipe.h"

G_BEGIN_DECLS

/**
 * BbGarmentBand:
 *
 * The head of a page about a garment: its name in large, what else identifies it below, on the garment's own colour.
 * The text is white or black, whichever stands out more. A garment of several colours has a patch instead.
 */
#define BB_TYPE_GARMENT_BAND (bb_garment_band_get_type ())
G_DECLARE_FINAL_TYPE (BbGarmentBand, bb_garment_band, BB, GARMENT_BAND, AdwBin)

void bb_garment_band_set_title  (BbGarmentBand *self,
                                 const char    *title,
                                 const char    *subtitle);
void bb_garment_band_set_colour (BbGarmentBand *self,
                                 const char    *srgb,
                                 BbShade        shade);

G_END_DECLS
