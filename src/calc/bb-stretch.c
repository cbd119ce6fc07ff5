/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-calc"

#include "bb-stretch.h"

#include "bb-canonical.h"
#include "bb-rounding.h"

/* 2^53, up to which a double tells every whole number. */
#define MOST_GARMENTS 9007199254740992.0

/* A total and what the concentrate makes that are as close as this end together: the difference is rounding. */
#define TOGETHER 1e-12

static gboolean
refuse_too_many (double   available_ml,
                 GError **error)
{
  g_autofree char *available = bb_number_to_text (available_ml);
  g_autofree char *most = bb_number_to_text (MOST_GARMENTS);

  g_set_error (error, BB_MODEL_ERROR, BB_MODEL_ERROR_VALUE,
               "concentrate_ml_available: %s makes more garments than the maximum %s",
               available, most);

  return FALSE;
}

/**
 * bb_calc_stretch:
 * @in: what is left, the dilution and the laydown
 * @out: how many garments it makes
 * @error: return location for a #GError in the domain %BB_MODEL_ERROR
 *
 * Computes how far a container reaches; see the top of bb-stretch.h.
 *
 * Returns: %FALSE if the number of garments is beyond counting
 */
gboolean
bb_calc_stretch (const BbStretchIn *in,
                 BbStretchOut      *out,
                 GError           **error)
{
  double water_density = bb_water_density_g_per_ml (in->water_temperature_c);
  double used_g = bb_laydown_used_g (in->box_area_m2, in->laydown_g_per_m2, in->overspray_fraction);
  double share = bb_mixture_concentrate_share (in->parts_concentrate, in->parts_water,
                                               (BbBasis) in->basis, in->concentrate_density_g_per_ml,
                                               water_density, NULL);
  double available_g = in->concentrate_ml_available * in->concentrate_density_g_per_ml;
  double by_concentrate = available_g / (used_g * share);
  double by_total = isnan (in->total_g) ? (double) INFINITY : in->total_g / used_g;
  double garments = bb_floor_steady (fmin (by_concentrate, by_total));

  if (garments > MOST_GARMENTS)
    return refuse_too_many (in->concentrate_ml_available, error);

  out->garments = (gint64) garments;
  out->limited_by = by_total < by_concentrate * (1.0 - TOGETHER) ? BB_STRETCH_BY_TOTAL : BB_STRETCH_BY_CONCENTRATE;

  return TRUE;
}

BB_DEFINE_CHOICES (bb_stretch_limit, "stretch limit", BB_STRETCH_LIMIT_CHOICES);

BB_DEFINE_TABLE (BbStretchIn, bb_stretch_in, "stretch_in", N_("Stretch"),
                 BB_STRETCH_IN_FIELDS, NULL)
BB_DEFINE_TABLE (BbStretchOut, bb_stretch_out, "stretch_out", N_("Stretch"),
                 BB_STRETCH_OUT_FIELDS, NULL)
BB_DEFINE_CALCULATOR (Stretch, stretch, "stretch", N_("Stretch"),
                      .summary = N_("How many garments the concentrate left in a container "
                                    "still makes."),
                      .assumes = N_("Ideal mixing, enough water, and no loss but overspray."),
                      .source = N_("Mass balance. Density of water: Tanaka et al., Metrologia "
                                   "38 (2001) 301–309."))
