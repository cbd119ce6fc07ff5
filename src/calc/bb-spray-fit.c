/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-calc"

#include "bb-spray-fit.h"

#include <gsl/gsl_cdf.h>
#include <gsl/gsl_fit.h>
#include <gsl/gsl_statistics_double.h>

/* The points as GSL reads them: two columns of an array of structs. */
typedef struct {
  const double *settings;
  const double *laydowns;
  gsize stride;
  gsize n;
} Columns;

static Columns
columns_of (GArray *points)
{
  const BbSprayPoint *first = &g_array_index (points, BbSprayPoint, 0);

  G_STATIC_ASSERT (sizeof (BbSprayPoint) % sizeof (double) == 0);

  return (Columns) {
    .settings = &first->setting,
    .laydowns = &first->laydown_g_per_m2,
    .stride = sizeof (BbSprayPoint) / sizeof (double),
    .n = points->len,
  };
}

static gboolean
fit_line (const Columns *data,
          BbSprayFitOut *out,
          GError       **error)
{
  double var_intercept = 0.0;
  double covariance = 0.0;
  double var_slope = 0.0;
  double residual_ss = 0.0;
  double total_ss = gsl_stats_tss (data->laydowns, data->stride, data->n);
  double lowest = 0.0;
  double highest = 0.0;

  gsl_stats_minmax (&lowest, &highest, data->settings, data->stride, data->n);
  gsl_fit_linear (data->settings, data->stride, data->laydowns, data->stride, data->n,
                  &out->intercept, &out->slope, &var_intercept, &covariance, &var_slope, &residual_ss);
  if (lowest == highest || !isfinite (out->slope) || !isfinite (out->intercept))
    {
      g_set_error_literal (error, BB_MODEL_ERROR, BB_MODEL_ERROR_UNDETERMINED,
                           "points: all are at one setting, and a line needs at least two");
      return FALSE;
    }

  if (total_ss > 0.0)
    out->r_squared = 1.0 - residual_ss / total_ss;
  if (data->n > 2)
    {
      out->slope_se = sqrt (var_slope);
      out->intercept_se = sqrt (var_intercept);
      out->residual_sd = sqrt (residual_ss / (double) (data->n - 2));
      if (!isfinite (out->slope_se) || !isfinite (out->intercept_se))
        {
          g_set_error_literal (error, BB_MODEL_ERROR, BB_MODEL_ERROR_UNDETERMINED,
                               "points: the settings lie too close together, their squares are beyond numbers");
          return FALSE;
        }
    }

  return TRUE;
}

/*
 * Every setting x at which the line's confidence band holds the target, the solutions of
 *
 *     (ȳ + b (x − x̄) − target)² ≤ t² s² (1/n + (x − x̄)² / Sxx).
 *
 * With u = x − x̄, u0 = (target − ȳ) / b, se = s / √Sxx and g = (t se / b)² that is a quadratic
 * in u with the roots
 *
 *     u = (u0 ± √(g u0² + (1 − g) (t s / b)² / n)) / (1 − g),
 *
 * between which the solutions lie if g < 1, that is, if the slope differs from 0 at this
 * confidence.
 */
static void
invert_band (const Columns *data,
             double         target,
             double         confidence,
             BbSprayFitOut *out)
{
  double n = (double) data->n;
  double t = gsl_cdf_tdist_Qinv ((1.0 - confidence) / 2.0, n - 2.0);
  double ratio = t * out->slope_se / out->slope;
  double g = ratio * ratio;
  double centre = gsl_stats_mean (data->settings, data->stride, data->n);
  double level = gsl_stats_mean (data->laydowns, data->stride, data->n);
  double from_centre = (target - level) / out->slope;
  double scatter = t * out->residual_sd / out->slope;
  double half = sqrt (g * from_centre * from_centre + (1.0 - g) * scatter * scatter / n);
  double low = centre + (from_centre - half) / (1.0 - g);
  double high = centre + (from_centre + half) / (1.0 - g);

  if (!(g < 1.0) || !isfinite (low) || !isfinite (high))
    return;

  out->setting_low = low;
  out->setting_high = high;
}

static void
find_setting (const Columns *data,
              double         target,
              double         confidence,
              BbSprayFitOut *out)
{
  double lowest = 0.0;
  double highest = 0.0;
  double setting = (target - out->intercept) / out->slope;

  if (out->slope == 0.0 || !isfinite (setting))
    return;

  gsl_stats_minmax (&lowest, &highest, data->settings, data->stride, data->n);
  out->setting = setting;
  out->extrapolated = setting < lowest || setting > highest;
  if (data->n > 2)
    invert_band (data, target, confidence, out);
}

/**
 * bb_calc_spray_fit:
 * @in: test sprays and the laydown that is wanted
 * @out: the line and the setting
 * @error: return location for a #GError in the domain %BB_MODEL_ERROR
 *
 * Fits a sprayer's line and inverts it; see the top of bb-spray-fit.h.
 *
 * Returns: %FALSE if all points are at one setting, or so near it that squares of their distances vanish
 */
gboolean
bb_calc_spray_fit (const BbSprayFitIn *in,
                   BbSprayFitOut      *out,
                   GError            **error)
{
  Columns data = columns_of (in->points);

  if (!fit_line (&data, out, error))
    return FALSE;

  find_setting (&data, in->target_g_per_m2, in->confidence, out);

  return TRUE;
}

BB_DEFINE_TABLE (BbSprayPoint, bb_spray_point, "spray_point", N_("Test spray"),
                 BB_SPRAY_POINT_FIELDS, NULL)
BB_DEFINE_TABLE (BbSprayFitIn, bb_spray_fit_in, "spray_fit_in", N_("Sprayer's line"),
                 BB_SPRAY_FIT_IN_FIELDS, NULL)
BB_DEFINE_TABLE (BbSprayFitOut, bb_spray_fit_out, "spray_fit_out", N_("Sprayer's line"),
                 BB_SPRAY_FIT_OUT_FIELDS, NULL)
BB_DEFINE_CALCULATOR (SprayFit, spray_fit, "spray-fit", N_("Sprayer's line"),
                      .summary = N_("The setting that gives a wanted laydown, from test "
                                    "sprays, with its confidence interval."),
                      .assumes = N_("A straight line; errors in the laydown only, of the same "
                                    "spread at every setting."),
                      .source = N_("Ordinary least squares by GSL; Fieller's interval (1954)."))
