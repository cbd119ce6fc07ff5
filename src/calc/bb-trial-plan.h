/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bb-calculator.h"
#include "bb-factor.h"

G_BEGIN_DECLS

/*
 * The specimens of a trial: what each is made with, in which order, and what is written on it. Settings in their
 * own units.
 *
 * A `ladder` steps one factor from low to high in levels equal steps. A `factorial` takes each factor at low and at
 * high, in every combination, and adds centre_points specimens at the middle of all, which show curvature and
 * spread. A `grid`, the default, takes every combination of all levels. Each setting is made replicates times; centre
 * points are counted as they are.
 *
 * specimens are listed by setting, the first factor changing slowest, replicates together, centre points last.
 * order says which is made first, from 1: all specimens in one random order, so that what drifts during a trial
 * does not pass for an effect. The order comes from seed alone, by GSL's generator mt19937 and its shuffle, and is
 * the same on every machine; a seed of 0 is the same as 4357.
 * label is short, says nothing of the setting, so that whoever grades the specimen doesn't know it, and runs with
 * the order. It has no letters or digits that are taken for each other, and no vowels.
 *
 * Assumes that nothing but the factors is changed during the trial.
 * Refused: a ladder of more than one factor, a factorial with other than 2 levels, centre points in other than
 * a factorial, two factors of the same key, low not below high, more than 10,000 specimens.
 * Source: plans as in any textbook on the design of experiments; Matsumoto and Nishimura 1998 for the generator.
 */

#define BB_TRIAL_DESIGN_CHOICES(C) \
  C (BB_TRIAL_LADDER, "ladder", N_("Ladder")) \
  C (BB_TRIAL_FACTORIAL, "factorial", N_("Two-level factorial")) \
  C (BB_TRIAL_GRID, "grid", N_("Grid"))

BB_DECLARE_CHOICES (BbTrialDesign, bb_trial_design, BB_TRIAL_DESIGN_CHOICES);

#define BB_TRIAL_FACTOR_FIELDS(F, T) \
  BB_FACTOR_FIELDS (F, T) \
  F (T, INTEGER, levels, N_("Levels"), .help = N_("How many settings, low and high among them."), \
     .limits = BB_BETWEEN (2, 100), .fallback = BB_DEFAULT (2))

BB_DECLARE_TABLE (BbTrialFactor, bb_trial_factor, BB_TRIAL_FACTOR_FIELDS);

#define BB_TRIAL_PLAN_IN_FIELDS(F, T) \
  F (T, CHOICE, design, N_("Plan"), \
     .help = N_("How the settings are combined: a ladder of one factor, a factorial of two levels each, or a grid."), \
     .choices = &bb_trial_design_choices, .fallback = BB_DEFAULT (BB_TRIAL_GRID)) \
  F (T, LIST, factors, N_("Factors"), .help = N_("What is varied."), .item = &bb_trial_factor_table, \
     .count = BB_BETWEEN (1, 6), .required = TRUE) \
  F (T, INTEGER, centre_points, N_("Centre points"), \
     .help = N_("Specimens in the middle of a factorial; none in other plans."), \
     .limits = BB_BETWEEN (0, 100), .fallback = BB_DEFAULT (0)) \
  F (T, INTEGER, replicates, N_("Replicates"), \
     .help = N_("How many specimens are made at each setting; 10,000 in all at most."), \
     .limits = BB_BETWEEN (1, 100), .required = TRUE) \
  F (T, INTEGER, seed, N_("Seed"), .help = N_("Any number; the same one gives the same order again."), \
     .limits = BB_BETWEEN (0, 4294967295.0), .required = TRUE)

BB_DECLARE_TABLE (BbTrialPlanIn, bb_trial_plan_in, BB_TRIAL_PLAN_IN_FIELDS);

#define BB_TRIAL_SPECIMEN_FIELDS(F, T) \
  F (T, TEXT, label, N_("Label"), .help = N_("What to write on the specimen.")) \
  F (T, NUMBERS, x, N_("Settings"), .help = N_("The setting of each factor, in their order.")) \
  F (T, INTEGER, order, N_("Order"), .help = N_("When it is made, from 1."))

BB_DECLARE_TABLE (BbTrialSpecimen, bb_trial_specimen, BB_TRIAL_SPECIMEN_FIELDS);

#define BB_TRIAL_PLAN_OUT_FIELDS(F, T) \
  F (T, LIST, specimens, N_("Specimens"), .help = N_("What to make, by setting."), .item = &bb_trial_specimen_table)

BB_DECLARE_TABLE (BbTrialPlanOut, bb_trial_plan_out, BB_TRIAL_PLAN_OUT_FIELDS);

BB_DECLARE_CALCULATOR (TrialPlan, trial_plan);

G_END_DECLS
