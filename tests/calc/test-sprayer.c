/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bb-control-chart.h"
#include "bb-nozzle-balance.h"
#include "bb-spray-fit.h"
#include "reference.h"

/* The three calculators that watch a sprayer, against other programs and against themselves. */

#define N_TRIALS 500
#define SEED 20250315

static void
run (const BbCalculator *calculator,
     gconstpointer       in,
     gpointer            out)
{
  g_autoptr (GError) error = NULL;

  bb_calculator_run (calculator, in, out, &error);
  g_assert_no_error (error);
}

/* A rough bell curve is enough here. */
static double
scatter (GRand *rand)
{
  double sum = 0.0;

  for (int i = 0; i < 12; i++)
    sum += g_rand_double (rand);

  return sum - 6.0;
}

static void
add_point (BbSprayFitIn *in,
           double        setting,
           double        laydown)
{
  BbSprayPoint *point = bb_field_append_item (bb_table_find_field (&bb_spray_fit_in_table, "points"), in);

  point->setting = setting;
  point->laydown_g_per_m2 = laydown;
}

static double
deviation (double actual,
           double expected)
{
  if (isnan (expected) || isnan (actual))
    return isnan (expected) && isnan (actual) ? 0.0 : (double) INFINITY;

  return fabs (actual - expected) / fabs (expected);
}

static double
certified (const Reference *table,
           const char      *quantity,
           const char      *column)
{
  for (guint row = 0; row < reference_get_length (table); row++)
    if (g_str_equal (reference_get_text (table, row, "dataset"), "norris") &&
        g_str_equal (reference_get_text (table, row, "quantity"), quantity))
      return reference_get_number (table, row, column);

  g_assert_not_reached ();
}

static void
test_fit_nist_norris (void)
{
  g_autoptr (Reference) data = reference_load ("nist-strd-norris");
  g_autoptr (Reference) values = reference_load ("nist-strd-certified");
  g_autoptr (BbSprayFitIn) in = bb_spray_fit_in_new ();
  BbSprayFitOut out = { 0 };
  double largest = 0.0;

  for (guint row = 0; row < reference_get_length (data); row++)
    add_point (in, reference_get_number (data, row, "x_predictor"), reference_get_number (data, row, "y_response"));
  in->target_g_per_m2 = 500;
  run (&bb_spray_fit_calculator, in, &out);

  largest = fmax (largest, deviation (out.intercept, certified (values, "B0", "certified_value")));
  largest = fmax (largest, deviation (out.intercept_se, certified (values, "B0", "certified_sd")));
  largest = fmax (largest, deviation (out.slope, certified (values, "B1", "certified_value")));
  largest = fmax (largest, deviation (out.slope_se, certified (values, "B1", "certified_sd")));
  largest = fmax (largest, deviation (out.residual_sd, certified (values, "residual_sd", "certified_value")));
  largest = fmax (largest, deviation (out.r_squared, certified (values, "r_squared", "certified_value")));
  g_test_message ("Largest relative deviation from NIST's certified values: %.3g", largest);
  g_assert_cmpfloat (largest, <, 1e-11);
}

static void
read_row (const Reference *table,
          guint            row,
          BbSprayFitIn    *in)
{
  g_auto (GStrv) settings = g_strsplit (reference_get_text (table, row, "settings"), " ", -1);
  g_auto (GStrv) laydowns = g_strsplit (reference_get_text (table, row, "laydowns"), " ", -1);

  g_assert_cmpuint (g_strv_length (settings), ==, g_strv_length (laydowns));
  for (guint i = 0; settings[i] != NULL; i++)
    add_point (in, g_ascii_strtod (settings[i], NULL), g_ascii_strtod (laydowns[i], NULL));
  in->target_g_per_m2 = reference_get_number (table, row, "target");
  in->confidence = reference_get_number (table, row, "confidence");
}

static void
test_fit_as_r_does (void)
{
  g_autoptr (Reference) table = reference_load ("spray-fit");
  const char *keys[] = { "slope", "intercept", "slope_se", "intercept_se", "residual_sd", "r_squared", "setting",
                         "setting_low", "setting_high" };
  double largest = 0.0;

  for (guint row = 0; row < reference_get_length (table); row++)
    {
      g_autoptr (BbSprayFitIn) in = bb_spray_fit_in_new ();
      g_autoptr (BbSprayFitOut) out = bb_spray_fit_out_new ();

      read_row (table, row, in);
      run (&bb_spray_fit_calculator, in, out);
      for (guint i = 0; i < G_N_ELEMENTS (keys); i++)
        {
          const BbField *field = bb_table_find_field (&bb_spray_fit_out_table, keys[i]);

          largest = fmax (largest, deviation (bb_field_get_number (field, out),
                                              reference_get_number (table, row, keys[i])));
        }
    }
  g_test_message ("Largest relative deviation from R: %.3g", largest);
  g_assert_cmpfloat (largest, <, 1e-10);
}

