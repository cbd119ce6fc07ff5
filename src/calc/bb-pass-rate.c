/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-calc"

#include "bb-pass-rate.h"

#include <gsl/gsl_cdf.h>

#include "bb-root.h"

#define COUNT_SLACK 1e-12

/* A beta distribution and a tail of it. */
typedef struct {
  double a;
  double b;
  double probability;
} Tail;

static double
lower_tail_beyond (double x,
                   void  *data)
{
  const Tail *tail = data;

  return gsl_cdf_beta_P (x, tail->a, tail->b) - tail->probability;
}

static double
upper_tail_beyond (double x,
                   void  *data)
{
  const Tail *tail = data;

  return gsl_cdf_beta_Q (x, tail->a, tail->b) - tail->probability;
}

/* The rate at which as many passes or more come with no more than this probability. */
static double
lower_bound (double passed,
             double tested,
             double probability)
{
  Tail tail = { .a = passed, .b = tested - passed + 1.0, .probability = probability };
  gsl_function function = { .function = lower_tail_beyond, .params = &tail };

  return passed > 0.0 ? bb_root_between (&function, 0.0, 1.0) : 0.0;
}

static double
upper_bound (double passed,
             double tested,
             double probability)
{
  Tail tail = { .a = passed + 1.0, .b = tested - passed, .probability = probability };
  gsl_function function = { .function = upper_tail_beyond, .params = &tail };

  return passed < tested ? bb_root_between (&function, 0.0, 1.0) : 1.0;
}

static gint64
success_run (double confidence,
             double rate)
{
  double exact = log1p (-confidence) / log (rate);

  return MAX ((gint64) ceil (exact * (1.0 - COUNT_SLACK)), 1);
}

/**
 * bb_calc_pass_rate:
 * @in: how many passed of how many
 * @out: the rate and its bounds
 * @error: return location for a #GError in the domain %BB_MODEL_ERROR
 *
 * Bounds a pass rate; see the top of bb-pass-rate.h.
 *
 * Returns: %TRUE
 */
gboolean
bb_calc_pass_rate (const BbPassRateIn   *in,
                   BbPassRateOut        *out,
                   G_GNUC_UNUSED GError **error)
{
  double passed = (double) in->passed;
  double tested = (double) in->tested;
  double doubt = 1.0 - in->confidence;

  out->rate = passed / tested;
  out->lower = lower_bound (passed, tested, doubt / 2.0);
  out->upper = upper_bound (passed, tested, doubt / 2.0);
  out->one_sided_lower = lower_bound (passed, tested, doubt);
  if (!isnan (in->wanted_rate))
    out->needed_without_failure = success_run (in->confidence, in->wanted_rate);

  return TRUE;
}

/**
 * bb_pass_rate_check_counts:
 * @key: the key that holds how many passed
 * @passed: how many passed
 * @tested: how many were tested
 * @error: return location for a #GError in the domain %BB_MODEL_ERROR
 *
 * Returns: %TRUE if no more passed than were tested
 */
gboolean
bb_pass_rate_check_counts (const char *key,
                           gint64      passed,
                           gint64      tested,
                           GError    **error)
{
  if (passed <= tested)
    return TRUE;

  g_set_error (error, BB_MODEL_ERROR, BB_MODEL_ERROR_VALUE,
               "%s: %" G_GINT64_FORMAT " is above the maximum %" G_GINT64_FORMAT ", as many as were tested",
               key, passed, tested);

  return FALSE;
}

static gboolean
check_in (gconstpointer record,
          GError      **error)
{
  const BbPassRateIn *in = record;

  return bb_pass_rate_check_counts ("passed", in->passed, in->tested, error);
}

BB_DEFINE_TABLE (BbPassRateIn, bb_pass_rate_in, "pass_rate_in", N_("Pass rate"), BB_PASS_RATE_IN_FIELDS, check_in)
BB_DEFINE_TABLE (BbPassRateOut, bb_pass_rate_out, "pass_rate_out", N_("Pass rate"), BB_PASS_RATE_OUT_FIELDS, NULL)
BB_DEFINE_CALCULATOR (PassRate, pass_rate, "pass-rate", N_("Pass rate"),
                      .summary = N_("What share of garments would pass, from how many specimens did."),
                      .assumes = N_("Specimens made alike and washed apart, each with the same chance."),
                      .source = N_("Clopper and Pearson 1934, by GSL's beta distribution; success-run theorem."))
