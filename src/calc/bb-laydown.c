/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-calc"

#include "bb-laydown.h"

/**
 * bb_laydown_used_g:
 * @box_area_m2: area of the box in m²
 * @laydown_g_per_m2: wet mass per area on the garment, g/m²
 * @overspray_fraction: share of what leaves the nozzles that misses the garment, 0 to less than 1
 *
 * Returns: what leaves the nozzles for one garment, in g
 */
double
bb_laydown_used_g (double box_area_m2,
                   double laydown_g_per_m2,
                   double overspray_fraction)
{
  return box_area_m2 * laydown_g_per_m2 / (1.0 - overspray_fraction);
}

/**
 * bb_calc_laydown:
 * @in: box, laydown and overspray
 * @out: grams for one garment
 * @error: return location for a #GError; never set
 *
 * Computes what one garment takes; see the top of bb-laydown.h.
 *
 * Returns: %TRUE
 */
gboolean
bb_calc_laydown (const BbLaydownIn *in,
                 BbLaydownOut      *out,
                 GError           **error G_GNUC_UNUSED)
{
  out->wet_g = in->box_area_m2 * in->laydown_g_per_m2;
  out->used_g = bb_laydown_used_g (in->box_area_m2, in->laydown_g_per_m2, in->overspray_fraction);

  return TRUE;
}

BB_DEFINE_TABLE (BbLaydownIn, bb_laydown_in, "laydown_in", N_("Laydown"), BB_LAYDOWN_IN_FIELDS,
                 NULL)
BB_DEFINE_TABLE (BbLaydownOut, bb_laydown_out, "laydown_out", N_("Laydown"),
                 BB_LAYDOWN_OUT_FIELDS, NULL)
BB_DEFINE_CALCULATOR (Laydown, laydown, "laydown", N_("Laydown"),
                      .summary = N_("The wet pretreat on one garment, and what the sprayer "
                                    "uses for it."),
                      .assumes = N_("Overspray is a share of what leaves the nozzles."),
                      .source = N_("Definition of laydown as wet mass per area."))
