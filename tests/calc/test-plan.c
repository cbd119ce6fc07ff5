/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <math.h>
#include <string.h>

#include "bb-trial-plan.h"
#include "reference.h"

static void
add_factor (BbTrialPlanIn *in,
            double         low,
            double         high,
            gint64         levels)
{
  BbTrialFactor *factor = bb_field_append_item (bb_table_find_field (&bb_trial_plan_in_table, "factors"), in);

  factor->key = g_strdup_printf ("factor_%u", in->factors->len);
  factor->low = low;
  factor->high = high;
  factor->levels = levels;
}

static BbTrialPlanIn *
make_plan (int    design,
           gint64 replicates,
           gint64 seed)
{
  BbTrialPlanIn *in = bb_trial_plan_in_new ();

  in->design = design;
  in->replicates = replicates;
  in->seed = seed;

  return in;
}

static BbTrialPlanOut *
plan (const BbTrialPlanIn *in)
{
  BbTrialPlanOut *out = bb_trial_plan_out_new ();
  g_autoptr (GError) error = NULL;

  bb_calculator_run (&bb_trial_plan_calculator, in, out, &error);
  g_assert_no_error (error);

  return out;
}

static const BbTrialSpecimen *
get_specimen (const BbTrialPlanOut *out,
              guint                 index)
{
  g_assert_cmpuint (index, <, out->specimens->len);

  return &g_array_index (out->specimens, BbTrialSpecimen, index);
}

static double
get_setting (const BbTrialPlanOut *out,
             guint                 specimen,
             guint                 factor)
{
  return g_array_index (get_specimen (out, specimen)->x, double, factor);
}

/* Every place in the order is taken once, every label is another, and no letter can be taken for another. */
static void
assert_orderly (const BbTrialPlanOut *out)
{
  g_autoptr (GHashTable) labels = g_hash_table_new (g_str_hash, g_str_equal);
  g_autofree gboolean *taken = g_new0 (gboolean, out->specimens->len);

  for (guint i = 0; i < out->specimens->len; i++)
    {
      const BbTrialSpecimen *specimen = get_specimen (out, i);

      g_assert_cmpint (specimen->order, >=, 1);
      g_assert_cmpint (specimen->order, <=, out->specimens->len);
      g_assert_false (taken[specimen->order - 1]);
      taken[specimen->order - 1] = TRUE;
      g_assert_true (g_hash_table_add (labels, specimen->label));
      g_assert_cmpuint (strlen (specimen->label), >=, 2);
      g_assert_cmpuint (strlen (specimen->label), <=, 4);
      g_assert_null (strpbrk (specimen->label, "01258ABDEGIOQSUZ6"));
    }
}

static void
test_ladder (void)
{
  const double settings[] = { 100, 150, 200, 250, 300 };
  g_autoptr (BbTrialPlanIn) in = make_plan (BB_TRIAL_LADDER, 2, 1);
  g_autoptr (BbTrialPlanOut) out = NULL;

  add_factor (in, 100, 300, 5);
  out = plan (in);
  g_assert_cmpuint (out->specimens->len, ==, 10);
  for (guint i = 0; i < 10; i++)
    g_assert_cmpfloat (get_setting (out, i, 0), ==, settings[i / 2]);
  assert_orderly (out);
}

static void
test_factorial_with_centre (void)
{
  g_autoptr (BbTrialPlanIn) in = make_plan (BB_TRIAL_FACTORIAL, 1, 2);
  g_autoptr (BbTrialPlanOut) out = NULL;

  add_factor (in, 20, 60, 2);
  add_factor (in, 100, 300, 2);
  add_factor (in, 150, 180, 2);
  in->centre_points = 3;
  out = plan (in);
  g_assert_cmpuint (out->specimens->len, ==, 11);
  for (guint i = 0; i < 8; i++)
    {
      g_assert_cmpfloat (get_setting (out, i, 0), ==, i & 4 ? 60 : 20);
      g_assert_cmpfloat (get_setting (out, i, 1), ==, i & 2 ? 300 : 100);
      g_assert_cmpfloat (get_setting (out, i, 2), ==, i & 1 ? 180 : 150);
    }
  for (guint i = 8; i < 11; i++)
    {
      g_assert_cmpfloat (get_setting (out, i, 0), ==, 40);
      g_assert_cmpfloat (get_setting (out, i, 1), ==, 200);
      g_assert_cmpfloat (get_setting (out, i, 2), ==, 165);
    }
  assert_orderly (out);
}

static void
test_grid (void)
{
  g_autoptr (BbTrialPlanIn) in = make_plan (BB_TRIAL_GRID, 1, 3);
  g_autoptr (BbTrialPlanOut) out = NULL;

  add_factor (in, 0, 1, 11);
  add_factor (in, -5, 5, 3);
  out = plan (in);
  g_assert_cmpuint (out->specimens->len, ==, 33);
  for (guint i = 0; i < 33; i++)
    {
      g_assert_cmpfloat_with_epsilon (get_setting (out, i, 0), (i / 3) / 10.0, 1e-15);
      g_assert_cmpfloat (get_setting (out, i, 1), ==, 5.0 * (i % 3) - 5.0);
    }
  assert_orderly (out);
}

