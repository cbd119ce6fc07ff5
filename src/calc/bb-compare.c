/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-calc"

#include "bb-compare.h"

#include <gsl/gsl_randist.h>

#include "bb-pass-rate.h"

/* Splits whose probabilities differ by no more than rounding are equally probable. */
#define EQUAL_SLACK 1e-7

/**
 * bb_calc_compare:
 * @in: how many passed of how many, twice
 * @out: Fisher's p and the difference of the rates
 * @error: return location for a #GError in the domain %BB_MODEL_ERROR
 *
 * Compares two pass rates; see the top of bb-compare.h.
 *
 * Returns: %TRUE
 */
gboolean
bb_calc_compare (const BbCompareIn     *in,
                 BbCompareOut          *out,
                 G_GNUC_UNUSED GError **error)
{
  guint tested_1 = (guint) in->tested_1;
  guint tested_2 = (guint) in->tested_2;
  guint passed = (guint) (in->passed_1 + in->passed_2);
  guint fewest = passed > tested_2 ? passed - tested_2 : 0;
  guint most = MIN (passed, tested_1);
  double seen = gsl_ran_hypergeometric_pdf ((guint) in->passed_1, tested_1, tested_2, passed);
  double no_likelier = 0.0;
  double all = 0.0;

  for (guint k = fewest; k <= most; k++)
    {
      double probability = gsl_ran_hypergeometric_pdf (k, tested_1, tested_2, passed);

      all += probability;
      if (probability <= seen * (1.0 + EQUAL_SLACK))
        no_likelier += probability;
    }

  /* The sum is 1 but for rounding; divided by it, p never passes 1. */
  out->p_value = no_likelier / all;
  out->difference = (double) in->passed_1 / (double) in->tested_1 - (double) in->passed_2 / (double) in->tested_2;

  return TRUE;
}

static gboolean
check_in (gconstpointer record,
          GError      **error)
{
  const BbCompareIn *in = record;

  return bb_pass_rate_check_counts ("passed_1", in->passed_1, in->tested_1, error) &&
         bb_pass_rate_check_counts ("passed_2", in->passed_2, in->tested_2, error);
}

BB_DEFINE_TABLE (BbCompareIn, bb_compare_in, "compare_in", N_("Compare"), BB_COMPARE_IN_FIELDS, check_in)
BB_DEFINE_TABLE (BbCompareOut, bb_compare_out, "compare_out", N_("Compare"), BB_COMPARE_OUT_FIELDS, NULL)
BB_DEFINE_CALCULATOR (Compare, compare, "compare", N_("Compare"),
                      .summary = N_("Whether two recipes pass at different rates."),
                      .assumes = N_("Specimens made alike within each recipe and washed apart."),
                      .source = N_("Fisher's exact test, two-sided, by GSL's hypergeometric distribution."))
