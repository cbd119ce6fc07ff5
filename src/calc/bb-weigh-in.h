/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bb-calculator.h"
#include "bb-mixture.h"

G_BEGIN_DECLS

/*
 * Whether a garment got the pretreat that it should have, from its mass before and just after
 * spraying. Masses in g, area in m², laydown in g/m², fractions of 1.
 *
 *     applied_g           = wet_g − tare_g
 *     laydown_g_per_m2    = applied_g / box_area_m2
 *     deviation_fraction  = laydown_g_per_m2 / target_g_per_m2 − 1
 *     verdict             = "low" below −tolerance, "high" above +tolerance, else "ok": the bounds are ok
 *     resolution_fraction = scale_resolution_g / (target_g_per_m2 · box_area_m2)
 *     scale_too_coarse    = resolution_fraction / 2 > tolerance_fraction / 4
 *
 * resolution_fraction is a division of the scale as a share of the wet mass that is aimed at, so
 * that it compares with the tolerance; a reading is right to within half a division. The bounds
 * hold to a part in 10⁹: the difference of two readings such as 159.9 − 150 is not exact in
 * binary.
 * Assumes that nothing evaporates and nothing drips between the two weighings.
 * Refused: each key out of its limits; a wet mass below the tare, which no spraying gives.
 * Source: definition of laydown; a quarter of the tolerance is common practice, no source.
 */

#define BB_WEIGH_VERDICT_CHOICES(C) \
  C (BB_WEIGH_LOW, "low", N_("Low")) \
  C (BB_WEIGH_OK, "ok", N_("OK")) \
  C (BB_WEIGH_HIGH, "high", N_("High"))

BB_DECLARE_CHOICES (BbWeighVerdict, bb_weigh_verdict, BB_WEIGH_VERDICT_CHOICES);

#define BB_WEIGH_IN_IN_FIELDS(F, T) \
  F (T, NUMBER, tare_g, N_("Tare"), .help = N_("The garment before spraying."), \
     .quantity = BB_QUANTITY_MASS, .limits = BB_BETWEEN (0, 1e6), .required = TRUE) \
  F (T, NUMBER, wet_g, N_("Wet"), .help = N_("The same garment just after spraying, no lighter than before."), \
     .quantity = BB_QUANTITY_MASS, .limits = BB_BETWEEN (0, 1e6), .required = TRUE) \
  F (T, NUMBER, box_area_m2, N_("Box area"), \
     .help = N_("Area of the rectangle that was sprayed."), .quantity = BB_QUANTITY_AREA, \
     .limits = BB_LIMITS_BOX_AREA, .required = TRUE) \
  F (T, NUMBER, target_g_per_m2, N_("Target"), \
     .help = N_("The laydown that the recipe asks for."), .quantity = BB_QUANTITY_MASS_PER_AREA, \
     .limits = BB_LIMITS_LAYDOWN, .required = TRUE) \
  F (T, NUMBER, tolerance_fraction, N_("Tolerance"), \
     .help = N_("How far from the target is still good, as a share of it."), \
     .quantity = BB_QUANTITY_FRACTION, .limits = BB_BETWEEN (0, 1), \
     .fallback = BB_DEFAULT (0.1)) \
  F (T, NUMBER, scale_resolution_g, N_("Scale's division"), \
     .help = N_("The smallest step that the scale shows."), .quantity = BB_QUANTITY_MASS, \
     .limits = BB_ABOVE_TO (0, 1000), .fallback = BB_DEFAULT (0.1))

BB_DECLARE_TABLE (BbWeighInIn, bb_weigh_in_in, BB_WEIGH_IN_IN_FIELDS);

#define BB_WEIGH_IN_OUT_FIELDS(F, T) \
  F (T, NUMBER, applied_g, N_("Applied"), .help = N_("Pretreat on the garment."), \
     .quantity = BB_QUANTITY_MASS) \
  F (T, NUMBER, laydown_g_per_m2, N_("Laydown"), .help = N_("The same per area of the box."), \
     .quantity = BB_QUANTITY_MASS_PER_AREA) \
  F (T, NUMBER, deviation_fraction, N_("Deviation"), \
     .help = N_("From the target, as a share of it; negative for too little."), \
     .quantity = BB_QUANTITY_FRACTION) \
  F (T, CHOICE, verdict, N_("Verdict"), \
     .help = N_("Whether the laydown is within the tolerance."), \
     .choices = &bb_weigh_verdict_choices) \
  F (T, NUMBER, resolution_fraction, N_("Resolution"), \
     .help = N_("A division of the scale, as a share of the mass aimed at."), \
     .quantity = BB_QUANTITY_FRACTION) \
  F (T, FLAG, scale_too_coarse, N_("Scale too coarse"), \
     .help = N_("Half a division is more than a quarter of the tolerance: take a finer scale " \
                "or a larger box."))

BB_DECLARE_TABLE (BbWeighInOut, bb_weigh_in_out, BB_WEIGH_IN_OUT_FIELDS);

BB_DECLARE_CALCULATOR (WeighIn, weigh_in);

/**
 * BbWeighAim:
 * @low_g: least wet mass that is still good
 * @aim_g: the wet mass to aim at
 * @high_g: most wet mass that is still good
 *
 * What the scale has to show after spraying. It owns nothing.
 */
typedef struct {
  double low_g;
  double aim_g;
  double high_g;
} BbWeighAim;

BbWeighAim bb_weigh_in_aim (const BbWeighInIn *in);

G_END_DECLS
