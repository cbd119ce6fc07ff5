/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-calc"

#include "bb-water.h"

#include <math.h>

/* Tanaka et al. 2001: a1 … a5 of their equation (1). */
#define A1_C (-3.983035)
#define A2_C 301.797
#define A3_C2 522528.9
#define A4_C 69.34881
#define A5_KG_PER_M3 999.974950

#define KG_PER_M3_IN_G_PER_ML 1000.0

/**
 * bb_water_density_g_per_ml:
 * @celsius: the water's temperature in °C, from %BB_WATER_COLDEST_C to %BB_WATER_WARMEST_C
 *
 * Source: Tanaka et al. 2001; see the top of bb-water.h.
 *
 * Returns: the density of pure water in g/ml; NaN outside the formula's range
 */
double
bb_water_density_g_per_ml (double celsius)
{
  double from_densest = celsius + A1_C;

  if (!(celsius >= BB_WATER_COLDEST_C && celsius <= BB_WATER_WARMEST_C))
    return (double) NAN;

  return A5_KG_PER_M3 / KG_PER_M3_IN_G_PER_ML *
         (1.0 - from_densest * from_densest * (celsius + A2_C) / (A3_C2 * (celsius + A4_C)));
}
