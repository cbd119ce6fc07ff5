/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bb-calculator.h"
#include "bb-laydown.h"

G_BEGIN_DECLS

/*
 * How many garments the concentrate that is left in a container still makes. Volume in ml,
 * masses in g.
 *
 *     used_g   = box_area_m2 · laydown_g_per_m2 / (1 − overspray_fraction)          as laydown
 *     share    = concentrate's share of the diluted liquid's mass                    as mix
 *     garments = ⌊available · density / (used_g · share)⌋
 *
 * The keys of mix are all taken. total_g, which a person need not know here, is the mass of
 * diluted pretreat that will be made up: where it is given, no more garments are counted than
 * it covers, and limited_by says which of the two ends first, by its mass and so also within
 * the same garment: "concentrate" (also where both end together), or "total". Water is taken
 * as enough. concentrate_solids_fraction has no effect on the number. Rounding down goes by
 * decimals (bb-rounding.h): what is exactly enough for ten makes ten.
 * Assumes ideal mixing, and no loss but overspray.
 * Refused: each key out of its limits; a container that would make more than 2⁵³ garments.
 * Source: mass balance; density of water by Tanaka et al. 2001 (bb-water.h).
 */

#define BB_STRETCH_LIMIT_CHOICES(C) \
  C (BB_STRETCH_BY_CONCENTRATE, "concentrate", N_("The concentrate in the container")) \
  C (BB_STRETCH_BY_TOTAL, "total", N_("The amount to be made up"))

BB_DECLARE_CHOICES (BbStretchLimit, bb_stretch_limit, BB_STRETCH_LIMIT_CHOICES);

#define BB_STRETCH_IN_FIELDS(F, T) \
  F (T, NUMBER, concentrate_ml_available, N_("Concentrate left"), \
     .help = N_("Volume of concentrate that is left in the container."), \
     .quantity = BB_QUANTITY_VOLUME, .limits = BB_BETWEEN (0, 1e9), .required = TRUE) \
  F (T, NUMBER, total_g, N_("To make up"), \
     .help = N_("Mass of diluted pretreat that will be made up; empty to use all the " \
                "concentrate."), .quantity = BB_QUANTITY_MASS, .limits = BB_LIMITS_MIX_MASS) \
  BB_DILUTION_FIELDS (F, T) \
  BB_LAYDOWN_FIELDS (F, T)

BB_DECLARE_TABLE (BbStretchIn, bb_stretch_in, BB_STRETCH_IN_FIELDS);

#define BB_STRETCH_OUT_FIELDS(F, T) \
  F (T, INTEGER, garments, N_("Garments"), .help = N_("Whole garments that it still makes.")) \
  F (T, CHOICE, limited_by, N_("Limited by"), .help = N_("What runs out first."), \
     .choices = &bb_stretch_limit_choices)

BB_DECLARE_TABLE (BbStretchOut, bb_stretch_out, BB_STRETCH_OUT_FIELDS);

BB_DECLARE_CALCULATOR (Stretch, stretch);

G_END_DECLS
