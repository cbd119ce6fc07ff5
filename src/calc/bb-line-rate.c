/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-calc"

#include "bb-line-rate.h"

#define S_PER_H 3600.0

/**
 * bb_calc_line_rate:
 * @in: the stages and a count
 * @out: the bottleneck, its pace and the job's time
 * @error: return location for a #GError in the domain %BB_MODEL_ERROR
 *
 * Finds the pace of a line; see the top of bb-line-rate.h.
 *
 * Returns: %TRUE
 */
gboolean
bb_calc_line_rate (const BbLineRateIn *in,
                   BbLineRateOut      *out,
                   G_GNUC_UNUSED GError **error)
{
  const char *bottleneck = NULL;
  double cycle_s = 0;
  double through_s = 0;

  for (guint i = 0; i < in->stages->len; i++)
    {
      const BbLineStage *stage = &g_array_index (in->stages, BbLineStage, i);
      double stage_cycle_s = stage->seconds_per_garment / (double) stage->stations;

      through_s += stage->seconds_per_garment;
      if (stage_cycle_s > cycle_s)
        {
          cycle_s = stage_cycle_s;
          bottleneck = stage->name;
        }
    }

  out->bottleneck = g_strdup (bottleneck);
  out->garments_per_hour = S_PER_H / cycle_s;
  out->job_s = through_s + (double) (in->count - 1) * cycle_s;

  return TRUE;
}

BB_DEFINE_TABLE (BbLineStage, bb_line_stage, "line_stage", N_("Stage"), BB_LINE_STAGE_FIELDS, NULL)
BB_DEFINE_TABLE (BbLineRateIn, bb_line_rate_in, "line_rate_in", N_("Line rate"), BB_LINE_RATE_IN_FIELDS, NULL)
BB_DEFINE_TABLE (BbLineRateOut, bb_line_rate_out, "line_rate_out", N_("Line rate"), BB_LINE_RATE_OUT_FIELDS, NULL)
BB_DEFINE_CALCULATOR (LineRate, line_rate, "line-rate", N_("Line rate"),
                      .summary = N_("The pace of a line of stages, its bottleneck, and how long a job takes."),
                      .assumes = N_("No waiting for hands or material, and nothing spoiled."),
                      .source = N_("Plain arithmetic."))
