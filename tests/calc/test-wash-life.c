/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <math.h>

#include "bb-wash-life.h"
#include "reference.h"

static void
add_specimen (BbWashLifeIn *in,
              double        last_good,
              double        first_bad)
{
  BbWashLifeSpecimen *specimen = bb_field_append_item (bb_table_find_field (&bb_wash_life_in_table, "specimens"), in);

  specimen->last_good_cycles = last_good;
  specimen->first_bad_cycles = first_bad;
}

static BbWashLifeOut *
estimate (const BbWashLifeIn *in)
{
  BbWashLifeOut *out = bb_wash_life_out_new ();
  g_autoptr (GError) error = NULL;

  bb_calculator_run (&bb_wash_life_calculator, in, out, &error);
  g_assert_no_error (error);

  return out;
}

static const BbSurvivalStep *
step_at (const BbWashLifeOut *out,
         guint                index)
{
  g_assert_cmpuint (index, <, out->steps->len);

  return &g_array_index (out->steps, BbSurvivalStep, index);
}

/* The rows of one set in tests/reference/wash-life-data.csv. */
static BbWashLifeIn *
load_set (const char *set)
{
  g_autoptr (Reference) data = reference_load ("wash-life-data");
  BbWashLifeIn *in = bb_wash_life_in_new ();

  for (guint i = 0; i < reference_get_length (data); i++)
    if (g_str_equal (reference_get_text (data, i, "set"), set))
      add_specimen (in, reference_get_number (data, i, "last_good_cycles"),
                    reference_get_number (data, i, "first_bad_cycles"));
  g_assert_nonnull (in->specimens);

  return in;
}

static void
assert_same (double actual,
             double expected,
             double tolerance)
{
  if (isnan (expected))
    g_assert_true (isnan (actual));
  else
    g_assert_cmpfloat_with_epsilon (actual, expected, tolerance);
}

static void
test_weibull_by_survreg (void)
{
  g_autoptr (Reference) fits = reference_load ("wash-life-weibull");

  for (guint i = 0; i < reference_get_length (fits); i++)
    {
      g_autoptr (BbWashLifeIn) in = load_set (reference_get_text (fits, i, "set"));
      g_autoptr (BbWashLifeOut) out = NULL;

      in->at_cycles = reference_get_number (fits, i, "at_cycles");
      out = estimate (in);
      g_assert_cmpint (out->reason, ==, BB_CHOICE_NONE);
      assert_same (out->shape / reference_get_number (fits, i, "shape"), 1.0, 1e-9);
      assert_same (out->scale / reference_get_number (fits, i, "scale"), 1.0, 1e-9);
      assert_same (out->median_cycles / reference_get_number (fits, i, "median_cycles"), 1.0, 1e-9);
      assert_same (out->survival_at, reference_get_number (fits, i, "survival_at"), 1e-9);
    }
}

static void
test_steps_by_survfit (void)
{
  g_autoptr (Reference) steps = reference_load ("wash-life-km");
  guint row = 0;

  while (row < reference_get_length (steps))
    {
      const char *set = reference_get_text (steps, row, "set");
      g_autoptr (BbWashLifeIn) in = load_set (set);
      g_autoptr (BbWashLifeOut) out = estimate (in);
      guint n_steps = 0;

      for (; row < reference_get_length (steps) && g_str_equal (reference_get_text (steps, row, "set"), set); row++)
        {
          const BbSurvivalStep *step = step_at (out, n_steps++);

          g_assert_cmpfloat (step->cycles, ==, reference_get_number (steps, row, "cycles"));
          g_assert_cmpint (step->at_risk, ==, (gint64) reference_get_number (steps, row, "at_risk"));
          g_assert_cmpint (step->events, ==, (gint64) reference_get_number (steps, row, "events"));
          assert_same (step->survival, reference_get_number (steps, row, "survival"), 1e-12);
          assert_same (step->low, reference_get_number (steps, row, "low"), 1e-12);
          assert_same (step->high, reference_get_number (steps, row, "high"), 1e-12);
        }
      g_assert_cmpuint (out->steps->len, ==, n_steps);
    }
}

