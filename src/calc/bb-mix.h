/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bb-calculator.h"
#include "bb-mixture.h"

G_BEGIN_DECLS

/*
 * How much concentrate and water make up a batch of a given mass. Masses in g, volumes in ml,
 * densities in g/ml, temperature in °C.
 *
 * Parts are shares of volume or of mass, as the basis says. The total is a mass in both cases;
 * mass is kept exactly. Volumes add (ideal mixing), which decides total_ml and density_g_per_ml
 * only. solids_fraction is the concentrate's times its share of the mass; null where the
 * concentrate's is not given. parts_water = 0 is a ready-to-use liquid: no water, and the
 * liquid's own density and solids.
 * Assumes pure water of the given temperature and a concentrate of the given density at its
 * own.
 * Refused: each key out of its limits; water outside 0–40 °C, where the density's formula ends.
 * Source: mass balance; density of water by Tanaka et al. 2001 (bb-water.h).
 */

#define BB_MIX_IN_FIELDS(F, T) \
  F (T, NUMBER, total_g, N_("To make up"), \
     .help = N_("Mass of diluted pretreat that is wanted."), .quantity = BB_QUANTITY_MASS, \
     .limits = BB_LIMITS_MIX_MASS, .required = TRUE) \
  BB_DILUTION_FIELDS (F, T)

BB_DECLARE_TABLE (BbMixIn, bb_mix_in, BB_MIX_IN_FIELDS);

#define BB_MIX_OUT_FIELDS(F, T) \
  F (T, NUMBER, concentrate_g, N_("Concentrate"), \
     .help = N_("Mass of concentrate to weigh in."), .quantity = BB_QUANTITY_MASS) \
  F (T, NUMBER, concentrate_ml, N_("Concentrate by volume"), .help = N_("The same by volume."), \
     .quantity = BB_QUANTITY_VOLUME) \
  F (T, NUMBER, water_g, N_("Water"), .help = N_("Mass of water to weigh in."), \
     .quantity = BB_QUANTITY_MASS) \
  F (T, NUMBER, water_ml, N_("Water by volume"), \
     .help = N_("The same by volume, at its temperature."), .quantity = BB_QUANTITY_VOLUME) \
  F (T, NUMBER, total_ml, N_("Total by volume"), \
     .help = N_("Both volumes together; real liquids may shrink a little."), \
     .quantity = BB_QUANTITY_VOLUME) \
  F (T, NUMBER, density_g_per_ml, N_("Density"), .help = N_("Density of the mixture."), \
     .quantity = BB_QUANTITY_DENSITY) \
  F (T, NUMBER, solids_fraction, N_("Solids"), \
     .help = N_("Share of the mixture's mass that stays once it is dry."), \
     .quantity = BB_QUANTITY_FRACTION) \
  F (T, NUMBER, concentrate_mass_fraction, N_("Concentrate's share"), \
     .help = N_("Share of the mixture's mass that is concentrate."), \
     .quantity = BB_QUANTITY_FRACTION)

BB_DECLARE_TABLE (BbMixOut, bb_mix_out, BB_MIX_OUT_FIELDS);

BB_DECLARE_CALCULATOR (Mix, mix);

G_END_DECLS
