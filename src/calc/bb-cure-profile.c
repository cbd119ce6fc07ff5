/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-calc"

#include "bb-cure-profile.h"

#include "bb-canonical.h"
#include "bb-sum.h"

/* How much longer than the middle interval a gap is: the program's own rule, no source. */
#define GAP_FACTOR 3.0

#define SAMPLE(array, i) (&g_array_index ((array), BbProbeSample, (i)))

static int
compare_samples (gconstpointer a,
                 gconstpointer b)
{
  const BbProbeSample *left = a;
  const BbProbeSample *right = b;

  if (left->t_s != right->t_s)
    return left->t_s < right->t_s ? -1 : 1;

  return (left->c > right->c) - (left->c < right->c);
}

static int
compare_numbers (gconstpointer a,
                 gconstpointer b)
{
  const double *left = a;
  const double *right = b;

  return (*left > *right) - (*left < *right);
}

static gboolean
is_sorted (const GArray *samples)
{
  for (guint i = 1; i < samples->len; i++)
    if (SAMPLE (samples, i)->t_s < SAMPLE (samples, i - 1)->t_s)
      return FALSE;

  return TRUE;
}

static gboolean
refuse_two_temperatures (const BbProbeSample *first,
                         const BbProbeSample *second,
                         GError             **error)
{
  g_autofree char *time_text = bb_number_to_text (first->t_s);
  g_autofree char *first_text = bb_number_to_text (first->c);
  g_autofree char *second_text = bb_number_to_text (second->c);

  g_set_error (error, BB_MODEL_ERROR, BB_MODEL_ERROR_VALUE,
               _("samples: t_s %s has the temperatures c %s and %s, it can have only one."), time_text,
               first_text, second_text);
  return FALSE;
}

/* The log in order of time, each moment once. */
static GArray *
put_in_order (const GArray *samples,
              GError      **error)
{
  g_autoptr (GArray) sorted = g_array_sized_new (FALSE, FALSE, sizeof (BbProbeSample), samples->len);
  g_autoptr (GArray) log = g_array_sized_new (FALSE, FALSE, sizeof (BbProbeSample), samples->len);

  g_array_append_vals (sorted, samples->data, samples->len);
  g_array_sort (sorted, compare_samples);

  for (guint i = 0; i < sorted->len; i++)
    {
      const BbProbeSample *sample = SAMPLE (sorted, i);
      const BbProbeSample *last = log->len > 0 ? SAMPLE (log, log->len - 1) : NULL;

      if (last == NULL || last->t_s != sample->t_s)
        g_array_append_vals (log, sample, 1);
      else if (last->c != sample->c && !refuse_two_temperatures (last, sample, error))
        return NULL;
    }

  if (log->len < 2)
    {
      g_set_error_literal (error, BB_MODEL_ERROR, BB_MODEL_ERROR_UNDETERMINED,
                           _("samples: 1 moment of time, the minimum is 2."));
      return NULL;
    }

  return g_steal_pointer (&log);
}

static double
cure_rate (const BbCureProfileIn *in,
           double                 c)
{
  if (!isnan (in->credit_above_c) && c < in->credit_above_c)
    return 0;

  return pow (10.0, (c - in->reference_c) / in->z_c);
}

static double
integrate_rate (const BbCureProfileIn *in,
                const GArray          *log)
{
  BbSum sum = { 0 };

  for (guint i = 1; i < log->len; i++)
    {
      const BbProbeSample *from = SAMPLE (log, i - 1);
      const BbProbeSample *to = SAMPLE (log, i);

      bb_sum_add (&sum, (to->t_s - from->t_s) * (cure_rate (in, from->c) / 2.0 + cure_rate (in, to->c) / 2.0));
    }

  return bb_sum_get (&sum);
}

/* Time that the straight lines between samples run above a level; a line along the level itself counts if asked. */
static double
seconds_above (const GArray *log,
               double        level_c,
               gboolean      at_counts)
{
  BbSum sum = { 0 };

  for (guint i = 1; i < log->len; i++)
    {
      const BbProbeSample *from = SAMPLE (log, i - 1);
      const BbProbeSample *to = SAMPLE (log, i);
      double dt = to->t_s - from->t_s;
      double low = MIN (from->c, to->c);
      double high = MAX (from->c, to->c);

      if (low > level_c || (at_counts && low >= level_c))
        bb_sum_add (&sum, dt);
      else if (high > level_c)
        bb_sum_add (&sum, dt * (high - level_c) / (high - low));
    }

  return bb_sum_get (&sum);
}