/* The generator once more, as GLib has it, with the shuffle written out: the promise that plans repeat elsewhere. */
static void
test_order_by_another_generator (void)
{
  for (guint32 seed = 1; seed < 200; seed++)
    {
      g_autoptr (BbTrialPlanIn) in = make_plan (BB_TRIAL_LADDER, 1, seed);
      g_autoptr (BbTrialPlanOut) out = NULL;
      g_autoptr (GRand) random = g_rand_new_with_seed (seed);
      guint n = 2 + seed % 99;
      guint orders[100];

      add_factor (in, 0, 1, n);
      out = plan (in);
      for (guint i = 0; i < n; i++)
        orders[i] = i + 1;
      for (guint i = n - 1; i > 0; i--)
        {
          guint32 scale = G_MAXUINT32 / (i + 1);
          guint32 other = g_rand_int (random) / scale;
          guint swapped = orders[i];

          while (other > i)
            other = g_rand_int (random) / scale;
          orders[i] = orders[other];
          orders[other] = swapped;
        }
      for (guint i = 0; i < n; i++)
        g_assert_cmpint (get_specimen (out, i)->order, ==, orders[i]);
      assert_orderly (out);
    }
}

/* And by a third generator, for plans of as many specimens. */
static void
test_order_by_python (void)
{
  g_autoptr (Reference) orders = reference_load ("trial-plan-orders");

  for (guint row = 0; row < reference_get_length (orders); row++)
    {
      guint n = (guint) reference_get_number (orders, row, "specimens");
      gint64 seed = (gint64) reference_get_number (orders, row, "seed");
      g_autoptr (BbTrialPlanIn) in = make_plan (BB_TRIAL_FACTORIAL, 1, seed);
      g_autoptr (BbTrialPlanOut) out = NULL;
      g_auto (GStrv) expected = g_strsplit (reference_get_text (orders, row, "orders"), " ", -1);

      add_factor (in, 0, 1, 2);
      in->centre_points = n - 2;
      out = plan (in);
      g_assert_cmpuint (out->specimens->len, ==, n);
      g_assert_cmpuint (g_strv_length (expected), ==, n);
      for (guint i = 0; i < n; i++)
        g_assert_cmpint (get_specimen (out, i)->order, ==, g_ascii_strtoll (expected[i], NULL, 10));
    }
}

static void
test_seed_decides (void)
{
  g_autoptr (BbTrialPlanIn) in = make_plan (BB_TRIAL_LADDER, 4, 7);
  g_autoptr (BbTrialPlanOut) once = NULL;
  g_autoptr (BbTrialPlanOut) again = NULL;
  g_autoptr (BbTrialPlanOut) other = NULL;

  add_factor (in, 0, 1, 6);
  once = plan (in);
  again = plan (in);
  in->seed = 8;
  other = plan (in);
  g_assert_true (bb_record_equal (&bb_trial_plan_out_table, once, again));
  g_assert_false (bb_record_equal (&bb_trial_plan_out_table, once, other));
}

/* Each specimen comes first about as often as any other: 6,000 plans of 6, 1,000 each, within five deviations. */
static void
test_order_is_fair (void)
{
  guint first[6] = { 0 };

  for (gint64 seed = 1; seed <= 6000; seed++)
    {
      g_autoptr (BbTrialPlanIn) in = make_plan (BB_TRIAL_LADDER, 1, seed);
      g_autoptr (BbTrialPlanOut) out = NULL;

      add_factor (in, 0, 1, 6);
      out = plan (in);
      for (guint i = 0; i < 6; i++)
        if (get_specimen (out, i)->order == 1)
          first[i]++;
    }
  for (guint i = 0; i < 6; i++)
    g_assert_cmpfloat (fabs (first[i] - 1000.0), <, 5.0 * sqrt (6000.0 * (1.0 / 6.0) * (5.0 / 6.0)));
}

static void
test_largest_plan (void)
{
  g_autoptr (BbTrialPlanIn) in = make_plan (BB_TRIAL_GRID, 1, 4294967295);
  g_autoptr (BbTrialPlanOut) out = NULL;

  add_factor (in, 0, 1, 100);
  add_factor (in, 0, 1, 100);
  out = plan (in);
  g_assert_cmpuint (out->specimens->len, ==, 10000);
  assert_orderly (out);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/plan/ladder", test_ladder);
  g_test_add_func ("/plan/factorial-with-centre", test_factorial_with_centre);
  g_test_add_func ("/plan/grid", test_grid);
  g_test_add_func ("/plan/order-by-another-generator", test_order_by_another_generator);
  g_test_add_func ("/plan/order-by-python", test_order_by_python);
  g_test_add_func ("/plan/seed-decides", test_seed_decides);
  g_test_add_func ("/plan/order-is-fair", test_order_is_fair);
  g_test_add_func ("/plan/largest-plan", test_largest_plan);

  return g_test_run ();
}
