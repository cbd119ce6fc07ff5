/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib/gi18n-lib.h>

#include "bb-calculator.h"
#include "bb-lab.h"

G_BEGIN_DECLS

/*
 * How far two colours lie apart: ΔE*ab (CIE 1976), ΔE00 (CIEDE2000, kL = kC = kH = 1) and ΔE CMC(2:1), with the
 * differences of lightness, chroma and hue. Both colours in CIELAB of the same white point; no units.
 *
 * The first colour is the reference: dl, dc and dh are second less first; dh is ΔH*ab, a length with the sign of
 * the turn from the first hue to the second by the shorter way, so that de_ab² = dl² + dc² + dh². CMC weighs by
 * the first colour and so is not the same both ways round.
 *
 * ΔE*ab, ΔE00 and CMC are Little CMS's, in double. Its ΔE00 takes two hues as less than 180° apart up to
 * 180.000001°, which moves no published pair by more than the rounding of the table (5e-5). Its CMC calls two
 * colours of L* = 0 equal whatever their chroma; they are given to it with L* = 1, where the weights are the same.
 *
 * Assumes that both colours were measured the same way: instrument, illuminant and observer.
 * Refused: L* outside 0 to 150, a* or b* beyond ±500, lists of other than three numbers.
 * Source: ISO/CIE 11664-4, ISO/CIE 11664-6, ISO 105-J03 (CMC).
 */

#define BB_COLOUR_DIFFERENCE_IN_FIELDS(F, T) \
  F (T, NUMBERS, lab_1, N_("First colour"), \
     .help = N_("L*, a*, b* of the colour that is compared with; L* from 0 to 150."), \
     .limits = BB_LAB_LIMITS, .count = BB_LAB_COUNT, .required = TRUE) \
  F (T, NUMBERS, lab_2, N_("Second colour"), \
     .help = N_("L*, a*, b* of the colour that is compared; L* from 0 to 150."), \
     .limits = BB_LAB_LIMITS, .count = BB_LAB_COUNT, .required = TRUE)

BB_DECLARE_TABLE (BbColourDifferenceIn, bb_colour_difference_in, BB_COLOUR_DIFFERENCE_IN_FIELDS);

#define BB_COLOUR_DIFFERENCE_OUT_FIELDS(F, T) \
  F (T, NUMBER, de_ab, N_("ΔE*ab"), .help = N_("Straight distance in CIELAB.")) \
  F (T, NUMBER, de_00, N_("ΔE00"), .help = N_("CIEDE2000, closer to what an eye sees.")) \
  F (T, NUMBER, de_cmc_2_1, N_("ΔE CMC(2:1)"), .help = N_("CMC with lightness counted half, as textiles use it.")) \
  F (T, NUMBER, dl, N_("Lighter by"), .help = N_("Difference of lightness, second less first.")) \
  F (T, NUMBER, dc, N_("More vivid by"), .help = N_("Difference of chroma, second less first.")) \
  F (T, NUMBER, dh, N_("Hue turned by"), .help = N_("Difference of hue as a length, from the first to the second."))

BB_DECLARE_TABLE (BbColourDifferenceOut, bb_colour_difference_out, BB_COLOUR_DIFFERENCE_OUT_FIELDS);

BB_DECLARE_CALCULATOR (ColourDifference, colour_difference);

G_END_DECLS