static double
find_longest_gap (const GArray *log,
                  double       *median_s)
{
  g_autoptr (GArray) intervals = g_array_sized_new (FALSE, FALSE, sizeof (double), log->len - 1);

  for (guint i = 1; i < log->len; i++)
    {
      double interval = SAMPLE (log, i)->t_s - SAMPLE (log, i - 1)->t_s;

      g_array_append_val (intervals, interval);
    }
  g_array_sort (intervals, compare_numbers);
  *median_s = (g_array_index (intervals, double, (intervals->len - 1) / 2) +
               g_array_index (intervals, double, intervals->len / 2)) / 2.0;

  return g_array_index (intervals, double, intervals->len - 1);
}

static void
describe_log (const GArray     *samples,
              const GArray     *log,
              BbCureProfileOut *out)
{
  g_autoptr (GStrvBuilder) warnings = g_strv_builder_new ();
  double median_s = 0;

  out->longest_gap_s = find_longest_gap (log, &median_s);
  if (!is_sorted (samples))
    g_strv_builder_add (warnings, "unsorted");
  if (log->len < samples->len)
    g_strv_builder_add (warnings, "repeated");
  if (out->longest_gap_s > GAP_FACTOR * median_s)
    g_strv_builder_add (warnings, "gap");
  out->warnings = g_strv_builder_end (warnings);
}

static double
find_peak (const GArray *log)
{
  double peak = SAMPLE (log, 0)->c;

  for (guint i = 1; i < log->len; i++)
    peak = MAX (peak, SAMPLE (log, i)->c);

  return peak;
}

static gboolean
refuse_huge_rate (const BbCureProfileIn *in,
                  double                 peak_c,
                  GError               **error)
{
  g_autofree char *z_text = bb_number_to_text (in->z_c);
  g_autofree char *peak_text = bb_number_to_text (peak_c);
  g_autofree char *reference_text = bb_number_to_text (in->reference_c);

  g_set_error (error, BB_MODEL_ERROR, BB_MODEL_ERROR_UNDETERMINED,
               _("z_c: %s is too small for a peak of %s above a reference_c of %s, the rate passes every limit."),
               z_text, peak_text, reference_text);
  return FALSE;
}

/**
 * bb_calc_cure_profile:
 * @in: a probe's log and what the ink needs
 * @out: peak, equivalent time and verdict
 * @error: return location for a #GError in the domain %BB_MODEL_ERROR
 *
 * Judges a cure by the probe's log; see the top of bb-cure-profile.h.
 *
 * Returns: %FALSE if the log contradicts itself or the rate is beyond numbers
 */
gboolean
bb_calc_cure_profile (const BbCureProfileIn *in,
                      BbCureProfileOut      *out,
                      GError               **error)
{
  g_autoptr (GArray) log = put_in_order (in->samples, error);

  if (log == NULL)
    return FALSE;

  out->peak_c = find_peak (log);
  out->equivalent_s = integrate_rate (in, log);
  out->fraction_of_required = out->equivalent_s / in->required_s;
  if (!isfinite (out->fraction_of_required))
    return refuse_huge_rate (in, out->peak_c, error);

  out->seconds_above_reference = seconds_above (log, in->reference_c, TRUE);
  out->cured = out->equivalent_s >= in->required_s;
  if (!isnan (in->limit_c))
    out->over_limit_s = seconds_above (log, in->limit_c, FALSE);
  describe_log (in->samples, log, out);

  return TRUE;
}

BB_DEFINE_TABLE (BbProbeSample, bb_probe_sample, "probe_sample", N_("Sample"), BB_PROBE_SAMPLE_FIELDS, NULL)
BB_DEFINE_TABLE (BbCureProfileIn, bb_cure_profile_in, "cure_profile_in", N_("Cure profile"),
                 BB_CURE_PROFILE_IN_FIELDS, NULL)
BB_DEFINE_TABLE (BbCureProfileOut, bb_cure_profile_out, "cure_profile_out", N_("Cure profile"),
                 BB_CURE_PROFILE_OUT_FIELDS, NULL)
BB_DEFINE_CALCULATOR (CureProfile, cure_profile, "cure-profile", N_("Cure profile"),
                      .summary = N_("Time at the reference temperature that a probe's log is worth."),
                      .assumes = N_("One z over the whole log, and samples close enough for the trapezoid rule."),
                      .source = N_("Equivalent time by z-value, as thermal processes are calculated."))
