/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bb-calculator.h"
#include "bb-mixture.h"

G_BEGIN_DECLS

/*
 * What one garment takes: the wet pretreat that lies on it, and what the sprayer uses for that.
 * Area in m², laydown in g/m², masses in g.
 *
 *     wet_g  = box_area_m2 · laydown_g_per_m2
 *     used_g = wet_g / (1 − overspray_fraction)
 *
 * because overspray is given as a fraction of what leaves the nozzles, not of what arrives.
 * Assumes that the laydown is the mean over the box.
 * Refused: each key out of its limits; an overspray of 1, where nothing arrives.
 * Source: definition of laydown as wet mass per area.
 */

#define BB_LAYDOWN_FIELDS(F, T) \
  F (T, NUMBER, box_area_m2, N_("Box area"), \
     .help = N_("Area of the rectangle that is sprayed."), .quantity = BB_QUANTITY_AREA, \
     .limits = BB_LIMITS_BOX_AREA, .required = TRUE) \
  BB_LAYDOWN_RATE_FIELDS (F, T)

#define BB_LAYDOWN_RATE_FIELDS(F, T) \
  F (T, NUMBER, laydown_g_per_m2, N_("Laydown"), \
     .help = N_("Wet mass of pretreat that lies on the garment, per area."), \
     .quantity = BB_QUANTITY_MASS_PER_AREA, .limits = BB_LIMITS_LAYDOWN, .required = TRUE, \
     .group = N_("Pretreat")) \
  F (T, NUMBER, overspray_fraction, N_("Overspray"), \
     .help = N_("Share of what leaves the nozzles that does not land on the garment."), \
     .quantity = BB_QUANTITY_FRACTION, .limits = BB_LIMITS_OVERSPRAY, \
     .fallback = BB_DEFAULT (0), .group = N_("Losses and reserve"))

#define BB_LAYDOWN_IN_FIELDS(F, T) BB_LAYDOWN_FIELDS (F, T)

BB_DECLARE_TABLE (BbLaydownIn, bb_laydown_in, BB_LAYDOWN_IN_FIELDS);

#define BB_LAYDOWN_OUT_FIELDS(F, T) \
  F (T, NUMBER, wet_g, N_("On the garment"), \
     .help = N_("Wet pretreat on one garment: what a weigh-in shows."), \
     .quantity = BB_QUANTITY_MASS) \
  F (T, NUMBER, used_g, N_("Used"), \
     .help = N_("Pretreat that leaves the nozzles for one garment."), \
     .quantity = BB_QUANTITY_MASS)

BB_DECLARE_TABLE (BbLaydownOut, bb_laydown_out, BB_LAYDOWN_OUT_FIELDS);

BB_DECLARE_CALCULATOR (Laydown, laydown);

double bb_laydown_used_g (double box_area_m2,
                          double laydown_g_per_m2,
                          double overspray_fraction);

G_END_DECLS
