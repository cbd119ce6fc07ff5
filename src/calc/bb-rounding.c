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
