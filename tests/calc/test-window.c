/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <math.h>

#include "bb-process-window.h"
#include "bb-surface.h"
#include "reference.h"

static GArray *
numbers (const double *values,
         guint         n)
{
  GArray *array = g_array_new (FALSE, FALSE, sizeof (double));

  return g_array_append_vals (array, values, n);
}

static void
assert_close (double actual,
              double expected,
              double tolerance)
{
  g_assert_cmpfloat_with_epsilon (actual, expected, tolerance * fmax (1.0, fabs (expected)));
}

/* Certified values with nine digits at least: what the standard reference data sets are there to show. */
static void
assert_certified (const Reference *certified,
                  const char      *set,
                  const char      *quantity,
                  double           value,
                  double           sd)
{
  for (guint i = 0; i < reference_get_length (certified); i++)
    if (g_str_equal (reference_get_text (certified, i, "dataset"), set) &&
        g_str_equal (reference_get_text (certified, i, "quantity"), quantity))
      {
        g_assert_cmpfloat_with_epsilon (value / reference_get_number (certified, i, "exact_value"), 1.0, 1e-9);
        if (!isnan (sd))
          g_assert_cmpfloat_with_epsilon (sd / reference_get_number (certified, i, "exact_sd"), 1.0, 1e-9);
        return;
      }
  g_assert_not_reached ();
}

static void
check_certified (const char         *set,
                 const char * const *columns,
                 guint               n_factors,
                 gboolean            quadratic)
{
  g_autofree char *file = g_strconcat ("nist-strd-", set, NULL);
  g_autoptr (Reference) data = reference_load (file);
  g_autoptr (Reference) certified = reference_load ("nist-strd-certified");
  guint n = reference_get_length (data);
  g_autofree double *x = g_new (double, n * n_factors);
  g_autofree double *y = g_new (double, n);
  g_autoptr (BbSurface) surface = NULL;

  for (guint i = 0; i < n; i++)
    {
      y[i] = reference_get_number (data, i, "y_response");
      for (guint f = 0; f < n_factors; f++)
        x[i * n_factors + f] = reference_get_number (data, i, columns[f]);
    }
  surface = bb_surface_fit (x, y, n, n_factors, quadratic);
  g_assert_nonnull (surface);
  for (guint term = 0; term < surface->n_terms; term++)
    {
      g_autofree char *quantity = g_strdup_printf ("B%u", term);
      double value = 0.0;
      double se = 0.0;

      bb_surface_get_coefficient (surface, term, &value, &se);
      assert_certified (certified, set, quantity, value, se);
    }
  assert_certified (certified, set, "residual_sd", surface->residual_sd, (double) NAN);
  assert_certified (certified, set, "r_squared", surface->r_squared, (double) NAN);
}

static void
test_certified_regressions (void)
{
  const char *one[] = { "x_predictor" };
  const char *six[] = { "x1_gnp_deflator", "x2_gnp", "x3_unemployed", "x4_armed_forces", "x5_population", "x6_year" };

  check_certified ("norris", one, 1, FALSE);
  check_certified ("pontius", one, 1, TRUE);
  check_certified ("longley", six, 6, FALSE);
}

