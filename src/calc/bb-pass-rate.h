/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib/gi18n-lib.h>

#include "bb-calculator.h"

G_BEGIN_DECLS

/*
 * What share of garments would pass, from how many specimens did. Counts in, fractions out.
 *
 * lower and upper are the exact two-sided interval (Clopper and Pearson) at the confidence given, half of the
 * doubt on each side also where every specimen passed or none did; one_sided_lower puts all of the doubt below:
 * "with 90 % confidence at least …". needed_without_failure is the success run: the specimens that would have
 * to pass without one failure to show wanted_rate at that confidence, ⌈ln (1 − C) / ln R⌉. A quotient less than
 * 1e-12 of itself above a whole number counts as that number, because 1 − C is seldom exact. null where
 * no wanted_rate is given.
 *
 * Assumes specimens made alike and washed apart, each with the same chance.
 * Refused: passed above tested, tested 0 or above a million, a confidence or wanted rate not inside 0 to 1.
 * Source: Clopper and Pearson 1934, by GSL's beta distribution. Its quantile function fails for some thousands of
 * specimens and more, so the quantile is found as a root of its distribution function, which does not.
 */

#define BB_PASS_RATE_IN_FIELDS(F, T) \
  F (T, INTEGER, passed, N_("Passed"), .help = N_("Specimens that passed."), \
     .limits = BB_BETWEEN (0, 1000000), .required = TRUE) \
  F (T, INTEGER, tested, N_("Tested"), .help = N_("Specimens that were tested to the end."), \
     .limits = BB_BETWEEN (1, 1000000), .required = TRUE) \
  F (T, NUMBER, confidence, N_("Confidence"), .help = N_("How sure the bounds have to be."), \
     .quantity = BB_QUANTITY_FRACTION, .limits = BB_INSIDE (0, 1), .fallback = BB_DEFAULT (0.9)) \
  F (T, NUMBER, wanted_rate, N_("Wanted rate"), .help = N_("The share that has to pass, to plan how many to test."), \
     .quantity = BB_QUANTITY_FRACTION, .limits = BB_INSIDE (0, 1))

BB_DECLARE_TABLE (BbPassRateIn, bb_pass_rate_in, BB_PASS_RATE_IN_FIELDS);

#define BB_PASS_RATE_OUT_FIELDS(F, T) \
  F (T, NUMBER, rate, N_("Pass rate"), .help = N_("The share of specimens that passed."), \
     .quantity = BB_QUANTITY_FRACTION) \
  F (T, NUMBER, lower, N_("Lower bound"), .help = N_("Two-sided: the rate may be as low as this."), \
     .quantity = BB_QUANTITY_FRACTION) \
  F (T, NUMBER, upper, N_("Upper bound"), .help = N_("Two-sided: the rate may be as high as this."), \
     .quantity = BB_QUANTITY_FRACTION) \
  F (T, NUMBER, one_sided_lower, N_("At least"), .help = N_("One-sided: the rate is at least this."), \
     .quantity = BB_QUANTITY_FRACTION) \
  F (T, INTEGER, needed_without_failure, N_("Needed"), \
     .help = N_("How many have to pass without one failure to show the wanted rate."))

BB_DECLARE_TABLE (BbPassRateOut, bb_pass_rate_out, BB_PASS_RATE_OUT_FIELDS);

BB_DECLARE_CALCULATOR (PassRate, pass_rate);

gboolean bb_pass_rate_check_counts (const char *key,
                                    gint64      passed,
                                    gint64      tested,
                                    GError    **error);

G_END_DECLS