static BbSprayFitIn *
random_sprays (GRand *rand)
{
  BbSprayFitIn *in = bb_spray_fit_in_new ();
  int n = g_rand_int_range (rand, 3, 30);

  for (int i = 0; i < n; i++)
    {
      double setting = 10.0 + 3.0 * i;

      add_point (in, setting, fmax (0.0, 5.0 + 3.0 * setting + 6.0 * scatter (rand)));
    }
  in->target_g_per_m2 = g_rand_double_range (rand, 20, 300);

  return in;
}

static void
test_fit_wider_confidence (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (SEED);
  guint n_intervals = 0;

  for (guint i = 0; i < N_TRIALS; i++)
    {
      g_autoptr (BbSprayFitIn) in = random_sprays (rand);
      g_autoptr (BbSprayFitOut) narrow = bb_spray_fit_out_new ();
      g_autoptr (BbSprayFitOut) wide = bb_spray_fit_out_new ();

      in->confidence = g_rand_double_range (rand, 0.5, 0.95);
      run (&bb_spray_fit_calculator, in, narrow);
      in->confidence += g_rand_double_range (rand, 0, 0.049);
      run (&bb_spray_fit_calculator, in, wide);
      g_assert_cmpfloat (wide->setting, ==, narrow->setting);
      /* Where even the wider one is not bounded, it is the widest there is. */
      if (isnan (wide->setting_low))
        continue;
      g_assert_cmpfloat (wide->setting_low, <=, narrow->setting_low);
      g_assert_cmpfloat (wide->setting_high, >=, narrow->setting_high);
      g_assert_cmpfloat (narrow->setting_low, <=, narrow->setting);
      g_assert_cmpfloat (narrow->setting_high, >=, narrow->setting);
      n_intervals++;
    }
  g_assert_cmpuint (n_intervals, >, N_TRIALS / 2);
}

static void
test_fit_order_and_units (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (SEED + 1);

  for (guint i = 0; i < N_TRIALS; i++)
    {
      g_autoptr (BbSprayFitIn) in = random_sprays (rand);
      g_autoptr (BbSprayFitIn) other = bb_spray_fit_in_new ();
      g_autoptr (BbSprayFitOut) out = bb_spray_fit_out_new ();
      g_autoptr (BbSprayFitOut) again = bb_spray_fit_out_new ();

      for (guint p = in->points->len; p > 0; p--)
        {
          const BbSprayPoint *point = &g_array_index (in->points, BbSprayPoint, p - 1);

          add_point (other, point->setting * 10.0 + 100.0, point->laydown_g_per_m2);
        }
      other->target_g_per_m2 = in->target_g_per_m2;
      run (&bb_spray_fit_calculator, in, out);
      run (&bb_spray_fit_calculator, other, again);
      g_assert_cmpfloat (deviation (again->slope, out->slope / 10.0), <, 1e-10);
      g_assert_cmpfloat (deviation (again->setting, out->setting * 10.0 + 100.0), <, 1e-9);
      g_assert_cmpfloat (deviation (again->setting_low, out->setting_low * 10.0 + 100.0), <, 1e-8);
      g_assert_cmpfloat (deviation (again->setting_high, out->setting_high * 10.0 + 100.0), <, 1e-8);
      g_assert_cmpint (again->extrapolated, ==, out->extrapolated);
    }
}

/* d2 = 2/√π and D4 = 1 + 3 √(π/2 − 1) for ranges of two normal values; the tables round to three decimals. */
static void
test_chart_factors (void)
{
  g_autoptr (BbControlChartIn) in = bb_control_chart_in_new ();
  g_autoptr (BbControlChartOut) out = bb_control_chart_out_new ();
  const double values[] = { 0, 1 };

  in->values = g_array_new (FALSE, TRUE, sizeof (double));
  g_array_append_vals (in->values, values, G_N_ELEMENTS (values));
  run (&bb_control_chart_calculator, in, out);
  g_assert_cmpfloat (fabs ((out->upper_limit - out->mean) - 3.0 * sqrt (G_PI) / 2.0), <, 0.0014);
  g_assert_cmpfloat (fabs (out->moving_range_limit - (1.0 + 3.0 * sqrt (G_PI / 2.0 - 1.0))), <, 0.0006);
}

static gboolean
all_alike (const double *values,
           int           last,
           int           length,
           double        mean,
           int           sign)
{
  if (last + 1 < length)
    return FALSE;
  for (int i = last - length + 1; i <= last; i++)
    if (isnan (mean) ? i > last - length + 1 && sign * (values[i] - values[i - 1]) <= 0
                     : sign * (values[i] - mean) <= 0)
      return FALSE;

  return TRUE;
}

