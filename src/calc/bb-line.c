/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-calc"

#include "bb-line.h"

#include <gsl/gsl_fit.h>
#include <gsl/gsl_statistics_double.h>
#include <math.h>

/* How often over the rounding of each value may add up to. */
#define ROUNDINGS 8.0

/* Whether the slope is no more than what comes of rounding each x and y to the nearest double. */
static gboolean
is_level (const BbLinePoints *points,
          const BbLine       *line)
{
  double products = fabs (line->slope) * gsl_stats_tss_m (points->x, points->stride, points->n, line->x_mean);
  double x_off = gsl_stats_absdev_m (points->x, points->stride, points->n, line->x_mean);
  double y_off = gsl_stats_absdev_m (points->y, points->stride, points->n, line->y_mean);
  double x_most = fmax (fabs (line->lowest), fabs (line->highest));
  double lowest = 0.0;
  double highest = 0.0;

  gsl_stats_minmax (&lowest, &highest, points->y, points->stride, points->n);

  return products <= ROUNDINGS * DBL_EPSILON * (double) points->n *
                       (x_most * y_off + fmax (fabs (lowest), fabs (highest)) * x_off);
}

/**
 * bb_line_fit:
 * @points: at least two points, of finite numbers
 * @line: (out): the line
 *
 * Lays a line through points; see the top of bb-line.h.
 *
 * Returns: %FALSE if all x are the same, or so near each other that squares of their distances vanish
 */
gboolean
bb_line_fit (const BbLinePoints *points,
             BbLine             *line)
{
  double var_intercept = 0.0;
  double covariance = 0.0;
  double var_slope = 0.0;
  double residual_ss = 0.0;
  double total_ss = gsl_stats_tss (points->y, points->stride, points->n);
  gboolean has_freedom = points->n > 2;

  *line = (BbLine) {
    .x_mean = gsl_stats_mean (points->x, points->stride, points->n),
    .y_mean = gsl_stats_mean (points->y, points->stride, points->n),
  };
  gsl_stats_minmax (&line->lowest, &line->highest, points->x, points->stride, points->n);
  gsl_fit_linear (points->x, points->stride, points->y, points->stride, points->n, &line->intercept, &line->slope,
                  &var_intercept, &covariance, &var_slope, &residual_ss);
  if (line->lowest == line->highest || !isfinite (line->slope) || !isfinite (line->intercept))
    return FALSE;

  if (is_level (points, line))
    {
      line->slope = 0.0;
      line->intercept = line->y_mean;
      residual_ss = total_ss;
    }
  line->r_squared = total_ss > 0.0 ? fmax (1.0 - residual_ss / total_ss, 0.0) : (double) NAN;
  line->residual_sd = has_freedom ? sqrt (residual_ss / (double) (points->n - 2)) : (double) NAN;
  line->slope_se = has_freedom ? sqrt (var_slope) : (double) NAN;
  line->intercept_se = has_freedom ? sqrt (var_intercept) : (double) NAN;

  return !has_freedom || (isfinite (line->slope_se) && isfinite (line->intercept_se));
}
