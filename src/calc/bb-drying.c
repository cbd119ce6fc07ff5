/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-calc"

#include "bb-drying.h"

#include "bb-steam.h"

#define J_PER_KJ 1000.0

/**
 * bb_calc_drying:
 * @in: what is dried, and by what
 * @out: water, energy, floor of time and masses
 * @error: return location for a #GError in the domain %BB_MODEL_ERROR
 *
 * Computes what drying takes; see the top of bb-drying.h.
 *
 * Returns: %TRUE
 */
gboolean
bb_calc_drying (const BbDryingIn *in,
                BbDryingOut      *out,
                G_GNUC_UNUSED GError **error)
{
  double rise_k = BB_WATER_BOILING_C - in->start_c;
  double fabric_j = in->heated_fabric_g * bb_composition_get_heat_capacity (in->composition) * rise_k;
  double water_j_per_g = BB_WATER_HEAT_CAPACITY_J_PER_G_K * rise_k + BB_WATER_LATENT_HEAT_J_PER_G;
  double regain = isnan (in->regain_fraction) ? bb_composition_get_regain (in->composition)
                                              : in->regain_fraction;

  out->water_g = in->wet_g * (1.0 - in->solids_fraction);
  out->energy_kj = (fabric_j + out->water_g * water_j_per_g) / J_PER_KJ;
  if (!isnan (in->heat_flux_w))
    out->minimum_s = out->energy_kj * J_PER_KJ / in->heat_flux_w;
  out->dry_gain_g = in->wet_g * in->solids_fraction;
  out->regain_g = regain * in->heated_fabric_g;

  return TRUE;
}

static gboolean
check_drying (gconstpointer record,
              GError      **error)
{
  const BbDryingIn *in = record;

  return bb_composition_check (in->composition, "composition", error);
}

BB_DEFINE_TABLE (BbDryingIn, bb_drying_in, "drying_in", N_("Drying"), BB_DRYING_IN_FIELDS, check_drying)
BB_DEFINE_TABLE (BbDryingOut, bb_drying_out, "drying_out", N_("Drying"), BB_DRYING_OUT_FIELDS, NULL)
BB_DEFINE_CALCULATOR (Drying, drying, "drying", N_("Drying"),
                      .summary = N_("Energy and shortest time to dry a pretreated garment, and what it weighs then."),
                      .assumes = N_("Sea level, and no heat lost to platen, sheet or air: the time is a floor."),
                      .source = N_("Water: IAPWS-IF97. Fibres: handbooks, beside each value in bb-fibre-data.c."))
