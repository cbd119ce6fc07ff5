/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-calc"

#include "bb-wash-life.h"

#include <stdlib.h>

#include "bb-canonical.h"

static int
compare_lives (const void *a,
               const void *b)
{
  const BbLife *first = a;
  const BbLife *second = b;

  if (first->last_good != second->last_good)
    return first->last_good < second->last_good ? -1 : 1;

  return (first->first_bad > second->first_bad) - (first->first_bad < second->first_bad);
}

/* Sorted, so that the order of the specimens does not change the last digit of a sum. */
static BbLife *
collect_lives (const BbWashLifeIn *in)
{
  BbLife *lives = g_new (BbLife, in->specimens->len);

  for (guint i = 0; i < in->specimens->len; i++)
    {
      const BbWashLifeSpecimen *specimen = &g_array_index (in->specimens, BbWashLifeSpecimen, i);

      lives[i].last_good = specimen->last_good_cycles;
      lives[i].first_bad = isnan (specimen->first_bad_cycles) ? (double) INFINITY : specimen->first_bad_cycles;
    }
  qsort (lives, in->specimens->len, sizeof (BbLife), compare_lives);

  return lives;
}

/**
 * bb_calc_wash_life:
 * @in: specimens
 * @out: how long they last
 * @error: return location for a #GError in the domain %BB_MODEL_ERROR
 *
 * Estimates wash life; see the top of bb-wash-life.h.
 *
 * Returns: %TRUE
 */
gboolean
bb_calc_wash_life (const BbWashLifeIn    *in,
                   BbWashLifeOut         *out,
                   G_GNUC_UNUSED GError **error)
{
  g_autofree BbLife *lives = collect_lives (in);
  double shape = 0.0;
  double scale = 0.0;

  out->steps = bb_survival_estimate (lives, in->specimens->len);
  out->reason = bb_weibull_fit (lives, in->specimens->len, &shape, &scale);
  if (out->reason != BB_CHOICE_NONE)
    return TRUE;

  out->shape = shape;
  out->scale = scale;
  out->median_cycles = bb_weibull_median (shape, scale);
  if (!isnan (in->at_cycles))
    out->survival_at = bb_weibull_survival (shape, scale, in->at_cycles);

  return TRUE;
}

static gboolean
check_specimen (gconstpointer record,
                GError      **error)
{
  const BbWashLifeSpecimen *specimen = record;
  g_autofree char *bad = NULL;
  g_autofree char *good = NULL;

  if (isnan (specimen->first_bad_cycles) || specimen->first_bad_cycles > specimen->last_good_cycles)
    return TRUE;

  bad = bb_number_to_text (specimen->first_bad_cycles);
  good = bb_number_to_text (specimen->last_good_cycles);
  g_set_error (error, BB_MODEL_ERROR, BB_MODEL_ERROR_VALUE,
               "first_bad_cycles: %s is not allowed, it must be more than last_good_cycles, %s", bad, good);

  return FALSE;
}

BB_DEFINE_TABLE (BbWashLifeSpecimen, bb_wash_life_specimen, "wash_life_specimen", N_("Specimen"),
                 BB_WASH_LIFE_SPECIMEN_FIELDS, check_specimen)
BB_DEFINE_TABLE (BbWashLifeIn, bb_wash_life_in, "wash_life_in", N_("Wash life"), BB_WASH_LIFE_IN_FIELDS, NULL)
BB_DEFINE_TABLE (BbWashLifeOut, bb_wash_life_out, "wash_life_out", N_("Wash life"), BB_WASH_LIFE_OUT_FIELDS, NULL)
BB_DEFINE_CALCULATOR (WashLife, wash_life, "wash-life", N_("Wash life"),
                      .summary = N_("How many washes prints last, from specimens that were read now and then."),
                      .assumes = N_("Specimens made alike and washed apart; those that left the test early did so "
                                    "for reasons of their own."),
                      .source = N_("Kaplan and Meier 1958 with Greenwood's variance; Weibull distribution by maximum "
                                   "likelihood."))
