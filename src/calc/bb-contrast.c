/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-calc"

#include "bb-contrast.h"

#include <math.h>

#include "bb-srgb.h"

/**
 * bb_contrast_luminance:
 * @red: sRGB value, 0 to 1
 * @green: sRGB value, 0 to 1
 * @blue: sRGB value, 0 to 1
 *
 * Relative luminance as W3C WCAG 2.2 defines it: 0 for black, 1 for white.
 *
 * Returns: the luminance
 */
double
bb_contrast_luminance (double red,
                       double green,
                       double blue)
{
  return 0.2126 * bb_srgb_to_linear (red) + 0.7152 * bb_srgb_to_linear (green) + 0.0722 * bb_srgb_to_linear (blue);
}

/**
 * bb_contrast_ratio:
 * @luminance_a: relative luminance of one colour
 * @luminance_b: relative luminance of the other
 *
 * Contrast ratio as W3C WCAG 2.2 defines it, from 1 to 21. Text needs 4.5, large text 3.
 *
 * Returns: the ratio
 */
double
bb_contrast_ratio (double luminance_a,
                   double luminance_b)
{
  return (fmax (luminance_a, luminance_b) + 0.05) / (fmin (luminance_a, luminance_b) + 0.05);
}

/**
 * bb_contrast_wants_white_text:
 * @red: sRGB value of the ground, 0 to 1
 * @green: sRGB value of the ground, 0 to 1
 * @blue: sRGB value of the ground, 0 to 1
 *
 * Returns: %TRUE if white text stands out more on this ground than black text; the better of the two has at
 *   least √21 = 4.58
 */
gboolean
bb_contrast_wants_white_text (double red,
                              double green,
                              double blue)
{
  const double ground = bb_contrast_luminance (red, green, blue);

  return bb_contrast_ratio (1.0, ground) > bb_contrast_ratio (ground, 0.0);
}
