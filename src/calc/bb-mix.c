/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-calc"

#include "bb-mix.h"

/**
 * bb_calc_mix:
 * @in: the total and the dilution
 * @out: what to weigh or measure
 * @error: return location for a #GError; never set
 *
 * Splits a batch into concentrate and water; see the top of bb-mix.h.
 *
 * Returns: %TRUE
 */
gboolean
bb_calc_mix (const BbMixIn *in,
             BbMixOut      *out,
             GError       **error G_GNUC_UNUSED)
{
  double concentrate_density = in->concentrate_density_g_per_ml;
  double water_density = bb_water_density_g_per_ml (in->water_temperature_c);
  double water = 0.0;
  double concentrate = bb_mixture_concentrate_share (in->parts_concentrate, in->parts_water,
                                                     (BbBasis) in->basis, concentrate_density,
                                                     water_density, &water);

  out->concentrate_g = in->total_g * concentrate;
  out->concentrate_ml = out->concentrate_g / concentrate_density;
  out->water_g = in->total_g * water;
  out->water_ml = out->water_g / water_density;
  out->total_ml = out->concentrate_ml + out->water_ml;
  /* From the shares, so that it does not depend on how much is made. */
  out->density_g_per_ml = 1.0 / (concentrate / concentrate_density + water / water_density);
  /* NaN, where the solids are not known, stays NaN. */
  out->solids_fraction = in->concentrate_solids_fraction * concentrate;
  out->concentrate_mass_fraction = concentrate;

  return TRUE;
}

BB_DEFINE_TABLE (BbMixIn, bb_mix_in, "mix_in", N_("Mix"), BB_MIX_IN_FIELDS, NULL)
BB_DEFINE_TABLE (BbMixOut, bb_mix_out, "mix_out", N_("Mix"), BB_MIX_OUT_FIELDS, NULL)
BB_DEFINE_CALCULATOR (Mix, mix, "mix", N_("Mix"),
                      .summary = N_("How much concentrate and water make up a batch of diluted "
                                    "pretreat."),
                      .assumes = N_("Ideal mixing: the volumes of concentrate and water add. "
                                    "Pure water."),
                      .source = N_("Mass balance. Density of water: Tanaka et al., Metrologia "
                                   "38 (2001) 301–309."))
