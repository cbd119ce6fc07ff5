/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-calc"

#include "bb-solids-match.h"

static double
concentrate_share (const BbSolidsMatchIn *in,
                   double                 parts_concentrate,
                   double                 parts_water)
{
  double water_density = bb_water_density_g_per_ml (in->water_temperature_c);

  return bb_mixture_concentrate_share (parts_concentrate, parts_water, (BbBasis) in->basis,
                                       in->concentrate_density_g_per_ml, water_density, NULL);
}

/**
 * bb_calc_solids_match:
 * @in: a laydown, its dilution and the new one
 * @out: the new laydown
 * @error: return location for a #GError; never set
 *
 * Computes the laydown that leaves the same solids; see the top of bb-solids-match.h.
 *
 * Returns: %TRUE
 */
gboolean
bb_calc_solids_match (const BbSolidsMatchIn *in,
                      BbSolidsMatchOut      *out,
                      GError               **error G_GNUC_UNUSED)
{
  double from = concentrate_share (in, in->from_parts_concentrate, in->from_parts_water);
  double to = concentrate_share (in, in->to_parts_concentrate, in->to_parts_water);

  out->laydown_g_per_m2 = in->laydown_g_per_m2 * (from / to);
  /* NaN, where the solids are not known, stays NaN. */
  out->solids_g_per_m2 = in->laydown_g_per_m2 * from * in->concentrate_solids_fraction;
  out->water_g_per_m2_change = out->laydown_g_per_m2 - in->laydown_g_per_m2;

  return TRUE;
}

BB_DEFINE_TABLE (BbSolidsMatchIn, bb_solids_match_in, "solids_match_in", N_("Same solids"),
                 BB_SOLIDS_MATCH_IN_FIELDS, NULL)
BB_DEFINE_TABLE (BbSolidsMatchOut, bb_solids_match_out, "solids_match_out", N_("Same solids"),
                 BB_SOLIDS_MATCH_OUT_FIELDS, NULL)
BB_DEFINE_CALCULATOR (SolidsMatch, solids_match, "solids-match", N_("Same solids"),
                      .summary = N_("The laydown that leaves the same solids on the garment at "
                                    "another dilution."),
                      .assumes = N_("One concentrate, one water, ideal mixing."),
                      .source = N_("Mass balance. Density of water: Tanaka et al., Metrologia "
                                   "38 (2001) 301–309."))
