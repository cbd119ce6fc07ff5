/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <adwaita.h>

#include "bb-session.h"

G_BEGIN_DECLS

/**
 * BbWeighStrip:
 *
 * A weigh-in: the garment's mass before and after spraying, and whether it got too little, enough or too much,
 * in a word, a sign and the place on a scale.
 */
#define BB_TYPE_WEIGH_STRIP (bb_weigh_strip_get_type ())
G_DECLARE_FINAL_TYPE (BbWeighStrip, bb_weigh_strip, BB, WEIGH_STRIP, AdwBin)

void bb_weigh_strip_set_session (BbWeighStrip *self,
                                 BbSession    *session);
void bb_weigh_strip_set_target  (BbWeighStrip *self,
                                 double        target_g_per_m2,
                                 double        box_area_m2);

G_END_DECLS