/* Runs of a set in tests/reference/process-window-runs.csv, with the range of the runs as limits. */
static BbProcessWindowIn *
load_set (const char *set)
{
  g_autoptr (Reference) data = reference_load ("process-window-runs");
  BbProcessWindowIn *in = bb_process_window_in_new ();
  guint n_factors = 0;

  for (guint i = 0; i < reference_get_length (data); i++)
    {
      double x[] = { reference_get_number (data, i, "x1"), reference_get_number (data, i, "x2") };
      BbWindowRun *run = NULL;

      if (!g_str_equal (reference_get_text (data, i, "set"), set))
        continue;
      n_factors = isnan (x[1]) ? 1 : 2;
      run = bb_field_append_item (bb_table_find_field (&bb_process_window_in_table, "runs"), in);
      run->x = numbers (x, n_factors);
      run->grade = (int) bb_grade_from_number (reference_get_number (data, i, "grade"));
      run->hand = reference_get_number (data, i, "hand");
    }
  g_assert_cmpuint (n_factors, >, 0);
  for (guint f = 0; f < n_factors; f++)
    {
      BbWindowFactor *factor = bb_field_append_item (bb_table_find_field (&bb_process_window_in_table, "factors"), in);

      factor->key = g_strdup_printf ("x%u", f + 1);
      factor->low = (double) INFINITY;
      factor->high = (double) -INFINITY;
      factor->cost_per_unit = 1.0;
      for (guint i = 0; i < in->runs->len; i++)
        {
          double x = g_array_index (g_array_index (in->runs, BbWindowRun, i).x, double, f);

          factor->low = MIN (factor->low, x);
          factor->high = MAX (factor->high, x);
        }
    }
  in->required_grade = BB_GRADE_4;
  in->model = g_str_equal (set, "curve") || g_str_equal (set, "dome") ? BB_WINDOW_QUADRATIC : BB_WINDOW_LINEAR;

  return in;
}

static BbProcessWindowOut *
find_window (const BbProcessWindowIn *in)
{
  BbProcessWindowOut *out = bb_process_window_out_new ();
  g_autoptr (GError) error = NULL;

  bb_calculator_run (&bb_process_window_calculator, in, out, &error);
  g_assert_no_error (error);

  return out;
}

static BbWindowFactor *
get_factor (const BbProcessWindowIn *in,
            guint                    index)
{
  return &g_array_index (in->factors, BbWindowFactor, index);
}

static void
test_fits_by_lm (void)
{
  g_autoptr (Reference) fits = reference_load ("process-window-fits");

  for (guint i = 0; i < reference_get_length (fits); i++)
    {
      g_autoptr (BbProcessWindowIn) in = load_set (reference_get_text (fits, i, "set"));
      g_autoptr (BbProcessWindowOut) out = find_window (in);
      guint term = (guint) reference_get_number (fits, i, "term");
      const BbWindowCoefficient *coefficient = &g_array_index (out->coefficients, BbWindowCoefficient, term);
      /* One of the interactions is 0 but for rounding; its error says at which size. */
      double size = fmax (fabs (coefficient->value), coefficient->se);

      g_assert_cmpfloat_with_epsilon (coefficient->value, reference_get_number (fits, i, "value"), 1e-9 * size);
      g_assert_cmpfloat_with_epsilon (coefficient->se / reference_get_number (fits, i, "se"), 1.0, 1e-9);
      assert_close (out->residual_sd, reference_get_number (fits, i, "residual_sd"), 1e-12);
      assert_close (out->r_squared, reference_get_number (fits, i, "r_squared"), 1e-12);
      g_assert_cmpint (out->degrees_of_freedom, ==, (gint64) reference_get_number (fits, i, "degrees_of_freedom"));
    }
}

/* The grid begins at the low settings, so each place that R was asked about becomes those. */
static void
test_bounds_by_predict (void)
{
  g_autoptr (Reference) bounds = reference_load ("process-window-bounds");

  for (guint i = 0; i < reference_get_length (bounds); i++)
    {
      g_autoptr (BbProcessWindowIn) in = load_set (reference_get_text (bounds, i, "set"));
      g_autoptr (BbProcessWindowOut) out = NULL;
      const char *columns[] = { "x1", "x2" };
      const BbWindowPlace *place = NULL;

      in->confidence = reference_get_number (bounds, i, "confidence");
      for (guint f = 0; f < in->factors->len; f++)
        {
          get_factor (in, f)->low = reference_get_number (bounds, i, columns[f]);
          get_factor (in, f)->high = get_factor (in, f)->low + 1.0;
        }
      out = find_window (in);
      place = &g_array_index (out->grid, BbWindowPlace, 0);
      g_assert_cmpfloat (g_array_index (place->x, double, 0), ==, get_factor (in, 0)->low);
      assert_close (place->predicted, reference_get_number (bounds, i, "predicted"), 1e-11);
      assert_close (place->lower, reference_get_number (bounds, i, "lower"), 1e-11);
    }
}

