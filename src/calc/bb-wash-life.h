/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bb-calculator.h"
#include "bb-survival.h"
#include "bb-weibull.h"

G_BEGIN_DECLS

/*
 * How many washes prints last, from specimens that were read now and then. Cycles in and out, whole or not.
 *
 * A specimen's life ended after last_good_cycles and no later than first_bad_cycles; 0 is a specimen that was
 * never read as good, null one that never failed. Two estimates of the share that survives:
 *
 * steps: Kaplan and Meier's, one step for each number of cycles at which specimens failed, with Greenwood's
 * variance and 95 % intervals on the log-log scale. A failure counts at first_bad_cycles, a specimen that never
 * failed leaves at last_good_cycles and is at risk there. low and high are null where nobody survives; there are
 * no steps where nothing failed.
 *
 * shape, scale, median_cycles, survival_at: a Weibull distribution fitted by maximum likelihood to the intervals
 * (last_good, first_bad], S (t) = exp (−(t / scale)^shape). survival_at is for at_cycles, null without it. Where the
 * readings carry no such fit all four are null, and reason says why: nothing failed; nothing was ever read as good;
 * every failure was seen after the last good reading of every specimen, so that all lives may be the
 * same; or later readings show no more failures than early ones. With a fit, reason is null.
 *
 * Assumes specimens made alike and washed apart, and that one that left the test early did so for reasons that
 * have nothing to do with its print.
 * Refused: no specimens or more than 10,000, cycles below 0 or above a million, a first_bad_cycles that is not
 * above last_good_cycles.
 * Source: Kaplan and Meier 1958, Greenwood 1926, Kalbfleisch and Prentice 1980 for the interval; the likelihood
 * of interval-censored lives.
 */

#define BB_WASH_LIFE_SPECIMEN_FIELDS(F, T) \
  F (T, NUMBER, last_good_cycles, N_("Last good"), .help = N_("The last reading at which it passed; 0 for none."), \
     .limits = BB_BETWEEN (0, 1000000), .required = TRUE) \
  F (T, NUMBER, first_bad_cycles, N_("First bad"), \
     .help = N_("The first reading at which it failed, after the last good one; empty for none."), \
     .limits = BB_ABOVE_TO (0, 1000000))

BB_DECLARE_TABLE (BbWashLifeSpecimen, bb_wash_life_specimen, BB_WASH_LIFE_SPECIMEN_FIELDS);

#define BB_WASH_LIFE_IN_FIELDS(F, T) \
  F (T, LIST, specimens, N_("Specimens"), .help = N_("Between which readings each specimen failed."), \
     .item = &bb_wash_life_specimen_table, .count = BB_BETWEEN (1, 10000), .required = TRUE) \
  F (T, NUMBER, at_cycles, N_("At"), .help = N_("The number of cycles to foretell survival for."), \
     .limits = BB_BETWEEN (0, 1000000))

BB_DECLARE_TABLE (BbWashLifeIn, bb_wash_life_in, BB_WASH_LIFE_IN_FIELDS);

#define BB_WASH_LIFE_OUT_FIELDS(F, T) \
  F (T, LIST, steps, N_("Steps"), .help = N_("Survival after each number of cycles at which specimens failed."), \
     .item = &bb_survival_step_table) \
  F (T, NUMBER, shape, N_("Shape"), .help = N_("Above 1 prints wear out; at 1 they fail at random.")) \
  F (T, NUMBER, scale, N_("Scale"), .help = N_("The number of cycles that 37 % survive.")) \
  F (T, NUMBER, median_cycles, N_("Median life"), .help = N_("The number of cycles that half survive.")) \
  F (T, NUMBER, survival_at, N_("Survival"), .help = N_("The share that survives the number of cycles asked for."), \
     .quantity = BB_QUANTITY_FRACTION) \
  F (T, CHOICE, reason, N_("Reason"), .help = N_("Why there is no fitted distribution."), \
     .choices = &bb_weibull_gap_choices)

BB_DECLARE_TABLE (BbWashLifeOut, bb_wash_life_out, BB_WASH_LIFE_OUT_FIELDS);

BB_DECLARE_CALCULATOR (WashLife, wash_life);

G_END_DECLS
