/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib/gi18n-lib.h>

#include "bb-calculator.h"
#include "bb-grade.h"
#include "bb-lab.h"

G_BEGIN_DECLS

/*
 * The grade of change in colour from two measurements, before and after the test, by ISO 105-A05. CIELAB in, no
 * units. de_f is the standard's own difference, gsc the rating by its formula, never below 1:
 *
 *     gsc = 5 − de_f / 1.7              up to de_f = 3.4
 *     gsc = 5 − log2 (de_f / 0.85)      beyond
 *
 * The grade is read from the classes of de_f and not by rounding gsc: the two can differ beside a limit. The
 * hue difference is signed, as the tested hue lies from the original's. A class includes its lower limit; a de_f
 * less than 1e-9 short of a limit counts as on it, because decimal colours don't subtract exactly. The hue of an
 * exactly neutral colour counts as 0°.
 *
 * It supports, and does not replace, a trained eye under standard light. A scan needs a fixed set-up and a
 * patch beside the specimen that shows drift.
 *
 * Assumes that both measurements were taken the same way: instrument, illuminant and observer.
 * Refused: L* outside 0 to 150, a* or b* beyond ±500, lists of other than three numbers.
 * Source: ISO 105-A05:1996, formulas and classes as four independent programs give them; the standard itself was
 * not seen. The nine steps of ISO 105-A02 come out at their own grades.
 */

#define BB_FASTNESS_CHANGE_IN_FIELDS(F, T) \
  F (T, NUMBERS, lab_original, N_("Before"), .help = N_("L*, a*, b* before the test; L* from 0 to 150."), \
     .limits = BB_LAB_LIMITS, .count = BB_LAB_COUNT, .required = TRUE) \
  F (T, NUMBERS, lab_tested, N_("After"), .help = N_("L*, a*, b* after the test; L* from 0 to 150."), \
     .limits = BB_LAB_LIMITS, .count = BB_LAB_COUNT, .required = TRUE)

BB_DECLARE_TABLE (BbFastnessChangeIn, bb_fastness_change_in, BB_FASTNESS_CHANGE_IN_FIELDS);

#define BB_FASTNESS_CHANGE_OUT_FIELDS(F, T) \
  F (T, NUMBER, de_f, N_("ΔEF"), .help = N_("The standard's own colour difference.")) \
  F (T, NUMBER, gsc, N_("Grey-scale rating"), .help = N_("The rating by formula, from 5 down to 1.")) \
  F (T, CHOICE, grade, N_("Grade of change"), .help = N_("The grey-scale grade in half steps."), \
     .choices = &bb_grade_choices)

BB_DECLARE_TABLE (BbFastnessChangeOut, bb_fastness_change_out, BB_FASTNESS_CHANGE_OUT_FIELDS);

BB_DECLARE_CALCULATOR (FastnessChange, fastness_change);

G_END_DECLS
