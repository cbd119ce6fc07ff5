/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-calc"

#include "bb-control-chart.h"

/* ISO 7870-2, samples of two: 3/d2 and D4; see the top of bb-control-chart.h. */
#define INDIVIDUALS_FACTOR 2.660
#define RANGE_FACTOR 3.267

#define RUN_LENGTH 8
#define TREND_LENGTH 6

/* Of the largest value: some thousand rounding errors. */
#define NEAR 1e-12

static gboolean
check_baseline (gconstpointer record,
                GError      **error)
{
  const BbControlChartIn *self = record;

  if (self->baseline_count <= (gint64) self->values->len)
    return TRUE;

  g_set_error (error, BB_MODEL_ERROR, BB_MODEL_ERROR_VALUE,
               "baseline_count: %" G_GINT64_FORMAT " is above the maximum %u, the number of values",
               self->baseline_count, self->values->len);

  return FALSE;
}

/* Summing distances from the first value keeps equal values' mean equal to them. */
static double
mean_of_first (const double *values,
               guint         n)
{
  double sum = 0.0;

  for (guint i = 1; i < n; i++)
    sum += values[i] - values[0];

  return values[0] + sum / n;
}

static double
mean_moving_range (const double *values,
                   guint         n)
{
  double sum = 0.0;

  for (guint i = 1; i < n; i++)
    sum += fabs (values[i] - values[i - 1]);

  return sum / (n - 1);
}

static double
slack_of (const double *values,
          guint         n)
{
  double largest = 0.0;

  for (guint i = 0; i < n; i++)
    largest = fmax (largest, fabs (values[i]));

  return largest * NEAR;
}

static int
side_of (double difference,
         double slack)
{
  if (fabs (difference) <= slack)
    return 0;

  return difference > 0 ? 1 : -1;
}

/* How many in a row, this one included, have had the same sign; 0 has none. */
static guint
lengthen (guint length,
          int   last,
          int   now)
{
  if (now == 0)
    return 0;

  return now == last ? length + 1 : 1;
}

static void
add_signal (BbControlChartOut *out,
            guint              index,
            BbChartRule        rule)
{
  const BbField *signals = bb_table_find_field (&bb_control_chart_out_table, "signals");
  BbChartSignal *item = bb_field_append_item (signals, out);

  item->index = index;
  item->rule = rule;
}

static void
find_signals (const double      *values,
              guint              n,
              BbControlChartOut *out)
{
  double slack = slack_of (values, n);
  int last_side = 0;
  int last_step = 0;
  guint run = 0;
  guint steps = 0;

  for (guint i = 0; i < n; i++)
    {
      double change = i > 0 ? values[i] - values[i - 1] : 0.0;
      int side = side_of (values[i] - out->mean, slack);
      int step = side_of (change, 0.0);

      run = lengthen (run, last_side, side);
      steps = lengthen (steps, last_step, step);
      last_side = side;
      last_step = step;

      if (values[i] > out->upper_limit + slack || values[i] < out->lower_limit - slack)
        add_signal (out, i, BB_CHART_BEYOND_LIMIT);
      if (fabs (change) > out->moving_range_limit + slack)
        add_signal (out, i, BB_CHART_RANGE_BEYOND_LIMIT);
      if (run >= RUN_LENGTH)
        add_signal (out, i, BB_CHART_RUN_OF_8);
      /* Six values have five steps between them. */
      if (steps >= TREND_LENGTH - 1)
        add_signal (out, i, BB_CHART_TREND_OF_6);
    }
}

/**
 * bb_calc_control_chart:
 * @in: readings in order
 * @out: mean, limits and signals
 * @error: return location for a #GError; never set
 *
 * Computes a chart of individuals and moving ranges; see the top of bb-control-chart.h.
 *
 * Returns: %TRUE
 */
gboolean
bb_calc_control_chart (const BbControlChartIn *in,
                       BbControlChartOut      *out,
                       GError                **error G_GNUC_UNUSED)
{
  const double *values = (const double *) (const void *) in->values->data;
  guint n = in->values->len;
  guint baseline = in->baseline_count == BB_INTEGER_NONE ? n : (guint) in->baseline_count;

  out->mean = mean_of_first (values, baseline);
  out->moving_range_mean = mean_moving_range (values, baseline);
  out->upper_limit = out->mean + INDIVIDUALS_FACTOR * out->moving_range_mean;
  out->lower_limit = out->mean - INDIVIDUALS_FACTOR * out->moving_range_mean;
  out->moving_range_limit = RANGE_FACTOR * out->moving_range_mean;
  find_signals (values, n, out);

  return TRUE;
}

BB_DEFINE_CHOICES (bb_chart_rule, "chart rule", BB_CHART_RULE_CHOICES);

BB_DEFINE_TABLE (BbChartSignal, bb_chart_signal, "chart_signal", N_("Signal"),
                 BB_CHART_SIGNAL_FIELDS, NULL)
BB_DEFINE_TABLE (BbControlChartIn, bb_control_chart_in, "control_chart_in", N_("Control chart"),
                 BB_CONTROL_CHART_IN_FIELDS, check_baseline)
BB_DEFINE_TABLE (BbControlChartOut, bb_control_chart_out, "control_chart_out", N_("Control chart"),
                 BB_CONTROL_CHART_OUT_FIELDS, NULL)
BB_DEFINE_CALCULATOR (ControlChart, control_chart, "control-chart", N_("Control chart"),
                      .summary = N_("Whether the sprayer's readings show more than chance: "
                                    "limits and signals."),
                      .assumes = N_("Single readings in the order of time, roughly normal and "
                                    "not correlated."),
                      .source = N_("Shewhart's individuals and moving range chart, factors of "
                                   "ISO 7870-2."))
