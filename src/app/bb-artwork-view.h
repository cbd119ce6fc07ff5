/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <adwaita.h>

#include "bb-artwork-picture.h"
#include "bb-box.h"
#include "bb-placement.h"
#include "bb-recipe.h"
#include "bb-session.h"

G_BEGIN_DECLS

/**
 * BbArtworkView:
 *
 * One artwork on a garment: how it would look in each print mode, its boxes, its size and resolution, the mode that is
 * advised and why, what to look at before printing, and how much of it each ink covers.
 */
#define BB_TYPE_ARTWORK_VIEW (bb_artwork_view_get_type ())
G_DECLARE_FINAL_TYPE (BbArtworkView, bb_artwork_view, BB, ARTWORK_VIEW, AdwBin)

void              bb_artwork_view_set_session   (BbArtworkView          *self,
                                                 BbSession              *session);
void              bb_artwork_view_set_picture   (BbArtworkView          *self,
                                                 const BbArtworkPicture *picture);
void              bb_artwork_view_set_width     (BbArtworkView          *self,
                                                 double                  width_mm);
void              bb_artwork_view_set_box       (BbArtworkView          *self,
                                                 const BbBoxOut         *box);
void              bb_artwork_view_set_recipe    (BbArtworkView          *self,
                                                 const BbRecipe         *recipe,
                                                 const BbColourway      *colourway,
                                                 int                     mode);
const BbCoverage *bb_artwork_view_get_coverage  (BbArtworkView          *self);
void              bb_artwork_view_pick_garment  (BbArtworkView          *self,
                                                 const char             *srgb,
                                                 const char             *name);
gboolean          bb_artwork_view_get_garment   (BbArtworkView          *self,
                                                 const char            **srgb,
                                                 const char            **name);

G_END_DECLS
