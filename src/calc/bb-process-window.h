/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bb-calculator.h"
#include "bb-factor.h"
#include "bb-grade.h"

G_BEGIN_DECLS

/*
 * Which settings of one or two factors give the grade that is required, and the cheapest of them. Settings in their
 * own units; grades in half steps as numbers, 4-5 being 4.5; hand is the shop's own rating, more being better.
 *
 * A least squares surface is fitted to the grades of the runs: `linear` is a constant and each factor,
 * `quadratic` also each square and the product of the two. coefficients come in that order, for settings as entered
 * and not coded; terms are named "intercept", KEY, "KEY^2", "KEY*KEY". residual_sd, r_squared and
 * degrees_of_freedom (runs less terms) are of the same fit. A residual below 1e-12 of the grades counts as none.
 *
 * grid is the predicted grade and its one-sided lower confidence bound, ŷ − t s √(x' (X'X)⁻¹ x) with Student's t at
 * the confidence given: the mean of many garments at that setting is above it. It covers low to high of each
 * factor evenly, 41 places of one factor or 21 by 21 of two, the first factor changing slowest. Predictions are not
 * cut at grade 5 or 1.
 *
 * recommended is the setting from low to high with the least Σ cost_per_unit · x whose lower bound is at least
 * required_grade, and, where required_hand is given, whose lower bound of hand, by the same model from the runs
 * that have it, is at least that. Of equally cheap settings it is the one with the highest bound. predicted and
 * lower are of the grade.
 *
 * next are three more specimens, of the places of the grid, that would narrow the bound most at the recommended
 * setting, one after the other; where none is recommended, at the place of the grid with the highest bound, or
 * without one the highest prediction. Where hand is required, it is the bound that is closer to failing.
 *
 * null, with reason: everything where the runs are fewer than the terms or don't tell them apart; bounds,
 * standard errors, residual_sd and recommended where runs are as many as terms; recommended alone where no setting
 * meets what is required or the runs that have a hand don't carry the model. r_squared is null
 * where all grades are the same. With a recommendation, reason is null.
 *
 * Assumes runs in random order, grades of equal spread everywhere and a surface of that form between low and high.
 * Refused: no or more than two factors, two of the same key, low not below high, runs with other than
 * one setting for each factor, no runs or more than 10,000, settings and costs beyond a million, a confidence not
 * inside 0 to 1.
 * Source: linear regression as in any textbook, by GSL.
 */

#define BB_WINDOW_MODEL_CHOICES(C) \
  C (BB_WINDOW_LINEAR, "linear", N_("Straight")) \
  C (BB_WINDOW_QUADRATIC, "quadratic", N_("Curved"))

BB_DECLARE_CHOICES (BbWindowModel, bb_window_model, BB_WINDOW_MODEL_CHOICES);

#define BB_WINDOW_GAP_CHOICES(C) \
  C (BB_WINDOW_TOO_FEW_RUNS, "too-few-runs", N_("There are fewer runs than the model has terms.")) \
  C (BB_WINDOW_COLLINEAR, "collinear", N_("The settings that were run do not tell the model's terms apart.")) \
  C (BB_WINDOW_NO_FREEDOM, "no-degrees-of-freedom", \
     N_("There are as many runs as terms: nothing is left to judge the spread by.")) \
  C (BB_WINDOW_NO_HAND, "hand-not-carried", N_("Too few runs have a rating of hand for the model.")) \
  C (BB_WINDOW_NONE_MEETS, "none-meets", N_("No setting between the limits meets what is required."))

/* Why no setting is recommended. */
BB_DECLARE_CHOICES (BbWindowGap, bb_window_gap, BB_WINDOW_GAP_CHOICES);

#define BB_WINDOW_FACTOR_FIELDS(F, T) \
  BB_FACTOR_FIELDS (F, T) \
  F (T, NUMBER, cost_per_unit, N_("Cost of a unit"), \
     .help = N_("What one unit more of it costs, in money or time; below 0 where more is cheaper."), \
     .limits = BB_BETWEEN (-1e6, 1e6), .required = TRUE)

BB_DECLARE_TABLE (BbWindowFactor, bb_window_factor, BB_WINDOW_FACTOR_FIELDS);

#define BB_WINDOW_RUN_FIELDS(F, T) \
  F (T, NUMBERS, x, N_("Settings"), .help = N_("The setting of each factor, in their order."), \
     .limits = BB_BETWEEN (-1e6, 1e6), .count = BB_BETWEEN (1, 2), .required = TRUE) \
  F (T, CHOICE, grade, N_("Grade"), .help = N_("The grade of the specimen after its washes."), \
     .choices = &bb_grade_choices, .required = TRUE) \
  F (T, NUMBER, hand, N_("Hand"), .help = N_("How it feels, in the shop's own rating, more being better."), \
     .limits = BB_BETWEEN (0, 100))

BB_DECLARE_TABLE (BbWindowRun, bb_window_run, BB_WINDOW_RUN_FIELDS);

