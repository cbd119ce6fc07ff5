/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-calc"

#include "bb-lab.h"

#include "bb-canonical.h"
#include "bb-error.h"
#include "bb-srgb.h"

#define LIGHTEST 150.0

/**
 * bb_lab_check:
 * @key: the key that holds the colour
 * @lab: L*, a*, b*
 * @error: return location for a #GError in the domain %BB_MODEL_ERROR
 *
 * Holds L* against its own limits, which are narrower than those of a* and b*.
 *
 * Returns: %TRUE if the colour may be computed with
 */
gboolean
bb_lab_check (const char *key,
              GArray     *lab,
              GError    **error)
{
  double lightness = g_array_index (lab, double, 0);
  g_autofree char *value = NULL;

  if (lightness >= 0.0 && lightness <= LIGHTEST)
    return TRUE;

  value = bb_number_to_text (lightness);
  if (lightness < 0.0)
    g_set_error (error, BB_MODEL_ERROR, BB_MODEL_ERROR_VALUE, "%s[0]: %s is below the minimum 0", key, value);
  else
    g_set_error (error, BB_MODEL_ERROR, BB_MODEL_ERROR_VALUE, "%s[0]: %s is above the maximum %g", key, value,
                 LIGHTEST);

  return FALSE;
}

/**
 * bb_lab_from_array:
 * @lab: L*, a*, b*
 *
 * Returns: the same colour in Little CMS's form
 */
cmsCIELab
bb_lab_from_array (GArray *lab)
{
  return (cmsCIELab) { .L = g_array_index (lab, double, 0), .a = g_array_index (lab, double, 1),
                       .b = g_array_index (lab, double, 2) };
}

/*
 * What red, green and blue of sRGB (IEC 61966-2-1) add to X, Y and Z, adapted to the white point D50 by Bradford's
 * matrix as ICC profiles are: brucelindbloom.com, "RGB/XYZ Matrices".
 */
static const double srgb_to_xyz_d50[3][3] = {
  { 0.4360747, 0.3850649, 0.1430804 },
  { 0.2225045, 0.7168786, 0.0606169 },
  { 0.0139322, 0.0971045, 0.7141733 },
};

/**
 * bb_lab_from_srgb:
 * @rgb: (array fixed-size=3): red, green and blue of sRGB
 *
 * Computed by its definition, which is quick enough for thousands of garments: Little CMS, which makes a transform
 * first, answers the same within 0.01.
 *
 * Returns: the colour in CIELAB of the white point D50, relative colorimetric
 */
cmsCIELab
bb_lab_from_srgb (const guint8 rgb[3])
{
  double xyz[3] = { 0 };
  double white[3] = { 0 };
  cmsCIELab lab = { 0 };

  for (guint i = 0; i < 3; i++)
    for (guint j = 0; j < 3; j++)
      {
        xyz[i] += srgb_to_xyz_d50[i][j] * bb_srgb_to_linear (rgb[j] / 255.0);
        white[i] += srgb_to_xyz_d50[i][j];
      }
  cmsXYZ2Lab (&(cmsCIEXYZ) { white[0], white[1], white[2] }, &lab, &(cmsCIEXYZ) { xyz[0], xyz[1], xyz[2] });

  return lab;
}

/**
 * bb_lch_hue_difference:
 * @from: the colour that is compared with
 * @to: the colour that is compared
 *
 * The CIELAB hue difference ΔH*ab, a length and not an angle: positive where @to lies counter-clockwise of
 * @from by the shorter way. Taken from the hue angles and not as √(ΔE² − ΔL² − ΔC²), which loses half its digits
 * where the hues are close.
 *
 * Returns: ΔH*ab, 0 where one of the colours has no chroma
 */
double
bb_lch_hue_difference (const cmsCIELCh *from,
                       const cmsCIELCh *to)
{
  double angle = to->h - from->h;
  double length = 2.0 * sqrt (from->C * to->C) * fabs (sin (angle * G_PI / 360.0));
  gboolean forward = (angle >= 0.0) == (fabs (angle) <= 180.0);

  return forward ? length : -length;
}
