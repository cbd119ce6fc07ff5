/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <math.h>

#include "bb-compare.h"
#include "bb-pass-rate.h"
#include "bb-wash-verdict.h"
#include "reference.h"

static BbPassRateOut
pass_rate (gint64 passed,
           gint64 tested,
           double confidence)
{
  g_autoptr (BbPassRateIn) in = bb_pass_rate_in_new ();
  BbPassRateOut out;
  g_autoptr (GError) error = NULL;

  in->passed = passed;
  in->tested = tested;
  in->confidence = confidence;
  bb_record_init (&bb_pass_rate_out_table, &out);
  bb_calculator_run (&bb_pass_rate_calculator, in, &out, &error);
  g_assert_no_error (error);

  return out;
}

static BbCompareOut
compare (gint64 passed_1,
         gint64 tested_1,
         gint64 passed_2,
         gint64 tested_2)
{
  g_autoptr (BbCompareIn) in = bb_compare_in_new ();
  BbCompareOut out;
  g_autoptr (GError) error = NULL;

  in->passed_1 = passed_1;
  in->tested_1 = tested_1;
  in->passed_2 = passed_2;
  in->tested_2 = tested_2;
  bb_record_init (&bb_compare_out_table, &out);
  bb_calculator_run (&bb_compare_calculator, in, &out, &error);
  g_assert_no_error (error);

  return out;
}

/* The published files have twelve decimals. */
static void
test_two_sided_bounds (void)
{
  g_autoptr (Reference) cases = reference_load ("clopper-pearson");

  for (guint i = 0; i < reference_get_length (cases); i++)
    {
      BbPassRateOut out = pass_rate ((gint64) reference_get_number (cases, i, "k_count"),
                                     (gint64) reference_get_number (cases, i, "n_count"),
                                     reference_get_number (cases, i, "conf_level_fraction"));

      g_assert_cmpfloat_with_epsilon (out.lower, reference_get_number (cases, i, "low_proportion"), 5.1e-13);
      g_assert_cmpfloat_with_epsilon (out.upper, reference_get_number (cases, i, "high_proportion"), 5.1e-13);
    }
}

static void
test_many_specimens (void)
{
  g_autoptr (Reference) cases = reference_load ("pass-rate-r");

  for (guint i = 0; i < reference_get_length (cases); i++)
    {
      BbPassRateOut out = pass_rate ((gint64) reference_get_number (cases, i, "passed"),
                                     (gint64) reference_get_number (cases, i, "tested"),
                                     reference_get_number (cases, i, "confidence"));

      g_assert_cmpfloat_with_epsilon (out.lower, reference_get_number (cases, i, "lower"), 1e-12);
      g_assert_cmpfloat_with_epsilon (out.upper, reference_get_number (cases, i, "upper"), 1e-12);
      g_assert_cmpfloat_with_epsilon (out.one_sided_lower, reference_get_number (cases, i, "one_sided_lower"), 1e-12);
    }
}

static void
test_wider_confidence_never_narrows (void)
{
  g_autoptr (GRand) random = g_rand_new_with_seed (2);

  for (guint i = 0; i < 500; i++)
    {
      gint64 tested = g_rand_int_range (random, 1, 400);
      gint64 passed = g_rand_int_range (random, 0, (gint32) tested + 1);
      BbPassRateOut last = pass_rate (passed, tested, 0.01);

      for (double confidence = 0.06; confidence < 1.0; confidence += 0.05)
        {
          BbPassRateOut out = pass_rate (passed, tested, confidence);

          g_assert_cmpfloat (out.lower, <=, last.lower);
          g_assert_cmpfloat (out.upper, >=, last.upper);
          g_assert_cmpfloat (out.one_sided_lower, <=, last.one_sided_lower);
          g_assert_cmpfloat (out.lower, <=, out.rate);
          g_assert_cmpfloat (out.upper, >=, out.rate);
          last = out;
        }
    }
}

