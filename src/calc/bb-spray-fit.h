/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bb-calculator.h"
#include "bb-mixture.h"

G_BEGIN_DECLS

/*
 * The setting of a sprayer that gives a wanted laydown, from test sprays at several settings.
 * Laydown in g/m², settings in whatever the machine's dial says.
 *
 * A straight line laydown = intercept + slope · setting by ordinary least squares, with the
 * standard errors of both, the residual standard deviation (n − 2 degrees of freedom) and R² =
 * 1 − SS_residual / SS_total. setting = (target − intercept) / slope. setting_low and
 * setting_high are Fieller's interval at the two-sided confidence: all settings whose mean
 * laydown, by the line, the data do not tell from the target. It is an interval for the line
 * and not for a single garment, because the target is a figure and not a measurement.
 * extrapolated tells that the setting lies outside the settings that were tried.
 *
 * null: the interval where the slope is not significant at that confidence, since then no
 * setting is excluded; standard errors, residual_sd and the interval with two points, which
 * leave no degree of freedom; r_squared where all laydowns are the same; setting and
 * extrapolated where the slope is 0, by decimals (bb-line.h).
 * Assumes errors in the laydown only, independent, with the same spread at every setting.
 * Refused: fewer than two points; points all at one setting, or so near that
 * squares of their distances vanish; each key out of its limits.
 * Source: least squares and Student's t by GSL; E. C. Fieller, "Some problems in interval
 * estimation", Journal of the Royal Statistical Society B 16 (1954) 175–185 (citation from
 * memory; the interval is derived in bb-spray-fit.c).
 */

#define BB_SPRAY_POINT_FIELDS(F, T) \
  F (T, NUMBER, setting, N_("Setting"), .help = N_("What the machine was set to."), \
     .limits = BB_BETWEEN (-1e9, 1e9), .required = TRUE) \
  F (T, NUMBER, laydown_g_per_m2, N_("Laydown"), .help = N_("What a weigh-in gave."), \
     .quantity = BB_QUANTITY_MASS_PER_AREA, .limits = BB_BETWEEN (0, 10000), .required = TRUE)

BB_DECLARE_TABLE (BbSprayPoint, bb_spray_point, BB_SPRAY_POINT_FIELDS);

#define BB_SPRAY_FIT_IN_FIELDS(F, T) \
  F (T, LIST, points, N_("Test sprays"), \
     .help = N_("One for each garment that was sprayed and weighed."), \
     .item = &bb_spray_point_table, .count = BB_BETWEEN (2, 10000), .required = TRUE) \
  F (T, NUMBER, target_g_per_m2, N_("Target"), .help = N_("The laydown that is wanted."), \
     .quantity = BB_QUANTITY_MASS_PER_AREA, .limits = BB_LIMITS_LAYDOWN, .required = TRUE) \
  F (T, NUMBER, confidence, N_("Confidence"), \
     .help = N_("Of the interval for the setting, two-sided."), \
     .quantity = BB_QUANTITY_FRACTION, .limits = BB_INSIDE (0, 1), \
     .fallback = BB_DEFAULT (0.95))

BB_DECLARE_TABLE (BbSprayFitIn, bb_spray_fit_in, BB_SPRAY_FIT_IN_FIELDS);

#define BB_SPRAY_FIT_OUT_FIELDS(F, T) \
  F (T, NUMBER, slope, N_("Slope"), \
     .help = N_("Laydown in g/m² for one more step of the setting.")) \
  F (T, NUMBER, intercept, N_("Intercept"), \
     .help = N_("Laydown in g/m² that the line has at setting 0.")) \
  F (T, NUMBER, slope_se, N_("Standard error of the slope"), \
     .help = N_("How well the points fix the slope.")) \
  F (T, NUMBER, intercept_se, N_("Standard error of the intercept"), \
     .help = N_("How well the points fix the intercept.")) \
  F (T, NUMBER, residual_sd, N_("Scatter"), \
     .help = N_("Standard deviation of the points about the line."), \
     .quantity = BB_QUANTITY_MASS_PER_AREA) \
  F (T, NUMBER, r_squared, N_("R²"), \
     .help = N_("Share of the laydown's variation that the line explains."), \
     .quantity = BB_QUANTITY_FRACTION) \
  F (T, NUMBER, setting, N_("Setting"), .help = N_("What to set for the target.")) \
  F (T, NUMBER, setting_low, N_("Setting at least"), \
     .help = N_("Lower end of the setting's confidence interval.")) \
  F (T, NUMBER, setting_high, N_("Setting at most"), \
     .help = N_("Upper end of the setting's confidence interval.")) \
  F (T, FLAG, extrapolated, N_("Extrapolated"), \
     .help = N_("The setting lies outside those that were tried."))

BB_DECLARE_TABLE (BbSprayFitOut, bb_spray_fit_out, BB_SPRAY_FIT_OUT_FIELDS);

BB_DECLARE_CALCULATOR (SprayFit, spray_fit);

G_END_DECLS
