/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-calc"

#include "bb-trial-plan.h"

#include <gsl/gsl_randist.h>
#include <gsl/gsl_rng.h>

#define MOST_SPECIMENS 10000
#define SHORTEST_LABEL 2

/* Without 0 O Q D, 1 I, 2 Z, 5 S, 6 G, 8 B, and without vowels, which would make words. */
static const char label_letters[] = "CFHJKLMNPRTVWXY3479";

static const BbTrialFactor *
get_factor (const BbTrialPlanIn *in,
            guint                index)
{
  return &g_array_index (in->factors, BbTrialFactor, index);
}

/* How many settings without the centre; a double, because some plans are too large for anything else. */
static double
count_settings (const BbTrialPlanIn *in)
{
  double settings = 1.0;

  for (guint i = 0; i < in->factors->len; i++)
    settings *= (double) get_factor (in, i)->levels;

  return settings;
}

static double
count_specimens (const BbTrialPlanIn *in)
{
  return count_settings (in) * (double) in->replicates + (double) in->centre_points;
}

static BbTrialSpecimen *
add_specimen (BbTrialPlanOut *out)
{
  BbTrialSpecimen *specimen = bb_field_append_item (bb_table_find_field (&bb_trial_plan_out_table, "specimens"), out);

  specimen->x = g_array_new (FALSE, FALSE, sizeof (double));

  return specimen;
}

/* Adds the settings of the combination with that number, the first factor changing slowest. */
static void
add_combination (const BbTrialPlanIn *in,
                 guint                number,
                 BbTrialPlanOut      *out)
{
  BbTrialSpecimen *specimen = add_specimen (out);
  guint block = (guint) count_settings (in);

  for (guint i = 0; i < in->factors->len; i++)
    {
      const BbTrialFactor *factor = get_factor (in, i);
      guint levels = (guint) factor->levels;
      guint level = 0;
      double setting = 0.0;

      block /= levels;
      level = number / block % levels;
      setting = level == levels - 1 ? factor->high
                                    : factor->low + (factor->high - factor->low) * level / (levels - 1);
      g_array_append_val (specimen->x, setting);
    }
}

static void
add_centre (const BbTrialPlanIn *in,
            BbTrialPlanOut      *out)
{
  BbTrialSpecimen *specimen = add_specimen (out);

  for (guint i = 0; i < in->factors->len; i++)
    {
      double middle = (get_factor (in, i)->low + get_factor (in, i)->high) / 2.0;

      g_array_append_val (specimen->x, middle);
    }
}

static char *
make_label (guint number,
            guint n_specimens)
{
  guint n_letters = sizeof label_letters - 1;
  guint length = SHORTEST_LABEL;
  char *label = NULL;

  for (guint labels = n_letters * n_letters; labels < n_specimens; labels *= n_letters)
    length++;

  label = g_malloc0 (length + 1);
  for (guint i = length; i > 0; i--)
    {
      label[i - 1] = label_letters[number % n_letters];
      number /= n_letters;
    }

  return label;
}

static void
shuffle (BbTrialPlanOut *out,
         gulong          seed)
{
  guint n = out->specimens->len;
  g_autofree guint *orders = g_new (guint, n);
  gsl_rng *generator = gsl_rng_alloc (gsl_rng_mt19937);

  gsl_rng_set (generator, seed);
  for (guint i = 0; i < n; i++)
    orders[i] = i;
  gsl_ran_shuffle (generator, orders, n, sizeof (guint));
  gsl_rng_free (generator);

  for (guint i = 0; i < n; i++)
    {
      BbTrialSpecimen *specimen = &g_array_index (out->specimens, BbTrialSpecimen, i);

      specimen->order = orders[i] + 1;
      specimen->label = make_label (orders[i], n);
    }
}

/**
 * bb_calc_trial_plan:
 * @in: factors and how to combine them
 * @out: the specimens
 * @error: return location for a #GError in the domain %BB_MODEL_ERROR
 *
 * Plans a trial; see the top of bb-trial-plan.h.
 *
 * Returns: %TRUE
 */
