/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib/gi18n-lib.h>

#include "bb-field.h"
#include "bb-png.h"

G_BEGIN_DECLS

/*
 * The colour of a patch on a scan: mean and spread of L*, a* and b* over a rectangle of pixels. CIELAB of the white
 * point D50, by the picture's own ICC profile, else as sRGB, relative colorimetric. The mean is of CIELAB and not of
 * the samples; the spread is the standard deviation of the sample, n - 1, and null for a single pixel. No units.
 *
 * Pixels that are not wholly opaque have no colour of their own: they are left out, and `pixels` says how many counted.
 * Warnings: no-profile (the file says nothing about its colours: taken as sRGB), bad-profile (its profile can't be
 * used: taken as sRGB), transparent (pixels were left out).
 *
 * Assumes a fixed set-up of the scanner, whose own corrections are off, and a patch scanned along that shows drift.
 * Refused: keys out of their limits, a rectangle that reaches beyond the picture or holds no opaque pixel; a file that
 * can't be read, is no PNG, is damaged, or is beyond the limits of bb-png.h.
 * Source: CIE 15 (CIELAB), ISO 15076-1 (ICC profiles) by Little CMS in floating point, IEC 61966-2-1 (sRGB).
 */

#define BB_SCAN_WARNING_CHOICES(C) \
  C (BB_SCAN_NO_PROFILE, "no-profile", N_("The picture does not say what its colours mean: they were taken as sRGB.")) \
  C (BB_SCAN_BAD_PROFILE, "bad-profile", \
     N_("The picture's colour profile can't be used: its colours were taken as sRGB.")) \
  C (BB_SCAN_TRANSPARENT, "transparent", N_("Pixels that are not wholly opaque were left out."))

BB_DECLARE_CHOICES (BbScanWarning, bb_scan_warning, BB_SCAN_WARNING_CHOICES);

#define BB_SCAN_COLOUR_IN_FIELDS(F, T) \
  F (T, TEXT, file, N_("File"), .help = N_("Name of the PNG file with the scan."), .limits = BB_BETWEEN (1, 4096), \
     .required = TRUE) \
  F (T, INTEGER, x_px, N_("From the left"), .help = N_("Columns to the left of the rectangle."), \
     .limits = BB_BETWEEN (0, 199999), .required = TRUE) \
  F (T, INTEGER, y_px, N_("From the top"), .help = N_("Rows above the rectangle."), \
     .limits = BB_BETWEEN (0, 999999999), .required = TRUE) \
  F (T, INTEGER, width_px, N_("Columns"), .help = N_("How many columns the rectangle has."), \
     .limits = BB_BETWEEN (1, 200000), .required = TRUE) \
  F (T, INTEGER, height_px, N_("Rows"), .help = N_("How many rows the rectangle has."), \
     .limits = BB_BETWEEN (1, 1000000000), .required = TRUE)

BB_DECLARE_TABLE (BbScanColourIn, bb_scan_colour_in, BB_SCAN_COLOUR_IN_FIELDS);

#define BB_SCAN_COLOUR_OUT_FIELDS(F, T) \
  F (T, NUMBER, l, N_("L*"), .help = N_("Mean lightness, from 0 for black to 100 for white.")) \
  F (T, NUMBER, a, N_("a*"), .help = N_("Mean a*, red above zero and green below.")) \
  F (T, NUMBER, b, N_("b*"), .help = N_("Mean b*, yellow above zero and blue below.")) \
  F (T, NUMBER, l_sd, N_("Spread of L*"), .help = N_("Standard deviation of the pixels' L*.")) \
  F (T, NUMBER, a_sd, N_("Spread of a*"), .help = N_("Standard deviation of the pixels' a*.")) \
  F (T, NUMBER, b_sd, N_("Spread of b*"), .help = N_("Standard deviation of the pixels' b*.")) \
  F (T, INTEGER, pixels, N_("Pixels"), .help = N_("How many pixels counted.")) \
  F (T, TEXTS, warnings, N_("Warnings"), \
     .help = N_("How the colours were understood, where that is in doubt: no-profile, bad-profile, transparent."), \
     .choices = &bb_scan_warning_choices)

BB_DECLARE_TABLE (BbScanColourOut, bb_scan_colour_out, BB_SCAN_COLOUR_OUT_FIELDS);

gboolean bb_calc_scan_colour    (const BbScanColourIn *in,
                                 BbScanColourOut      *out,
                                 GError              **error);
gboolean bb_scan_colour_measure (const BbScanColourIn *in,
                                 BbPng                *png,
                                 BbScanColourOut      *out,
                                 const BbImageWork    *work,
                                 GError              **error);

G_END_DECLS