static void
test_success_run_is_enough (void)
{
  g_autoptr (GRand) random = g_rand_new_with_seed (3);

  for (guint i = 0; i < 500; i++)
    {
      g_autoptr (BbPassRateIn) in = bb_pass_rate_in_new ();
      BbPassRateOut out;

      in->passed = in->tested = 1;
      in->confidence = g_rand_double_range (random, 0.01, 0.999);
      in->wanted_rate = g_rand_double_range (random, 0.01, 0.999);
      bb_record_init (&bb_pass_rate_out_table, &out);
      g_assert_true (bb_calculator_run (&bb_pass_rate_calculator, in, &out, NULL));
      g_assert_cmpfloat (1.0 - pow (in->wanted_rate, (double) out.needed_without_failure), >=, in->confidence - 1e-9);
      g_assert_cmpfloat (1.0 - pow (in->wanted_rate, (double) out.needed_without_failure - 1.0), <, in->confidence);
    }
}

static void
test_fisher (void)
{
  g_autoptr (Reference) cases = reference_load ("compare-r");

  for (guint i = 0; i < reference_get_length (cases); i++)
    {
      double expected = reference_get_number (cases, i, "p_value");
      gint64 passed_1 = (gint64) reference_get_number (cases, i, "passed_1");
      gint64 tested_1 = (gint64) reference_get_number (cases, i, "tested_1");
      gint64 passed_2 = (gint64) reference_get_number (cases, i, "passed_2");
      gint64 tested_2 = (gint64) reference_get_number (cases, i, "tested_2");
      BbCompareOut out = compare (passed_1, tested_1, passed_2, tested_2);
      BbCompareOut back = compare (passed_2, tested_2, passed_1, tested_1);

      g_assert_cmpfloat_with_epsilon (out.p_value / expected, 1.0, 1e-11);
      g_assert_cmpfloat_with_epsilon (back.p_value / out.p_value, 1.0, 1e-11);
      g_assert_cmpfloat (back.difference, ==, -out.difference);
    }
}

typedef struct {
  gint64 cycles;
  int change;
  int stain;
  int cracked;
} Reading;

static BbWashVerdictOut
judge (const Reading *readings,
       guint          n_readings,
       gint64         plan)
{
  g_autoptr (BbWashVerdictIn) in = bb_wash_verdict_in_new ();
  const BbField *list = bb_table_find_field (&bb_wash_verdict_in_table, "readings");
  BbWashVerdictOut out;
  g_autoptr (GError) error = NULL;

  in->plan_cycles = plan;
  in->minimum_change = BB_GRADE_4;
  in->minimum_stain = BB_GRADE_3_4;
  in->crack_allowed = FALSE;
  bb_field_ensure_array (list, in);
  for (guint i = 0; i < n_readings; i++)
    {
      BbVerdictReading *reading = bb_field_append_item (list, in);

      reading->cycles = readings[i].cycles;
      reading->change = readings[i].change;
      reading->stain = readings[i].stain;
      reading->cracked = readings[i].cracked;
    }
  bb_record_init (&bb_wash_verdict_out_table, &out);
  bb_calculator_run (&bb_wash_verdict_calculator, in, &out, &error);
  g_assert_no_error (error);

  return out;
}

/* The order of the readings, and readings added after a failure, change nothing but the worst grade. */
static void
test_verdict_needs_no_order (void)
{
  g_autoptr (GRand) random = g_rand_new_with_seed (4);

  for (guint i = 0; i < 500; i++)
    {
      Reading readings[8];
      BbWashVerdictOut before;
      BbWashVerdictOut after;

      for (guint r = 0; r < G_N_ELEMENTS (readings); r++)
        readings[r] = (Reading) { 5 * (r + 1), g_rand_int_range (random, 0, 4), g_rand_int_range (random, -1, 5),
                                  g_rand_int_range (random, 0, 10) == 0 };
      before = judge (readings, G_N_ELEMENTS (readings), 40);
      for (guint r = G_N_ELEMENTS (readings) - 1; r > 0; r--)
        {
          guint other = (guint) g_rand_int_range (random, 0, (gint32) r + 1);
          Reading swapped = readings[r];

          readings[r] = readings[other];
          readings[other] = swapped;
        }
      after = judge (readings, G_N_ELEMENTS (readings), 40);
      g_assert_true (bb_record_equal (&bb_wash_verdict_out_table, &before, &after));
    }
}

