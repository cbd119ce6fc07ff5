/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <adwaita.h>

#include "bb-session.h"

G_BEGIN_DECLS

/**
 * BbGarmentChooser:
 *
 * One of the shop's blanks, and one of its colours or any.
 */
#define BB_TYPE_GARMENT_CHOOSER (bb_garment_chooser_get_type ())
G_DECLARE_FINAL_TYPE (BbGarmentChooser, bb_garment_chooser, BB, GARMENT_CHOOSER, AdwBin)

void   bb_garment_chooser_set_session   (BbGarmentChooser *self,
                                         BbSession        *session);
void   bb_garment_chooser_choose        (BbGarmentChooser *self,
                                         gint64            blank,
                                         gint64            colourway);
gint64 bb_garment_chooser_get_blank     (BbGarmentChooser *self);
gint64 bb_garment_chooser_get_colourway (BbGarmentChooser *self);
void   bb_garment_chooser_focus         (BbGarmentChooser *self);

G_END_DECLS