static void
test_cheapest_by_uniroot (void)
{
  g_autoptr (Reference) cases = reference_load ("process-window-cheapest");
  const char *keys[][3] = { { "low_1", "high_1", "cost_1" }, { "low_2", "high_2", "cost_2" } };

  for (guint i = 0; i < reference_get_length (cases); i++)
    {
      g_autoptr (BbProcessWindowIn) in = load_set (reference_get_text (cases, i, "set"));
      g_autoptr (BbProcessWindowOut) out = NULL;
      double expected = reference_get_number (cases, i, "cost");
      const BbWindowRecommendation *recommended = NULL;

      for (guint f = 0; f < in->factors->len; f++)
        {
          get_factor (in, f)->low = reference_get_number (cases, i, keys[f][0]);
          get_factor (in, f)->high = reference_get_number (cases, i, keys[f][1]);
          get_factor (in, f)->cost_per_unit = reference_get_number (cases, i, keys[f][2]);
        }
      in->required_grade = (int) bb_grade_from_number (reference_get_number (cases, i, "required_grade"));
      in->required_hand = reference_get_number (cases, i, "required_hand");
      in->confidence = reference_get_number (cases, i, "confidence");
      out = find_window (in);
      recommended = out->recommended;
      if (isnan (expected))
        {
          g_assert_null (recommended);
          g_assert_cmpint (out->reason, ==, BB_WINDOW_NONE_MEETS);
          continue;
        }
      g_assert_cmpint (out->reason, ==, BB_CHOICE_NONE);
      assert_close (recommended->cost, expected, 1e-9);
      g_assert_cmpfloat (recommended->lower, >=, bb_grade_to_number ((BbGrade) in->required_grade) - 1e-12);
    }
}

/* A random window over two settings, or over one. */
static BbProcessWindowIn *
random_window (GRand *random,
               guint  n_factors)
{
  BbProcessWindowIn *in = bb_process_window_in_new ();
  guint n_runs = (guint) g_rand_int_range (random, 8, 20);

  for (guint f = 0; f < n_factors; f++)
    {
      BbWindowFactor *factor = bb_field_append_item (bb_table_find_field (&bb_process_window_in_table, "factors"), in);

      factor->key = g_strdup_printf ("setting_%u", f + 1);
      factor->low = g_rand_double_range (random, 0, 100);
      factor->high = factor->low + g_rand_double_range (random, 10, 100);
      factor->cost_per_unit = g_rand_double_range (random, -0.3, 1);
    }
  for (guint i = 0; i < n_runs; i++)
    {
      BbWindowRun *run = bb_field_append_item (bb_table_find_field (&bb_process_window_in_table, "runs"), in);
      double x[2];
      double grade = 3.5;

      for (guint f = 0; f < n_factors; f++)
        {
          double z = (double) g_rand_int_range (random, 0, 5) / 4.0;

          x[f] = get_factor (in, f)->low + z * (get_factor (in, f)->high - get_factor (in, f)->low);
          grade += 2.0 * z * (1.4 - z) + g_rand_double_range (random, -0.4, 0.4);
        }
      run->x = numbers (x, n_factors);
      run->grade = (int) bb_grade_from_number (grade);
    }
  in->required_grade = BB_GRADE_4;
  in->model = g_rand_boolean (random) ? BB_WINDOW_QUADRATIC : BB_WINDOW_LINEAR;

  return in;
}

