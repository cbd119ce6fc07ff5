/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bb-garment-band.h"
#include "bb-session.h"

G_BEGIN_DECLS

void bb_recipe_band_show (BbGarmentBand  *band,
                          BbSession      *session,
                          const BbRecipe *recipe);

G_END_DECLS