/* The rules once more, each looking back from its own value instead of counting on. */
static gboolean
breaks (const double            *values,
        int                      i,
        const BbControlChartOut *chart,
        BbChartRule              rule)
{
  switch (rule)
    {
    case BB_CHART_BEYOND_LIMIT:
      return values[i] > chart->upper_limit || values[i] < chart->lower_limit;
    case BB_CHART_RANGE_BEYOND_LIMIT:
      return i > 0 && fabs (values[i] - values[i - 1]) > chart->moving_range_limit;
    case BB_CHART_RUN_OF_8:
      return all_alike (values, i, 8, chart->mean, 1) || all_alike (values, i, 8, chart->mean, -1);
    case BB_CHART_TREND_OF_6:
      return all_alike (values, i, 6, (double) NAN, 1) || all_alike (values, i, 6, (double) NAN, -1);
    default:
      g_assert_not_reached ();
    }
}

static void
test_chart_rules_looked_up (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (SEED + 2);
  guint seen[4] = { 0 };

  for (guint trial = 0; trial < N_TRIALS; trial++)
    {
      g_autoptr (BbControlChartIn) in = bb_control_chart_in_new ();
      g_autoptr (BbControlChartOut) out = bb_control_chart_out_new ();
      int n = g_rand_int_range (rand, 2, 120);
      double drift = g_rand_boolean (rand) ? 0.0 : scatter (rand) / 20.0;
      guint found = 0;

      in->values = g_array_new (FALSE, TRUE, sizeof (double));
      for (int i = 0; i < n; i++)
        {
          double value = 100.0 + drift * i + scatter (rand) * (g_rand_int_range (rand, 0, 20) == 0 ? 3.0 : 1.0);

          g_array_append_val (in->values, value);
        }
      if (g_rand_boolean (rand))
        in->baseline_count = g_rand_int_range (rand, 2, n + 1);
      run (&bb_control_chart_calculator, in, out);

      for (int i = 0; i < n; i++)
        for (int rule = BB_CHART_BEYOND_LIMIT; rule <= BB_CHART_TREND_OF_6; rule++)
          if (breaks ((const double *) (const void *) in->values->data, i, out, (BbChartRule) rule))
            {
              g_assert_nonnull (out->signals);
              g_assert_cmpuint (found, <, out->signals->len);
              g_assert_cmpint (g_array_index (out->signals, BbChartSignal, found).index, ==, i);
              g_assert_cmpint (g_array_index (out->signals, BbChartSignal, found).rule, ==, rule);
              seen[rule]++;
              found++;
            }
      g_assert_cmpuint (found, ==, out->signals != NULL ? out->signals->len : 0);
    }
  for (guint rule = 0; rule < G_N_ELEMENTS (seen); rule++)
    g_assert_cmpuint (seen[rule], >, 0);
}

static void
test_balance_scales (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (SEED + 3);

  for (guint trial = 0; trial < N_TRIALS; trial++)
    {
      g_autoptr (BbNozzleBalanceIn) in = bb_nozzle_balance_in_new ();
      g_autoptr (BbNozzleBalanceOut) out = bb_nozzle_balance_out_new ();
      g_autoptr (BbNozzleBalanceOut) scaled = bb_nozzle_balance_out_new ();
      int n = g_rand_int_range (rand, 2, 40);

      in->masses_g = g_array_new (FALSE, TRUE, sizeof (double));
      for (int i = 0; i < n; i++)
        {
          double mass = 10.0 + scatter (rand);

          g_array_append_val (in->masses_g, mass);
        }
      run (&bb_nozzle_balance_calculator, in, out);
      for (int i = 0; i < n; i++)
        g_array_index (in->masses_g, double, i) *= 4.0;
      run (&bb_nozzle_balance_calculator, in, scaled);

      g_assert_cmpfloat (scaled->mean_g, ==, out->mean_g * 4.0);
      g_assert_cmpfloat (scaled->cv, ==, out->cv);
      g_assert_cmpint (scaled->worst_index, ==, out->worst_index);
      g_assert_cmpuint (scaled->outside->len, ==, out->outside->len);
      for (int i = 0; i < n; i++)
        g_assert_cmpfloat (fabs (g_array_index (in->masses_g, double, i) - scaled->mean_g), <=,
                           fabs (scaled->worst_fraction) * scaled->mean_g * (1.0 + 1e-8));
      /* The spread is no more than the farthest, and the farthest no more than all of the spread. */
      g_assert_cmpfloat (out->cv * sqrt ((n - 1.0) / n), <=, fabs (out->worst_fraction) * (1.0 + 1e-8));
      g_assert_cmpfloat (out->cv * sqrt (n - 1.0) * (1.0 + 1e-8), >=, fabs (out->worst_fraction));
    }
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/sprayer/fit-nist-norris", test_fit_nist_norris);
  g_test_add_func ("/sprayer/fit-as-r-does", test_fit_as_r_does);
  g_test_add_func ("/sprayer/fit-wider-confidence", test_fit_wider_confidence);
  g_test_add_func ("/sprayer/fit-order-and-units", test_fit_order_and_units);
  g_test_add_func ("/sprayer/chart-factors", test_chart_factors);
  g_test_add_func ("/sprayer/chart-rules-looked-up", test_chart_rules_looked_up);
  g_test_add_func ("/sprayer/balance-scales", test_balance_scales);

  return g_test_run ();
}