gboolean
bb_calc_trial_plan (const BbTrialPlanIn   *in,
                    BbTrialPlanOut        *out,
                    G_GNUC_UNUSED GError **error)
{
  guint n_settings = (guint) count_settings (in);

  for (guint i = 0; i < n_settings; i++)
    for (gint64 replicate = 0; replicate < in->replicates; replicate++)
      add_combination (in, i, out);
  for (gint64 i = 0; i < in->centre_points; i++)
    add_centre (in, out);
  shuffle (out, (gulong) in->seed);

  return TRUE;
}

static gboolean
check_factor (gconstpointer record,
              GError      **error)
{
  const BbTrialFactor *factor = record;

  return bb_factor_check_range (factor->low, factor->high, error);
}

static gboolean
check_design (const BbTrialPlanIn *in,
              GError             **error)
{
  if (in->design == BB_TRIAL_LADDER && in->factors->len > 1)
    {
      g_set_error (error, BB_MODEL_ERROR, BB_MODEL_ERROR_VALUE, "factors: %u items, the maximum is 1 in a ladder",
                   in->factors->len);
      return FALSE;
    }
  if (in->design != BB_TRIAL_FACTORIAL && in->centre_points > 0)
    {
      g_set_error (error, BB_MODEL_ERROR, BB_MODEL_ERROR_VALUE,
                   "centre_points: %" G_GINT64_FORMAT " is above the maximum 0 of a plan that is no factorial",
                   in->centre_points);
      return FALSE;
    }
  for (guint i = 0; i < in->factors->len && in->design == BB_TRIAL_FACTORIAL; i++)
    if (get_factor (in, i)->levels != 2)
      {
        g_set_error (error, BB_MODEL_ERROR, BB_MODEL_ERROR_VALUE,
                     "factors[%u].levels: %" G_GINT64_FORMAT " is above the maximum 2 of a factorial", i,
                     get_factor (in, i)->levels);
        return FALSE;
      }

  return TRUE;
}

static gboolean
check_in (gconstpointer record,
          GError      **error)
{
  const BbTrialPlanIn *in = record;

  if (!bb_factor_check_keys (&bb_trial_factor_table, in->factors, error) || !check_design (in, error))
    return FALSE;
  if (count_specimens (in) <= MOST_SPECIMENS)
    return TRUE;

  g_set_error (error, BB_MODEL_ERROR, BB_MODEL_ERROR_VALUE,
               "replicates: %" G_GINT64_FORMAT " of each setting make %.0f specimens, the maximum is %d",
               in->replicates, count_specimens (in), MOST_SPECIMENS);

  return FALSE;
}

BB_DEFINE_CHOICES (bb_trial_design, "trial_design", BB_TRIAL_DESIGN_CHOICES);
BB_DEFINE_TABLE (BbTrialFactor, bb_trial_factor, "trial_factor", N_("Factor"), BB_TRIAL_FACTOR_FIELDS, check_factor)
BB_DEFINE_TABLE (BbTrialPlanIn, bb_trial_plan_in, "trial_plan_in", N_("Trial plan"), BB_TRIAL_PLAN_IN_FIELDS, check_in)
BB_DEFINE_TABLE (BbTrialSpecimen, bb_trial_specimen, "trial_specimen", N_("Specimen"), BB_TRIAL_SPECIMEN_FIELDS, NULL)
BB_DEFINE_TABLE (BbTrialPlanOut, bb_trial_plan_out, "trial_plan_out", N_("Trial plan"), BB_TRIAL_PLAN_OUT_FIELDS, NULL)
BB_DEFINE_CALCULATOR (TrialPlan, trial_plan, "trial-plan", N_("Trial plan"),
                      .summary = N_("The specimens of a trial: what each is made with, in which order."),
                      .assumes = N_("Nothing but the factors is changed during the trial."),
                      .source = N_("Full factorial plans; the order by GSL's mt19937."))
