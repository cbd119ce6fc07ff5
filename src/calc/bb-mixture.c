/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-calc"

#include "bb-mixture.h"

/**
 * bb_mixture_concentrate_share:
 * @parts_concentrate: parts of concentrate, more than 0
 * @parts_water: parts of water, 0 or more
 * @basis: whether the parts are volumes or masses
 * @concentrate_g_per_ml: density of the concentrate; has no effect where the parts are masses
 * @water_g_per_ml: density of the water; has no effect where the parts are masses
 * @water_share: (out) (optional): the share of the mixture's mass that is added water
 *
 * Each share is computed on its own, not as one less the other, so that a small one keeps its
 * digits.
 *
 * Returns: the share of the mixture's mass that is concentrate, 0 to 1
 */
double
bb_mixture_concentrate_share (double  parts_concentrate,
                               double  parts_water,
                               BbBasis basis,
                               double  concentrate_g_per_ml,
                               double  water_g_per_ml,
                               double *water_share)
{
  gboolean by_volume = basis == BB_BASIS_VOLUME;
  double concentrate = parts_concentrate * (by_volume ? concentrate_g_per_ml : 1.0);
  double water = parts_water * (by_volume ? water_g_per_ml : 1.0);

  if (water_share != NULL)
    *water_share = water / (concentrate + water);

  return concentrate / (concentrate + water);
}
