/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/*
 * A straight line y = intercept + slope · x through points by ordinary least squares. Whatever units x and y have,
 * slope is in those of y for one of x, and residual_sd in those of y.
 *
 * A slope that the rounding of decimals to doubles can make by itself is 0: where settings lie evenly about 15.1 and
 * show equal results, the doubles nearest to them need not, and a line tilted by 1e-14 would reach anything, far away.
 *
 * Source: least squares by GSL.
 */

/**
 * BbLinePoints:
 * @x: (array): what was set
 * @y: (array): what came of it, with errors
 * @stride: doubles from one value to the next, so that both can be columns of an array of structs
 * @n: how many points there are
 *
 * Points to lay a line through. Everything is borrowed.
 */
typedef struct {
  const double *x;
  const double *y;
  gsize stride;
  gsize n;
} BbLinePoints;

/**
 * BbLine:
 * @slope: its slope
 * @intercept: y at x = 0
 * @slope_se: standard error of @slope; NaN with two points
 * @intercept_se: standard error of @intercept; NaN with two points
 * @residual_sd: standard deviation of the points about it, n − 2 degrees of freedom; NaN with two points
 * @r_squared: 1 − SS_residual / SS_total; NaN where all y are the same
 * @x_mean: mean of x
 * @y_mean: mean of y
 * @lowest: least x
 * @highest: greatest x
 *
 * A fitted line.
 */
typedef struct {
  double slope;
  double intercept;
  double slope_se;
  double intercept_se;
  double residual_sd;
  double r_squared;
  double x_mean;
  double y_mean;
  double lowest;
  double highest;
} BbLine;

gboolean bb_line_fit (const BbLinePoints *points,
                      BbLine             *line);

G_END_DECLS
