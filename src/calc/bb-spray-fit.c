/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-calc"

#include "bb-spray-fit.h"

#include <gsl/gsl_cdf.h>

#include "bb-line.h"

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
invert_band (const BbLine  *line,
             double         n,
             double         target,
             double         confidence,
             BbSprayFitOut *out)
{
  double t = gsl_cdf_tdist_Qinv ((1.0 - confidence) / 2.0, n - 2.0);
  double ratio = t * line->slope_se / line->slope;
  double g = ratio * ratio;
  double from_centre = (target - line->y_mean) / line->slope;
  double scatter = t * line->residual_sd / line->slope;
  double half = sqrt (g * from_centre * from_centre + (1.0 - g) * scatter * scatter / n);
  double low = line->x_mean + (from_centre - half) / (1.0 - g);
  double high = line->x_mean + (from_centre + half) / (1.0 - g);

  if (!(g < 1.0) || !isfinite (low) || !isfinite (high))
    return;

  out->setting_low = low;
  out->setting_high = high;
}

static void
find_setting (const BbLine       *line,
              const BbSprayFitIn *in,
              BbSprayFitOut      *out)
{
  double setting = (in->target_g_per_m2 - line->intercept) / line->slope;

  if (line->slope == 0.0 || !isfinite (setting))
    return;

  out->setting = setting;
  out->extrapolated = setting < line->lowest || setting > line->highest;
  if (in->points->len > 2)
    invert_band (line, in->points->len, in->target_g_per_m2, in->confidence, out);
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
  const BbSprayPoint *first = &g_array_index (in->points, BbSprayPoint, 0);
  const BbLinePoints points = {
    .x = &first->setting,
    .y = &first->laydown_g_per_m2,
    .stride = sizeof *first / sizeof (double),
    .n = in->points->len,
  };
  BbLine line;

  G_STATIC_ASSERT (sizeof *first % sizeof (double) == 0);

  if (!bb_line_fit (&points, &line))
    {
      g_set_error_literal (error, BB_MODEL_ERROR, BB_MODEL_ERROR_UNDETERMINED,
                           "points: all are at one setting or too near it, and a line needs at least two");
      return FALSE;
    }

  out->slope = line.slope;
  out->intercept = line.intercept;
  out->slope_se = line.slope_se;
  out->intercept_se = line.intercept_se;
  out->residual_sd = line.residual_sd;
  out->r_squared = line.r_squared;
  find_setting (&line, in, out);

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