#define BB_PROCESS_WINDOW_IN_FIELDS(F, T) \
  F (T, LIST, factors, N_("Factors"), .help = N_("What was varied, and between which limits to look."), \
     .item = &bb_window_factor_table, .count = BB_BETWEEN (1, 2), .required = TRUE) \
  F (T, LIST, runs, N_("Runs"), .help = N_("What came of each specimen."), .item = &bb_window_run_table, \
     .count = BB_BETWEEN (1, 10000), .required = TRUE) \
  F (T, CHOICE, required_grade, N_("Grade required"), .help = N_("The grade that the mean has to reach."), \
     .choices = &bb_grade_choices, .required = TRUE) \
  F (T, NUMBER, required_hand, N_("Hand required"), .help = N_("The rating of hand that the mean has to reach."), \
     .limits = BB_BETWEEN (0, 100)) \
  F (T, NUMBER, confidence, N_("Confidence"), .help = N_("How sure the lower bounds have to be."), \
     .quantity = BB_QUANTITY_FRACTION, .limits = BB_INSIDE (0, 1), .fallback = BB_DEFAULT (0.9)) \
  F (T, CHOICE, model, N_("Model"), .help = N_("Whether grades follow a straight or a curved surface."), \
     .choices = &bb_window_model_choices, .required = TRUE)

BB_DECLARE_TABLE (BbProcessWindowIn, bb_process_window_in, BB_PROCESS_WINDOW_IN_FIELDS);

#define BB_WINDOW_COEFFICIENT_FIELDS(F, T) \
  F (T, TEXT, term, N_("Term"), .help = N_("What it multiplies."), .limits = BB_BETWEEN (1, 100)) \
  F (T, NUMBER, value, N_("Coefficient"), .help = N_("By how much the grade changes for one unit of the term.")) \
  F (T, NUMBER, se, N_("Standard error"), .help = N_("How uncertain the coefficient is."))

BB_DECLARE_TABLE (BbWindowCoefficient, bb_window_coefficient, BB_WINDOW_COEFFICIENT_FIELDS);

#define BB_WINDOW_PLACE_FIELDS(F, T) \
  F (T, NUMBERS, x, N_("Settings"), .help = N_("The setting of each factor, in their order.")) \
  F (T, NUMBER, predicted, N_("Grade"), .help = N_("The mean grade to expect, as a number.")) \
  F (T, NUMBER, lower, N_("At least"), .help = N_("What the mean grade is above, at the confidence given."))

BB_DECLARE_TABLE (BbWindowPlace, bb_window_place, BB_WINDOW_PLACE_FIELDS);

#define BB_WINDOW_RECOMMENDATION_FIELDS(F, T) \
  BB_WINDOW_PLACE_FIELDS (F, T) \
  F (T, NUMBER, cost, N_("Cost"), .help = N_("What the setting costs."))

BB_DECLARE_TABLE (BbWindowRecommendation, bb_window_recommendation, BB_WINDOW_RECOMMENDATION_FIELDS);

#define BB_WINDOW_SPECIMEN_FIELDS(F, T) \
  F (T, NUMBERS, x, N_("Settings"), .help = N_("The setting of each factor, in their order."))

BB_DECLARE_TABLE (BbWindowSpecimen, bb_window_specimen, BB_WINDOW_SPECIMEN_FIELDS);

#define BB_PROCESS_WINDOW_OUT_FIELDS(F, T) \
  F (T, LIST, coefficients, N_("Coefficients"), .help = N_("The fitted surface."), \
     .item = &bb_window_coefficient_table, .absent_is_null = TRUE) \
  F (T, NUMBER, residual_sd, N_("Residual"), .help = N_("Standard deviation of what the surface leaves unexplained.")) \
  F (T, NUMBER, r_squared, N_("R²"), .help = N_("The share of the variance that the surface explains."), \
     .quantity = BB_QUANTITY_FRACTION) \
  F (T, INTEGER, degrees_of_freedom, N_("Degrees of freedom"), .help = N_("Runs beyond the terms of the model.")) \
  F (T, LIST, grid, N_("Grid"), .help = N_("The grade to expect over the whole window."), \
     .item = &bb_window_place_table, .absent_is_null = TRUE) \
  F (T, OBJECT, recommended, N_("Recommended"), .help = N_("The cheapest setting that meets what is required."), \
     .item = &bb_window_recommendation_table) \
  F (T, LIST, next, N_("Next specimens"), .help = N_("Specimens that would make the recommendation surer."), \
     .item = &bb_window_specimen_table, .absent_is_null = TRUE) \
  F (T, CHOICE, reason, N_("Reason"), .help = N_("Why no setting is recommended."), \
     .choices = &bb_window_gap_choices)

BB_DECLARE_TABLE (BbProcessWindowOut, bb_process_window_out, BB_PROCESS_WINDOW_OUT_FIELDS);

BB_DECLARE_CALCULATOR (ProcessWindow, process_window);

G_END_DECLS