/* What is read after a verdict that is not open changes nothing but the worst grade. */
static void
test_verdict_stays_closed (void)
{
  g_autoptr (GRand) random = g_rand_new_with_seed (8);
  guint n_passed = 0;

  for (guint i = 0; i < 500; i++)
    {
      Reading readings[12];
      BbWashVerdictOut last = { .verdict = BB_VERDICT_OPEN };

      for (guint r = 0; r < G_N_ELEMENTS (readings); r++)
        {
          BbWashVerdictOut out;

          readings[r] = (Reading) { 5 * (r + 1), g_rand_int_range (random, 0, 5) == 0 ? BB_GRADE_3 : BB_GRADE_4,
                                    BB_GRADE_4, 0 };
          out = judge (readings, r + 1, 25);
          if (last.verdict != BB_VERDICT_OPEN)
            {
              out.worst_change = last.worst_change;
              g_assert_true (bb_record_equal (&bb_wash_verdict_out_table, &out, &last));
            }
          last = out;
        }
      n_passed += last.verdict == BB_VERDICT_PASSED;
    }
  g_assert_cmpuint (n_passed, >, 50);
  g_assert_cmpuint (n_passed, <, 450);
}

static void
test_verdict_opens_then_closes (void)
{
  const Reading readings[] = { { 5, BB_GRADE_5, BB_GRADE_5, 0 },
                               { 15, BB_GRADE_4_5, BB_GRADE_4, 0 },
                               { 25, BB_GRADE_4, BB_CHOICE_NONE, 0 },
                               { 26, BB_GRADE_4, BB_GRADE_3_4, 0 } };
  const int verdicts[] = { BB_VERDICT_OPEN, BB_VERDICT_OPEN, BB_VERDICT_OPEN, BB_VERDICT_OPEN, BB_VERDICT_PASSED };
  const int reasons[] = { BB_VERDICT_REASON_NOT_READ, BB_VERDICT_REASON_NOT_READ, BB_VERDICT_REASON_NOT_READ,
                          BB_VERDICT_REASON_STAIN_NOT_READ, BB_CHOICE_NONE };

  for (guint n = 0; n <= G_N_ELEMENTS (readings); n++)
    {
      BbWashVerdictOut out = judge (readings, n, 25);

      g_assert_cmpint (out.verdict, ==, verdicts[n]);
      g_assert_cmpint (out.reason, ==, reasons[n]);
      g_assert_cmpint (out.failed_at, ==, BB_INTEGER_NONE);
      g_assert_cmpint (out.worst_change, ==, n == 0 ? BB_CHOICE_NONE : readings[n - 1].change);
    }
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/proof/pass-rate/two-sided-bounds", test_two_sided_bounds);
  g_test_add_func ("/proof/pass-rate/many-specimens", test_many_specimens);
  g_test_add_func ("/proof/pass-rate/wider-confidence-never-narrows", test_wider_confidence_never_narrows);
  g_test_add_func ("/proof/pass-rate/success-run-is-enough", test_success_run_is_enough);
  g_test_add_func ("/proof/compare/fisher", test_fisher);
  g_test_add_func ("/proof/verdict/needs-no-order", test_verdict_needs_no_order);
  g_test_add_func ("/proof/verdict/stays-closed", test_verdict_stays_closed);
  g_test_add_func ("/proof/verdict/opens-then-closes", test_verdict_opens_then_closes);

  return g_test_run ();
}
