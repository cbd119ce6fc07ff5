/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bb-calculator.h"
#include "bb-mixture.h"

G_BEGIN_DECLS

/*
 * The laydown that leaves the same solids on the garment once the dilution is changed. Masses
 * per area in g/m².
 *
 *     new laydown = laydown · share_from / share_to
 *
 * where a share is that of concentrate in the liquid's mass, as mix computes it: the same
 * solids come from the same concentrate, whatever its solids are. solids_g_per_m2 = laydown ·
 * share_from · solids, null where the concentrate's solids are not given. water_g_per_m2_change
 * is the new laydown less the old: since solids and concentrate stay, all of the difference is
 * water to be driven off (positive: more to dry). Both dilutions are of one concentrate and one
 * water.
 * Assumes ideal mixing, and that the solids stay on the garment when the water goes.
 * Refused: each key out of its limits.
 * Source: mass balance; density of water by Tanaka et al. 2001 (bb-water.h).
 */

#define BB_SOLIDS_MATCH_IN_FIELDS(F, T) \
  F (T, NUMBER, laydown_g_per_m2, N_("Laydown now"), \
     .help = N_("Wet mass per area at the present dilution."), \
     .quantity = BB_QUANTITY_MASS_PER_AREA, .limits = BB_LIMITS_LAYDOWN, .required = TRUE) \
  F (T, NUMBER, from_parts_concentrate, N_("Dilution now"), \
     .help = N_("Parts of concentrate to parts of water."), \
     .limits = BB_LIMITS_PARTS_CONCENTRATE, .parts_with = "from_parts_water", .required = TRUE) \
  F (T, NUMBER, from_parts_water, N_("Parts of water now"), \
     .help = N_("Parts of water; 0 for a ready-to-use liquid."), \
     .limits = BB_LIMITS_PARTS_WATER, .required = TRUE) \
  F (T, NUMBER, to_parts_concentrate, N_("New dilution"), \
     .help = N_("Parts of concentrate to parts of water."), \
     .limits = BB_LIMITS_PARTS_CONCENTRATE, .parts_with = "to_parts_water", .required = TRUE) \
  F (T, NUMBER, to_parts_water, N_("New parts of water"), \
     .help = N_("Parts of water; 0 for a ready-to-use liquid."), \
     .limits = BB_LIMITS_PARTS_WATER, .required = TRUE) \
  BB_DILUTION_LIQUID_FIELDS (F, T)

BB_DECLARE_TABLE (BbSolidsMatchIn, bb_solids_match_in, BB_SOLIDS_MATCH_IN_FIELDS);

#define BB_SOLIDS_MATCH_OUT_FIELDS(F, T) \
  F (T, NUMBER, laydown_g_per_m2, N_("New laydown"), \
     .help = N_("Wet mass per area at the new dilution."), \
     .quantity = BB_QUANTITY_MASS_PER_AREA) \
  F (T, NUMBER, solids_g_per_m2, N_("Solids"), \
     .help = N_("What stays on the garment once dry, at both dilutions."), \
     .quantity = BB_QUANTITY_MASS_PER_AREA) \
  F (T, NUMBER, water_g_per_m2_change, N_("More water"), \
     .help = N_("How much more water has to be dried off; negative for less."), \
     .quantity = BB_QUANTITY_MASS_PER_AREA)

BB_DECLARE_TABLE (BbSolidsMatchOut, bb_solids_match_out, BB_SOLIDS_MATCH_OUT_FIELDS);

BB_DECLARE_CALCULATOR (SolidsMatch, solids_match);

G_END_DECLS
