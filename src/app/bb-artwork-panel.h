/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <adwaita.h>

#include "bb-box.h"
#include "bb-placement.h"
#include "bb-recipe.h"
#include "bb-session.h"

G_BEGIN_DECLS

/**
 * BbArtworkPanel:
 *
 * Takes an artwork, dropped or chosen, and shows what it says about its print. Its file is read once, off the main
 * loop; a reading can be stopped, what it finds is dropped when another was asked for meanwhile, and what is wrong with
 * a file is told in one line while the artwork before stays.
 *
 * The size of a print belongs to the form beside the panel. bb_artwork_panel_follow() keeps the two in step: width and
 * height stand in the artwork's own ratio, whichever of them is typed, and ::sized fills them in for a new artwork.
 */
#define BB_TYPE_ARTWORK_PANEL (bb_artwork_panel_get_type ())
G_DECLARE_FINAL_TYPE (BbArtworkPanel, bb_artwork_panel, BB, ARTWORK_PANEL, AdwBin)

/* What is kept of a panel: the file, and the garment's colour that a person picked, with its name. */
#define BB_ARTWORK_PANEL_STATE "(ayss)"

void              bb_artwork_panel_set_session  (BbArtworkPanel    *self,
                                                 BbSession         *session);
void              bb_artwork_panel_set_recipe   (BbArtworkPanel    *self,
                                                 const BbRecipe    *recipe,
                                                 const BbColourway *colourway,
                                                 int                mode);
void              bb_artwork_panel_load         (BbArtworkPanel    *self,
                                                 const char        *path);
void              bb_artwork_panel_clear        (BbArtworkPanel    *self);
void              bb_artwork_panel_take_drops   (BbArtworkPanel    *self,
                                                 GtkWidget         *widget);
gboolean          bb_artwork_panel_follow       (BbArtworkPanel    *self,
                                                 double            *width_mm,
                                                 double            *height_mm);
void              bb_artwork_panel_set_box      (BbArtworkPanel    *self,
                                                 const BbBoxOut    *box);
const BbCoverage *bb_artwork_panel_get_coverage (BbArtworkPanel    *self);
const char       *bb_artwork_panel_get_path     (BbArtworkPanel    *self);
GVariant         *bb_artwork_panel_save_state   (BbArtworkPanel    *self);
void              bb_artwork_panel_load_state   (BbArtworkPanel    *self,
                                                 GVariant          *state);

G_END_DECLS