/* The published curve; its file also has the times at which somebody only left, where the curve has no step. */
static void
test_published_curve (void)
{
  g_autoptr (Reference) data = reference_load ("km-aml-data");
  g_autoptr (Reference) curve = reference_load ("km-aml");
  g_autoptr (BbWashLifeIn) in = bb_wash_life_in_new ();
  g_autoptr (BbWashLifeOut) out = NULL;
  guint n_steps = 0;

  for (guint i = 0; i < reference_get_length (data); i++)
    {
      double weeks = reference_get_number (data, i, "time_weeks");
      gboolean failed = reference_get_number (data, i, "status_1event_0censored") == 1.0;

      add_specimen (in, failed ? 0.0 : weeks, failed ? weeks : (double) NAN);
    }
  out = estimate (in);

  for (guint row = 0; row < reference_get_length (curve); row++)
    if (g_str_equal (reference_get_text (curve, row, "stratum"), "all") &&
        reference_get_number (curve, row, "n_event_count") > 0.0)
      {
        const BbSurvivalStep *step = step_at (out, n_steps++);

        g_assert_cmpfloat (step->cycles, ==, reference_get_number (curve, row, "time_weeks"));
        g_assert_cmpint (step->at_risk, ==, (gint64) reference_get_number (curve, row, "n_risk_count"));
        assert_same (step->survival, reference_get_number (curve, row, "surv_fraction"), 5.1e-13);
        assert_same (step->low, reference_get_number (curve, row, "lower95_loglog"), 5.1e-13);
        assert_same (step->high, reference_get_number (curve, row, "upper95_loglog"), 5.1e-13);
      }
  g_assert_cmpuint (out->steps->len, ==, n_steps);
}

static BbWashLifeIn *
random_specimens (GRand *random,
                  guint  n)
{
  BbWashLifeIn *in = bb_wash_life_in_new ();

  in->at_cycles = 20;
  for (guint i = 0; i < n; i++)
    {
      double life = 30.0 * pow (-log (g_rand_double_range (random, 1e-9, 1.0)), 0.5);
      double good = 5.0 * floor (life / 5.0);

      add_specimen (in, good, g_rand_int_range (random, 0, 4) == 0 ? (double) NAN : good + 5.0);
    }

  return in;
}

static void
shuffle (GRand  *random,
         GArray *specimens)
{
  for (guint i = specimens->len - 1; i > 0; i--)
    {
      guint other = (guint) g_rand_int_range (random, 0, (gint32) i + 1);
      BbWashLifeSpecimen swapped = g_array_index (specimens, BbWashLifeSpecimen, i);

      g_array_index (specimens, BbWashLifeSpecimen, i) = g_array_index (specimens, BbWashLifeSpecimen, other);
      g_array_index (specimens, BbWashLifeSpecimen, other) = swapped;
    }
}

/* To the last bit: sums go by the specimens' cycles, not by the list. */
static void
test_order_changes_nothing (void)
{
  g_autoptr (GRand) random = g_rand_new_with_seed (5);

  for (guint n = 2; n < 200; n++)
    {
      g_autoptr (BbWashLifeIn) in = random_specimens (random, n);
      g_autoptr (BbWashLifeOut) before = estimate (in);
      g_autoptr (BbWashLifeOut) after = NULL;

      shuffle (random, in->specimens);
      after = estimate (in);
      g_assert_true (bb_record_equal (&bb_wash_life_out_table, before, after));
    }
}

