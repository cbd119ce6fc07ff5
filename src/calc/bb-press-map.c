/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-calc"

#include "bb-press-map.h"

#include <gsl/gsl_statistics_double.h>

#include "bb-line.h"

static void
find_extremes (const GArray  *readings,
               BbPressMapOut *out,
               gint64         columns)
{
  guint coldest = 0;

  out->maximum_c = g_array_index (readings, double, 0);
  for (guint i = 0; i < readings->len; i++)
    {
      double reading = g_array_index (readings, double, i);

      out->maximum_c = MAX (out->maximum_c, reading);
      if (reading < g_array_index (readings, double, coldest))
        coldest = i;
    }

  out->minimum_c = g_array_index (readings, double, coldest);
  out->mean_c = gsl_stats_mean ((const double *) readings->data, 1, readings->len);
  out->spread_c = out->maximum_c - out->minimum_c;
  out->cold_row = coldest / columns;
  out->cold_column = coldest % columns;
}

static gboolean
find_setting (const GArray *points,
              double        wanted_c,
              double       *setting_c,
              GError      **error)
{
  const BbPressPoint *first = &g_array_index (points, BbPressPoint, 0);
  const BbLinePoints data = {
    .x = &first->set_c,
    .y = &first->surface_c,
    .stride = sizeof *first / sizeof (double),
    .n = points->len,
  };
  BbLine line;

  G_STATIC_ASSERT (sizeof *first % sizeof (double) == 0);

  if (!bb_line_fit (&data, &line))
    {
      g_set_error_literal (error, BB_MODEL_ERROR, BB_MODEL_ERROR_UNDETERMINED,
                           _("points: every set_c is the same or too near it, a line needs at least 2 different "
                             "ones."));
      return FALSE;
    }

  *setting_c = (wanted_c - line.intercept) / line.slope;
  if (!(line.slope > 0.0) || isinf (*setting_c))
    {
      g_set_error (error, BB_MODEL_ERROR, BB_MODEL_ERROR_UNDETERMINED,
                   _("points: surface_c changes by %g for each degree set, it has to rise by more than 0, within "
                     "what numbers hold."),
                   line.slope);
      return FALSE;
    }

  return TRUE;
}

/**
 * bb_calc_press_map:
 * @in: readings over the platen, and calibration points
 * @out: mean, spread, cold place and setting
 * @error: return location for a #GError in the domain %BB_MODEL_ERROR
 *
 * Says how evenly a press heats and what to set; see the top of bb-press-map.h.
 *
 * Returns: %FALSE if the points determine no rising line
 */
gboolean
bb_calc_press_map (const BbPressMapIn *in,
                   BbPressMapOut      *out,
                   GError            **error)
{
  double setting_c = (double) NAN;

  if (in->points != NULL && !find_setting (in->points, in->wanted_c, &setting_c, error))
    return FALSE;

  find_extremes (in->readings_c, out, in->columns);
  out->offset_c = out->mean_c - in->set_c;
  out->setting_for_c = setting_c;

  return TRUE;
}

static gboolean
check_press_map (gconstpointer record,
                 GError      **error)
{
  const BbPressMapIn *in = record;

  if (in->readings_c->len == in->rows * in->columns)
    return TRUE;

  g_set_error (error, BB_MODEL_ERROR, BB_MODEL_ERROR_VALUE,
               ngettext ("readings_c: %u item, rows and columns ask for %" G_GINT64_FORMAT ".",
                         "readings_c: %u items, rows and columns ask for %" G_GINT64_FORMAT ".", in->readings_c->len),
               in->readings_c->len, in->rows * in->columns);
  return FALSE;
}

BB_DEFINE_TABLE (BbPressPoint, bb_press_point, "press_point", N_("Calibration"), BB_PRESS_POINT_FIELDS, NULL)
BB_DEFINE_TABLE (BbPressMapIn, bb_press_map_in, "press_map_in", N_("Press map"), BB_PRESS_MAP_IN_FIELDS,
                 check_press_map)
BB_DEFINE_TABLE (BbPressMapOut, bb_press_map_out, "press_map_out", N_("Press map"), BB_PRESS_MAP_OUT_FIELDS, NULL)
BB_DEFINE_CALCULATOR (PressMap, press_map, "press-map", N_("Press map"),
                      .summary = N_("How evenly a press heats, and what to set for a wanted surface temperature."),
                      .assumes = N_("The surface follows the setting along a straight line."),
                      .source = N_("Plain arithmetic and a least squares line."))
