/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bb-picture-calculators.h"

#include "bb-artwork.h"
#include "bb-scan-colour.h"

BB_DEFINE_CALCULATOR (Artwork, artwork, "artwork", N_("Artwork"),
                      .summary = N_("What a PNG picture says about its print: size, resolution, areas of ink, and the "
                                    "box to pretreat."),
                      .assumes = N_("Square pixels, and colours as they stand in the file. What counts as black or "
                                    "white is a limit on 8-bit values. At most 200,000 pixels wide and 10⁹ in all."),
                      .source = N_("Exact counts by ISO/IEC 15948 (PNG), decoded by libpng; plain geometry. The limits "
                                   "are common practice, no source."))
BB_DEFINE_CALCULATOR (ScanColour, scan_colour, "scan-colour", N_("Colour of a scan"),
                      .summary = N_("Mean and spread of CIELAB over a rectangle of a scanned picture."),
                      .assumes = N_("White point D50. A fixed set-up of the scanner, and a patch scanned along that "
                                    "shows drift. It supports a trained eye under standard light and does not replace "
                                    "it."),
                      .source = N_("CIE 15 (CIELAB), ISO 15076-1 (ICC profiles), IEC 61966-2-1 (sRGB), by Little CMS, "
                                   "relative colorimetric."))