/* What the grid shows, the search has to have found: no place of it is both sure and cheaper. */
static void
test_nothing_on_the_grid_is_cheaper (void)
{
  g_autoptr (GRand) random = g_rand_new_with_seed (8);
  guint n_recommended = 0;

  for (guint trial = 0; trial < 60; trial++)
    {
      g_autoptr (BbProcessWindowIn) in = random_window (random, 1 + trial % 2);
      g_autoptr (BbProcessWindowOut) out = find_window (in);
      const BbWindowRecommendation *recommended = out->recommended;

      if (out->grid == NULL)
        continue;
      for (guint i = 0; i < out->grid->len; i++)
        {
          const BbWindowPlace *place = &g_array_index (out->grid, BbWindowPlace, i);
          double cost = 0.0;

          g_assert_cmpfloat (place->lower, <=, place->predicted);
          for (guint f = 0; f < in->factors->len; f++)
            cost += get_factor (in, f)->cost_per_unit * g_array_index (place->x, double, f);
          if (place->lower >= 4.0)
            {
              g_assert_nonnull (recommended);
              g_assert_cmpfloat (recommended->cost, <=, cost + 1e-9);
            }
        }
      if (recommended != NULL)
        {
          n_recommended++;
          g_assert_cmpfloat (recommended->lower, >=, 4.0 - 1e-12);
        }
    }
  g_assert_cmpuint (n_recommended, >, 20);
}

static void
test_order_of_runs_changes_nothing (void)
{
  g_autoptr (GRand) random = g_rand_new_with_seed (9);

  for (guint trial = 0; trial < 20; trial++)
    {
      g_autoptr (BbProcessWindowIn) in = random_window (random, 1 + trial % 2);
      g_autoptr (BbProcessWindowOut) before = find_window (in);
      g_autoptr (BbProcessWindowOut) after = NULL;

      for (guint i = in->runs->len - 1; i > 0; i--)
        {
          guint other = (guint) g_rand_int_range (random, 0, (gint32) i + 1);
          BbWindowRun swapped = g_array_index (in->runs, BbWindowRun, i);

          g_array_index (in->runs, BbWindowRun, i) = g_array_index (in->runs, BbWindowRun, other);
          g_array_index (in->runs, BbWindowRun, other) = swapped;
        }
      after = find_window (in);
      g_assert_true (bb_record_equal (&bb_process_window_out_table, before, after));
    }
}

/* Surer is never cheaper, and its bounds lie no higher. */
static void
test_wider_confidence_never_narrows (void)
{
  g_autoptr (GRand) random = g_rand_new_with_seed (10);

  for (guint trial = 0; trial < 20; trial++)
    {
      g_autoptr (BbProcessWindowIn) in = random_window (random, 1 + trial % 2);
      double last_cost = -INFINITY;
      g_autoptr (BbProcessWindowOut) last = NULL;

      for (in->confidence = 0.55; in->confidence < 1.0; in->confidence += 0.1)
        {
          BbProcessWindowOut *out = find_window (in);
          const BbWindowRecommendation *recommended = out->recommended;
          double cost = recommended != NULL ? recommended->cost : (double) INFINITY;

          g_assert_cmpfloat (cost, >=, last_cost - 1e-9);
          for (guint i = 0; last != NULL && last->grid != NULL && i < out->grid->len; i++)
            g_assert_cmpfloat (g_array_index (out->grid, BbWindowPlace, i).lower, <=,
                               g_array_index (last->grid, BbWindowPlace, i).lower);
          g_clear_pointer (&last, bb_process_window_out_free);
          last = out;
          last_cost = cost;
        }
    }
}

