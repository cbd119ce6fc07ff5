/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib/gi18n-lib.h>

#include "bb-calculator.h"

G_BEGIN_DECLS

/*
 * Shewhart's chart of individuals and moving ranges, in the unit of the values.
 *
 *     mean                = mean of the first n values
 *     moving_range_mean   = mean of the n − 1 differences between neighbours among them, without sign
 *     upper, lower limit  = mean ± 2.660 · moving_range_mean
 *     moving_range_limit  = 3.267 · moving_range_mean
 *
 * n is baseline_count, or all values where that is not given. Signals are looked for over all
 * values, those of the baseline too. `index` counts from 0 and names the value that completes
 * the pattern:
 *
 *     beyond-limit        the value is above the upper or below the lower limit
 *     range-beyond-limit  its distance from the value before is above the moving range's limit
 *     run-of-8            it and the 7 before it all lie on one side of the mean
 *     trend-of-6          it and the 5 before it all rise, or all fall
 *
 * The contract's "beyond a limit" is read as each of the three limits, with a word of its own
 * for the moving range. A pattern that goes on gives a signal at each further value. Lying on a
 * limit is not beyond it; lying on the mean, or standing still, ends a run. The lower limit is
 * not cut off at 0. Values nearer to a limit or the mean than a part in 10¹² count as on it.
 * Assumes values in the order of time, roughly normal, and not correlated.
 * Refused: fewer than two values; a baseline of more values than there are; each key out of its
 * limits.
 * Source: 2.660 and 3.267 are 3/d2 and D4 for samples of two, as tabled in ISO 7870-2 and in
 * handbooks (from memory; they follow from the normal distribution: 3·√π/2 = 2.6587, 1 +
 * 3·√(π/2 − 1) = 3.2665). The runs of 8 and 6 are those of the contract; standards and
 * handbooks differ between 7, 8 and 9 for the first (from memory).
 */

#define BB_CHART_RULE_CHOICES(C) \
  C (BB_CHART_BEYOND_LIMIT, "beyond-limit", N_("Beyond a limit")) \
  C (BB_CHART_RANGE_BEYOND_LIMIT, "range-beyond-limit", N_("A jump beyond the limit")) \
  C (BB_CHART_RUN_OF_8, "run-of-8", N_("Eight in a row on one side of the mean")) \
  C (BB_CHART_TREND_OF_6, "trend-of-6", N_("Six in a row rising or falling"))

BB_DECLARE_CHOICES (BbChartRule, bb_chart_rule, BB_CHART_RULE_CHOICES);

#define BB_CONTROL_CHART_IN_FIELDS(F, T) \
  F (T, NUMBERS, values, N_("Values"), \
     .help = N_("Single readings, in the order in which they were taken."), \
     .limits = BB_BETWEEN (-1e9, 1e9), .count = BB_BETWEEN (2, 10000), .required = TRUE) \
  F (T, INTEGER, baseline_count, N_("Baseline"), \
     .help = N_("How many of the first readings set the limits, no more than there are; empty for all."), \
     .limits = BB_BETWEEN (2, 10000))

BB_DECLARE_TABLE (BbControlChartIn, bb_control_chart_in, BB_CONTROL_CHART_IN_FIELDS);

#define BB_CHART_SIGNAL_FIELDS(F, T) \
  F (T, INTEGER, index, N_("Reading"), .help = N_("Which reading, counted from 0.")) \
  F (T, CHOICE, rule, N_("Rule"), .help = N_("What is unusual about it."), \
     .choices = &bb_chart_rule_choices)

BB_DECLARE_TABLE (BbChartSignal, bb_chart_signal, BB_CHART_SIGNAL_FIELDS);

#define BB_CONTROL_CHART_OUT_FIELDS(F, T) \
  F (T, NUMBER, mean, N_("Mean"), .help = N_("Mean of the baseline.")) \
  F (T, NUMBER, moving_range_mean, N_("Mean moving range"), \
     .help = N_("Mean distance between neighbours in the baseline.")) \
  F (T, NUMBER, upper_limit, N_("Upper limit"), \
     .help = N_("Upper control limit of single readings.")) \
  F (T, NUMBER, lower_limit, N_("Lower limit"), \
     .help = N_("Lower control limit of single readings.")) \
  F (T, NUMBER, moving_range_limit, N_("Limit of the moving range"), \
     .help = N_("Upper control limit of the distance between neighbours.")) \
  F (T, LIST, signals, N_("Signals"), \
     .help = N_("Readings that call for a look at the sprayer."), \
     .item = &bb_chart_signal_table)

BB_DECLARE_TABLE (BbControlChartOut, bb_control_chart_out, BB_CONTROL_CHART_OUT_FIELDS);

BB_DECLARE_CALCULATOR (ControlChart, control_chart);

G_END_DECLS
