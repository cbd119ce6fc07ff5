/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-calc"

#include "bb-survival.h"

#include <gsl/gsl_cdf.h>

/* When a specimen leaves the test, and whether because it failed. */
typedef struct {
  double cycles;
  gboolean failed;
} Leaving;

static int
compare_leavings (gconstpointer a,
                  gconstpointer b)
{
  const Leaving *first = a;
  const Leaving *second = b;

  return (first->cycles > second->cycles) - (first->cycles < second->cycles);
}

static GArray *
sort_leavings (const BbLife *lives,
               guint         n_lives)
{
  GArray *leavings = g_array_sized_new (FALSE, FALSE, sizeof (Leaving), n_lives);

  for (guint i = 0; i < n_lives; i++)
    {
      gboolean failed = isfinite (lives[i].first_bad);
      Leaving leaving = { failed ? lives[i].first_bad : lives[i].last_good, failed };

      g_array_append_val (leavings, leaving);
    }
  g_array_sort (leavings, compare_leavings);

  return leavings;
}

/* The interval on the scale of log (−log S), which can't leave 0 to 1; there is none where nobody survives. */
static void
set_interval (BbSurvivalStep *step,
              double          relative_variance)
{
  double z = gsl_cdf_ugaussian_Pinv (0.975);
  double width = 0.0;

  if (step->survival <= 0.0)
    return;

  width = z * sqrt (relative_variance) / -log (step->survival);
  step->low = pow (step->survival, exp (width));
  step->high = pow (step->survival, exp (-width));
}

/**
 * bb_survival_estimate:
 * @lives: specimens, in any order
 * @n_lives: how many
 *
 * Estimates the share of specimens that survive, by Kaplan and Meier, with Greenwood's variance and the 95 %
 * interval on the log-log scale. A failure counts at @first_bad, a specimen that never failed leaves at
 * @last_good and is still at risk there.
 *
 * Returns: (transfer full): a #BbSurvivalStep for each number of cycles at which specimens failed
 */
GArray *
bb_survival_estimate (const BbLife *lives,
                      guint         n_lives)
{
  g_autoptr (GArray) leavings = sort_leavings (lives, n_lives);
  GArray *steps = g_array_new (FALSE, FALSE, sizeof (BbSurvivalStep));
  double survival = 1.0;
  double relative_variance = 0.0;
  guint next = 0;

  for (guint i = 0; i < leavings->len; i = next)
    {
      double cycles = g_array_index (leavings, Leaving, i).cycles;
      double at_risk = leavings->len - i;
      double events = 0.0;
      BbSurvivalStep step;

      for (next = i; next < leavings->len && g_array_index (leavings, Leaving, next).cycles == cycles; next++)
        if (g_array_index (leavings, Leaving, next).failed)
          events += 1.0;
      if (events == 0.0)
        continue;

      survival *= (at_risk - events) / at_risk;
      if (events < at_risk)
        relative_variance += events / (at_risk * (at_risk - events));
      bb_record_init (&bb_survival_step_table, &step);
      step.cycles = cycles;
      step.at_risk = (gint64) at_risk;
      step.events = (gint64) events;
      step.survival = survival;
      set_interval (&step, relative_variance);
      g_array_append_val (steps, step);
    }

  return steps;
}

BB_DEFINE_TABLE (BbSurvivalStep, bb_survival_step, "survival_step", N_("Step"), BB_SURVIVAL_STEP_FIELDS, NULL)
