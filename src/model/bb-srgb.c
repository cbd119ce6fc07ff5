/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bb-srgb.h"

#include <math.h>

/**
 * bb_srgb_to_linear:
 * @value: red, green or blue of sRGB, 0 to 1
 *
 * Source: IEC 61966-2-1.
 *
 * Returns: the light that it stands for, 0 to 1: what may be added up and averaged
 */
double
bb_srgb_to_linear (double value)
{
  return value <= 0.04045 ? value / 12.92 : pow ((value + 0.055) / 1.055, 2.4);
}

/**
 * bb_srgb_from_linear:
 * @light: an amount of light, 0 to 1
 *
 * Source: IEC 61966-2-1.
 *
 * Returns: the value of sRGB that stands for it, 0 to 1
 */
double
bb_srgb_from_linear (double light)
{
  return light <= 0.0031308 ? light * 12.92 : 1.055 * pow (light, 1.0 / 2.4) - 0.055;
}