/* Twice as many cycles everywhere is twice the scale; the rest does not know about units. */
static void
test_scale_follows_cycles (void)
{
  g_autoptr (GRand) random = g_rand_new_with_seed (6);

  for (guint n = 10; n < 60; n++)
    {
      g_autoptr (BbWashLifeIn) in = random_specimens (random, n);
      g_autoptr (BbWashLifeOut) once = estimate (in);
      g_autoptr (BbWashLifeOut) twice = NULL;

      for (guint i = 0; i < n; i++)
        {
          g_array_index (in->specimens, BbWashLifeSpecimen, i).last_good_cycles *= 2.0;
          g_array_index (in->specimens, BbWashLifeSpecimen, i).first_bad_cycles *= 2.0;
        }
      in->at_cycles *= 2.0;
      twice = estimate (in);
      g_assert_cmpint (once->reason, ==, BB_CHOICE_NONE);
      assert_same (twice->shape / once->shape, 1.0, 1e-9);
      assert_same (twice->scale / once->scale, 2.0, 1e-9);
      assert_same (twice->survival_at, once->survival_at, 1e-9);
    }
}

static void
test_survival_falls_and_stays_within_its_bounds (void)
{
  g_autoptr (GRand) random = g_rand_new_with_seed (7);

  for (guint n = 1; n < 100; n++)
    {
      g_autoptr (BbWashLifeIn) in = random_specimens (random, n);
      g_autoptr (BbWashLifeOut) out = estimate (in);
      double last = 1.0;

      for (guint i = 0; i < out->steps->len; i++)
        {
          const BbSurvivalStep *step = step_at (out, i);

          g_assert_cmpfloat (step->survival, <, last);
          if (step->survival > 0.0)
            {
              g_assert_cmpfloat (step->low, <, step->survival);
              g_assert_cmpfloat (step->high, >, step->survival);
              g_assert_cmpfloat (step->low, >=, 0.0);
              g_assert_cmpfloat (step->high, <=, 1.0);
            }
          else
            g_assert_true (isnan (step->low) && isnan (step->high));
          last = step->survival;
        }
    }
}

/* Whatever is within the limits is answered, by finite numbers or by null: the calculator's own check sees to it. */
static void
test_extremes_are_answered (void)
{
  g_autoptr (GRand) random = g_rand_new_with_seed (12);
  guint n_fitted = 0;

  for (guint trial = 0; trial < 2000; trial++)
    {
      g_autoptr (BbWashLifeIn) in = bb_wash_life_in_new ();
      g_autoptr (BbWashLifeOut) out = NULL;
      guint n = (guint) g_rand_int_range (random, 1, 12);

      in->at_cycles = g_rand_boolean (random) ? 1e6 : 0.0;
      for (guint i = 0; i < n; i++)
        {
          double good = g_rand_int_range (random, 0, 4) == 0 ? 0.0 : pow (10.0, g_rand_double_range (random, -12, 5.9));
          double next = nextafter (good, 1e6);
          double bad = g_rand_boolean (random) ? next : fmin (1e6, fmax (next, good + pow (10.0, 7.0 - trial % 20)));

          add_specimen (in, good, g_rand_int_range (random, 0, 3) == 0 ? (double) NAN : bad);
        }
      out = estimate (in);
      if (out->reason == BB_CHOICE_NONE)
        {
          n_fitted++;
          g_assert_cmpfloat (out->shape, >, 0.0);
          g_assert_cmpfloat (out->scale, >, 0.0);
          g_assert_cmpfloat (out->survival_at, >=, 0.0);
          g_assert_cmpfloat (out->survival_at, <=, 1.0);
        }
    }
  g_assert_cmpuint (n_fitted, >, 1000);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/wash-life/weibull-by-survreg", test_weibull_by_survreg);
  g_test_add_func ("/wash-life/steps-by-survfit", test_steps_by_survfit);
  g_test_add_func ("/wash-life/published-curve", test_published_curve);
  g_test_add_func ("/wash-life/order-changes-nothing", test_order_changes_nothing);
  g_test_add_func ("/wash-life/scale-follows-cycles", test_scale_follows_cycles);
  g_test_add_func ("/wash-life/extremes-are-answered", test_extremes_are_answered);
  g_test_add_func ("/wash-life/survival-falls", test_survival_falls_and_stays_within_its_bounds);

  return g_test_run ();
}
