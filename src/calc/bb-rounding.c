/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-calc"

#include "bb-rounding.h"

#include <math.h>

/* Some thousand rounding errors of a double, and far below what any scale resolves. */
#define NEAR 1e-12

static gboolean
is_near_whole (double value)
{
  double whole = round (value);

  return fabs (value - whole) <= NEAR * fabs (whole);
}

/**
 * bb_floor_steady:
 * @value: a finite number
 *
 * Returns: the largest whole number not above @value; the nearest one where @value is within a
 *   part in 10¹² of it
 */
double
bb_floor_steady (double value)
{
  return is_near_whole (value) ? round (value) : floor (value);
}

/**
 * bb_ceil_steady:
 * @value: a finite number
 *
 * Returns: the smallest whole number not below @value; the nearest one where @value is within a
 *   part in 10¹² of it
 */
double
bb_ceil_steady (double value)
{
  return is_near_whole (value) ? round (value) : ceil (value);
}

/**
 * bb_round_for_scale:
 * @value: a mass in g or a volume in ml
 *
 * Rounds an amount to what a person can weigh out or read off: tenths, and whole numbers from 1000 on (common
 * practice, no source). For showing only: nothing is computed from it.
 *
 * Returns: the amount, rounded
 */
double
bb_round_for_scale (double value)
{
  return fabs (value) < 1000.0 ? round (value * 10.0) / 10.0 : round (value);
}
