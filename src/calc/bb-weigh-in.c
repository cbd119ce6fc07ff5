/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-calc"

#include "bb-weigh-in.h"

#include "bb-canonical.h"

#define SLACK 1e-9
#define SHARE_OF_TOLERANCE 0.25

static gboolean
check_weigh_in (gconstpointer record,
                GError      **error)
{
  const BbWeighInIn *self = record;
  g_autofree char *wet = NULL;
  g_autofree char *tare = NULL;

  if (self->wet_g >= self->tare_g)
    return TRUE;

  wet = bb_number_to_text (self->wet_g);
  tare = bb_number_to_text (self->tare_g);
  g_set_error (error, BB_MODEL_ERROR, BB_MODEL_ERROR_VALUE,
               "wet_g: %s is below the minimum %s, the tare_g", wet, tare);

  return FALSE;
}

static BbWeighVerdict
judge (double deviation,
       double tolerance)
{
  if (deviation < -tolerance - SLACK)
    return BB_WEIGH_LOW;

  return deviation > tolerance + SLACK ? BB_WEIGH_HIGH : BB_WEIGH_OK;
}

/**
 * bb_calc_weigh_in:
 * @in: two weighings and the target
 * @out: the verdict and what it rests on
 * @error: return location for a #GError; never set
 *
 * Judges a garment's laydown; see the top of bb-weigh-in.h.
 *
 * Returns: %TRUE
 */
gboolean
bb_calc_weigh_in (const BbWeighInIn *in,
                  BbWeighInOut      *out,
                  GError           **error G_GNUC_UNUSED)
{
  double aimed_at_g = in->target_g_per_m2 * in->box_area_m2;
  double coarsest = in->tolerance_fraction * SHARE_OF_TOLERANCE;

  out->applied_g = in->wet_g - in->tare_g;
  out->laydown_g_per_m2 = out->applied_g / in->box_area_m2;
  out->deviation_fraction = (out->applied_g - aimed_at_g) / aimed_at_g;
  out->verdict = judge (out->deviation_fraction, in->tolerance_fraction);
  out->resolution_fraction = in->scale_resolution_g / aimed_at_g;
  out->scale_too_coarse = out->resolution_fraction / 2.0 > coarsest + SLACK;

  return TRUE;
}

/**
 * bb_weigh_in_aim:
 * @in: a tare and the target; the wet mass is not looked at
 *
 * The wet masses between which bb_calc_weigh_in() calls a garment OK.
 *
 * Returns: the bounds and the middle
 */
BbWeighAim
bb_weigh_in_aim (const BbWeighInIn *in)
{
  const double aimed_at_g = in->target_g_per_m2 * in->box_area_m2;
  const BbWeighAim aim = {
    .low_g = in->tare_g + aimed_at_g * (1 - in->tolerance_fraction),
    .aim_g = in->tare_g + aimed_at_g,
    .high_g = in->tare_g + aimed_at_g * (1 + in->tolerance_fraction),
  };

  return aim;
}

BB_DEFINE_CHOICES (bb_weigh_verdict, "weigh-in verdict", BB_WEIGH_VERDICT_CHOICES);

BB_DEFINE_TABLE (BbWeighInIn, bb_weigh_in_in, "weigh_in_in", N_("Weigh-in"),
                 BB_WEIGH_IN_IN_FIELDS, check_weigh_in)
BB_DEFINE_TABLE (BbWeighInOut, bb_weigh_in_out, "weigh_in_out", N_("Weigh-in"),
                 BB_WEIGH_IN_OUT_FIELDS, NULL)
BB_DEFINE_CALCULATOR (WeighIn, weigh_in, "weigh-in", N_("Weigh-in"),
                      .summary = N_("Whether a garment got its pretreat, from its mass before "
                                    "and after spraying."),
                      .assumes = N_("Nothing evaporates or drips between the two weighings."),
                      .source = N_("Definition of laydown. A quarter of the tolerance: common "
                                   "practice, no source."))
