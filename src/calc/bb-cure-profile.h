/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib/gi18n-lib.h>

#include "bb-calculator.h"

G_BEGIN_DECLS

/*
 * What a probe's log on the print says about its cure: the time at the reference temperature that would have done
 * the same. Temperatures and z in °C, times in s.
 *
 *     rate         = 10^((c − reference_c) / z_c), and 0 where c is below credit_above_c
 *     equivalent_s = ∫ rate dt, by the trapezoid rule on the rate at the samples
 *
 * The crossing of credit_above_c between two samples is not interpolated: the rate goes from 0 at the one to its
 * full value at the other. fraction_of_required = equivalent_s / required_s; cured is equivalent_s ≥ required_s.
 *
 * Between samples the temperature is taken as a straight line for the two clocks: seconds_above_reference is the
 * time at reference_c or hotter, so that a hold at exactly the reference counts; over_limit_s the time hotter than
 * limit_c, so that a hold at exactly the limit does not. over_limit_s is null without limit_c.
 *
 * The log may come in any order: it is sorted by time. What it was like is said in `warnings`:
 *     unsorted   times did not rise through the list
 *     repeated   a sample was there twice, with one temperature; it counts once
 *     gap        longest_gap_s is more than three times the middle (median) interval of the log: the probe may have
 *                missed what happened there (the program's own rule, no source)
 *
 * z_c is the rise that speeds the cure tenfold: the shop's own finding or the ink maker's figure. There is no default.
 *
 * Assumptions: one z over the whole log, and samples close enough for the trapezoid: on a straight rise of one z
 * between two samples it gives 41 % too much, of a quarter z 3 %, of a tenth 0.4 %.
 * Refused: one time with two temperatures; a log of no duration; a rate too large for a number.
 * Source: the general method of thermal process calculation, equivalent time by z-value
 * (tests/reference/process-lethality.csv).
 */

#define BB_PROBE_SAMPLE_FIELDS(F, T) \
  F (T, NUMBER, t_s, N_("Time"), .help = N_("By any clock: only differences count."), \
     .quantity = BB_QUANTITY_TIME, .limits = BB_BETWEEN (-1e10, 1e10), .required = TRUE) \
  F (T, NUMBER, c, N_("Temperature"), .help = N_("Temperature of the print."), \
     .quantity = BB_QUANTITY_TEMPERATURE, .limits = BB_BETWEEN (-50, 500), .required = TRUE)

BB_DECLARE_TABLE (BbProbeSample, bb_probe_sample, BB_PROBE_SAMPLE_FIELDS);

#define BB_CURE_PROFILE_IN_FIELDS(F, T) \
  F (T, LIST, samples, N_("Log"), .help = N_("The log of a probe on the print."), \
     .item = &bb_probe_sample_table, .count = BB_BETWEEN (2, 10000), .required = TRUE) \
  F (T, NUMBER, reference_c, N_("Reference"), .help = N_("The temperature that the required time is given for."), \
     .quantity = BB_QUANTITY_TEMPERATURE, .limits = BB_BETWEEN (-50, 500), .required = TRUE) \
  F (T, NUMBER, required_s, N_("Required"), .help = N_("The time that the ink needs at the reference temperature."), \
     .quantity = BB_QUANTITY_TIME, .limits = BB_BETWEEN (0.001, 1e6), .required = TRUE) \
  F (T, NUMBER, z_c, N_("z"), \
     .help = N_("The rise that speeds the cure tenfold: your own finding or the ink maker's figure."), \
     .quantity = BB_QUANTITY_TEMPERATURE_DIFFERENCE, .limits = BB_BETWEEN (0.1, 1000), .required = TRUE) \
  F (T, NUMBER, credit_above_c, N_("Credit from"), .help = N_("Below this temperature nothing cures."), \
     .quantity = BB_QUANTITY_TEMPERATURE, .limits = BB_BETWEEN (-50, 500)) \
  F (T, NUMBER, limit_c, N_("Limit"), .help = N_("The garment should get no hotter than this."), \
     .quantity = BB_QUANTITY_TEMPERATURE, .limits = BB_BETWEEN (-50, 500))

BB_DECLARE_TABLE (BbCureProfileIn, bb_cure_profile_in, BB_CURE_PROFILE_IN_FIELDS);

#define BB_CURE_PROFILE_OUT_FIELDS(F, T) \
  F (T, NUMBER, peak_c, N_("Peak"), .help = N_("The hottest sample."), .quantity = BB_QUANTITY_TEMPERATURE) \
  F (T, NUMBER, seconds_above_reference, N_("At reference"), \
     .help = N_("Time at the reference temperature or hotter."), .quantity = BB_QUANTITY_TIME) \
  F (T, NUMBER, equivalent_s, N_("Equivalent time"), \
     .help = N_("Time at the reference temperature that would have cured as much."), .quantity = BB_QUANTITY_TIME) \
  F (T, NUMBER, fraction_of_required, N_("Share of required"), .help = N_("Equivalent time over required time."), \
     .quantity = BB_QUANTITY_FRACTION) \
  F (T, FLAG, cured, N_("Cured"), .help = N_("The equivalent time is at least the required time.")) \
  F (T, NUMBER, over_limit_s, N_("Over limit"), .help = N_("Time hotter than the limit."), \
     .quantity = BB_QUANTITY_TIME) \
  F (T, NUMBER, longest_gap_s, N_("Longest gap"), .help = N_("The longest time between two samples."), \
     .quantity = BB_QUANTITY_TIME) \
  F (T, TEXTS, warnings, N_("Warnings"), .help = N_("What was wrong with the log: unsorted, repeated, gap."))

BB_DECLARE_TABLE (BbCureProfileOut, bb_cure_profile_out, BB_CURE_PROFILE_OUT_FIELDS);

BB_DECLARE_CALCULATOR (CureProfile, cure_profile);

G_END_DECLS
