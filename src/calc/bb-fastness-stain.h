/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib/gi18n-lib.h>

#include "bb-calculator.h"
#include "bb-grade.h"
#include "bb-lab.h"

G_BEGIN_DECLS

/*
 * The grade of staining of white fabric washed beside the print, from two measurements of that fabric, by
 * ISO 105-A04. CIELAB in, no units:
 *
 *     de_gs = ΔE*ab − 0.4 √(ΔE*ab² − ΔL*²)
 *     ssr   = 6.1 − 1.45 ln de_gs, or where that is above 4, 5 − 0.23 de_gs
 *
 * ssr is given as computed, and may fall below 1; the grade is read from ssr rounded to two decimals, half away
 * from zero. Where the branches of ssr meet (de_gs near 4.26) the standard's formula itself steps by 0.02.
 *
 * It supports, and does not replace, a trained eye under standard light. A scan needs a fixed set-up and a
 * patch beside the specimen that shows drift.
 *
 * Assumes that both measurements were taken the same way: instrument, illuminant and observer.
 * Refused: L* outside 0 to 150, a* or b* beyond ±500, lists of other than three numbers.
 * Source: ISO 105-A04:1989, formula and classes as three independent programs give them; the standard itself was
 * not seen. The nine steps of ISO 105-A03 come out at their own grades.
 */

#define BB_FASTNESS_STAIN_IN_FIELDS(F, T) \
  F (T, NUMBERS, lab_unstained, N_("Before"), \
     .help = N_("L*, a*, b* of the white fabric before the test; L* from 0 to 150."), \
     .limits = BB_LAB_LIMITS, .count = BB_LAB_COUNT, .required = TRUE) \
  F (T, NUMBERS, lab_stained, N_("After"), \
     .help = N_("L*, a*, b* of the white fabric after the test; L* from 0 to 150."), \
     .limits = BB_LAB_LIMITS, .count = BB_LAB_COUNT, .required = TRUE)

BB_DECLARE_TABLE (BbFastnessStainIn, bb_fastness_stain_in, BB_FASTNESS_STAIN_IN_FIELDS);

#define BB_FASTNESS_STAIN_OUT_FIELDS(F, T) \
  F (T, NUMBER, de_gs, N_("ΔEGS"), .help = N_("The standard's own colour difference.")) \
  F (T, NUMBER, ssr, N_("Staining rating"), .help = N_("The rating by formula, 5 where nothing stained.")) \
  F (T, CHOICE, grade, N_("Grade of staining"), .help = N_("The grey-scale grade in half steps."), \
     .choices = &bb_grade_choices)

BB_DECLARE_TABLE (BbFastnessStainOut, bb_fastness_stain_out, BB_FASTNESS_STAIN_OUT_FIELDS);

BB_DECLARE_CALCULATOR (FastnessStain, fastness_stain);

G_END_DECLS
