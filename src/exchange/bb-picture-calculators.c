/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bb-picture-calculators.h"

#include "bb-artwork.h"

BB_DEFINE_CALCULATOR (Artwork, artwork, "artwork", N_("Artwork"),
                      .summary = N_("What a PNG picture says about its print: size, resolution, areas of ink, and the "
                                    "box to pretreat."),
                      .assumes = N_("Square pixels, and colours as they stand in the file. What counts as black or "
                                    "white is a limit on 8-bit values."),
                      .source = N_("Exact counts by ISO/IEC 15948 (PNG), decoded by libpng; plain geometry. The limits "
                                   "are common practice, no source."))
