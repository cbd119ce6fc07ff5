/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-calc"

#include "bb-nozzle-balance.h"

#include <gsl/gsl_statistics_double.h>

#define SLACK 1e-9

static void
compare_nozzles (const double       *masses,
                 guint               n,
                 double              limit,
                 BbNozzleBalanceOut *out)
{
  const BbField *field = bb_table_find_field (&bb_nozzle_balance_out_table, "outside");
  GArray *outside = bb_field_ensure_array (field, out);
  double worst = -1.0;

  for (guint i = 0; i < n; i++)
    {
      double deviation = (masses[i] - out->mean_g) / out->mean_g;
      double index = i;

      if (fabs (deviation) > worst + SLACK)
        {
          worst = fabs (deviation);
          out->worst_index = i;
          out->worst_fraction = deviation;
        }
      if (fabs (deviation) > limit + SLACK)
        g_array_append_val (outside, index);
    }
}

/**
 * bb_calc_nozzle_balance:
 * @in: what each nozzle gave
 * @out: how evenly they give
 * @error: return location for a #GError; never set
 *
 * Compares the nozzles of a sprayer; see the top of bb-nozzle-balance.h.
 *
 * Returns: %TRUE
 */
gboolean
bb_calc_nozzle_balance (const BbNozzleBalanceIn *in,
                        BbNozzleBalanceOut      *out,
                        GError                 **error G_GNUC_UNUSED)
{
  const double *masses = (const double *) (const void *) in->masses_g->data;
  guint n = in->masses_g->len;

  out->mean_g = gsl_stats_mean (masses, 1, n);
  if (out->mean_g <= 0.0)
    return TRUE;

  out->cv = gsl_stats_sd_m (masses, 1, n, out->mean_g) / out->mean_g;
  compare_nozzles (masses, n, in->limit_fraction, out);

  return TRUE;
}

BB_DEFINE_TABLE (BbNozzleBalanceIn, bb_nozzle_balance_in, "nozzle_balance_in", N_("Nozzle balance"),
                 BB_NOZZLE_BALANCE_IN_FIELDS, NULL)
BB_DEFINE_TABLE (BbNozzleBalanceOut, bb_nozzle_balance_out, "nozzle_balance_out", N_("Nozzle balance"),
                 BB_NOZZLE_BALANCE_OUT_FIELDS, NULL)
BB_DEFINE_CALCULATOR (NozzleBalance, nozzle_balance, "nozzle-balance", N_("Nozzle balance"),
                      .summary = N_("How evenly the nozzles give, which is farthest off, and "
                                    "which are beyond the limit."),
                      .assumes = N_("All nozzles sprayed for the same time at the same "
                                    "pressure."),
                      .source = N_("Definitions. Limit of a tenth: common practice, no source."))
