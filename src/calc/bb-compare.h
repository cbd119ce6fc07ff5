/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib/gi18n-lib.h>

#include "bb-calculator.h"

G_BEGIN_DECLS

/*
 * Whether two recipes pass at different rates, by Fisher's exact test. Counts in, fractions out.
 *
 * p_value is two-sided: the probability, with both rates the same and all totals as they are, of a split that is
 * no more probable than the one seen. Probabilities equal to within 1e-7 of themselves count as equal, as
 * is usual, because they come from rounded logarithms. difference is the first rate less the second.
 *
 * Assumes specimens made alike within each recipe and washed apart.
 * Refused: passed above tested, tested 0 or above 100,000.
 * Source: Fisher 1935, by GSL's hypergeometric distribution.
 */

#define BB_COMPARE_IN_FIELDS(F, T) \
  F (T, INTEGER, passed_1, N_("First passed"), .help = N_("Specimens of the first recipe that passed."), \
     .limits = BB_BETWEEN (0, 100000), .required = TRUE) \
  F (T, INTEGER, tested_1, N_("First tested"), .help = N_("Specimens of the first recipe that were tested."), \
     .limits = BB_BETWEEN (1, 100000), .required = TRUE) \
  F (T, INTEGER, passed_2, N_("Second passed"), .help = N_("Specimens of the second recipe that passed."), \
     .limits = BB_BETWEEN (0, 100000), .required = TRUE) \
  F (T, INTEGER, tested_2, N_("Second tested"), .help = N_("Specimens of the second recipe that were tested."), \
     .limits = BB_BETWEEN (1, 100000), .required = TRUE)

BB_DECLARE_TABLE (BbCompareIn, bb_compare_in, BB_COMPARE_IN_FIELDS);

#define BB_COMPARE_OUT_FIELDS(F, T) \
  F (T, NUMBER, p_value, N_("p"), \
     .help = N_("How often so uneven a split comes by chance where both recipes are equally good."), \
     .quantity = BB_QUANTITY_FRACTION) \
  F (T, NUMBER, difference, N_("Difference"), .help = N_("The first pass rate less the second."), \
     .quantity = BB_QUANTITY_FRACTION)

BB_DECLARE_TABLE (BbCompareOut, bb_compare_out, BB_COMPARE_OUT_FIELDS);

BB_DECLARE_CALCULATOR (Compare, compare);

G_END_DECLS