/* Each specimen that is proposed raises the bound at the recommended setting, if it comes out as predicted. */
static void
test_next_specimens_narrow (void)
{
  g_autoptr (BbProcessWindowIn) in = load_set ("dome");
  g_autoptr (BbProcessWindowOut) out = find_window (in);
  const BbWindowRecommendation *recommended = out->recommended;
  double x[32][2];
  double y[32] = { 0 };
  double last = INFINITY;
  guint n = in->runs->len;

  for (guint i = 0; i < n; i++)
    for (guint f = 0; f < 2; f++)
      x[i][f] = g_array_index (g_array_index (in->runs, BbWindowRun, i).x, double, f);
  g_assert_cmpuint (out->next->len, ==, 3);
  for (guint i = 0; i <= out->next->len; i++)
    {
      g_autoptr (BbSurface) surface = bb_surface_fit (x[0], y, n + i, 2, TRUE);
      double here = bb_surface_get_leverage (surface, (const double *) (gpointer) recommended->x->data);

      g_assert_cmpfloat (here, <, last);
      last = here;
      if (i == out->next->len)
        break;
      /* No other place of the grid would have done better. */
      for (guint f = 0; f < 2; f++)
        x[n + i][f] = g_array_index (g_array_index (out->next, BbWindowSpecimen, i).x, double, f);
      for (guint p = 0; p < out->grid->len; p += 7)
        {
          const double *place = (const double *) (gpointer) g_array_index (out->grid, BbWindowPlace, p).x->data;
          double kept[] = { x[n + i][0], x[n + i][1] };
          g_autoptr (BbSurface) chosen = bb_surface_fit (x[0], y, n + i + 1, 2, TRUE);
          g_autoptr (BbSurface) other = NULL;

          x[n + i][0] = place[0];
          x[n + i][1] = place[1];
          other = bb_surface_fit (x[0], y, n + i + 1, 2, TRUE);
          x[n + i][0] = kept[0];
          x[n + i][1] = kept[1];
          g_assert_cmpfloat (bb_surface_get_leverage (chosen, (const double *) (gpointer) recommended->x->data), <=,
                             bb_surface_get_leverage (other, (const double *) (gpointer) recommended->x->data) + 1e-9);
        }
    }
}

/* A setting somewhere from -1e6 to 1e6, over many powers of ten, or one of the ends. */
static double
extreme_setting (GRand *random)
{
  double size = g_rand_int_range (random, 0, 4) == 0 ? 1e6 : pow (10.0, g_rand_double_range (random, -12, 6));

  return g_rand_boolean (random) ? size : -size;
}

/* Whatever is within the limits is answered, by finite numbers or by null: the calculator's own check sees to it. */
static void
test_extremes_are_answered (void)
{
  g_autoptr (GRand) random = g_rand_new_with_seed (11);
  guint n_fitted = 0;

  for (guint trial = 0; trial < 80; trial++)
    {
      g_autoptr (BbProcessWindowIn) in = random_window (random, 1 + trial % 2);
      g_autoptr (BbProcessWindowOut) out = NULL;

      in->confidence = g_rand_boolean (random) ? 1.0 - 1e-12 : g_rand_double_range (random, 1e-12, 0.999);
      for (guint f = 0; f < in->factors->len; f++)
        {
          double a = extreme_setting (random);
          double b = extreme_setting (random);

          get_factor (in, f)->low = MIN (a, b);
          get_factor (in, f)->high = a == b ? nextafter (a, (double) INFINITY) : MAX (a, b);
          get_factor (in, f)->cost_per_unit = extreme_setting (random);
          get_factor (in, f)->high = MIN (get_factor (in, f)->high, 1e6);
          get_factor (in, f)->low = MIN (get_factor (in, f)->low, nextafter (get_factor (in, f)->high, -1e7));
          for (guint i = 0; i < in->runs->len; i++)
            if (g_rand_boolean (random))
              g_array_index (g_array_index (in->runs, BbWindowRun, i).x, double, f) = extreme_setting (random);
        }
      out = find_window (in);
      if (out->coefficients != NULL)
        n_fitted++;
    }
  g_assert_cmpuint (n_fitted, >, 25);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/window/certified-regressions", test_certified_regressions);
  g_test_add_func ("/window/fits-by-lm", test_fits_by_lm);
  g_test_add_func ("/window/bounds-by-predict", test_bounds_by_predict);
  g_test_add_func ("/window/cheapest-by-uniroot", test_cheapest_by_uniroot);
  g_test_add_func ("/window/nothing-on-the-grid-is-cheaper", test_nothing_on_the_grid_is_cheaper);
  g_test_add_func ("/window/order-of-runs-changes-nothing", test_order_of_runs_changes_nothing);
  g_test_add_func ("/window/wider-confidence-never-narrows", test_wider_confidence_never_narrows);
  g_test_add_func ("/window/next-specimens-narrow", test_next_specimens_narrow);
  g_test_add_func ("/window/extremes-are-answered", test_extremes_are_answered);

  return g_test_run ();
}
