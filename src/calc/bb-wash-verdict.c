/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-calc"

#include "bb-wash-verdict.h"

/* The readings in the order of their cycles, borrowed from @in. */
static GPtrArray *
sort_readings (const BbWashVerdictIn *in)
{
  GPtrArray *sorted = g_ptr_array_new ();

  for (guint i = 0; in->readings != NULL && i < in->readings->len; i++)
    g_ptr_array_add (sorted, &g_array_index (in->readings, BbVerdictReading, i));
  bb_records_sort (&bb_verdict_reading_table, "cycles", sorted);

  return sorted;
}

/**
 * bb_wash_verdict_find_faults:
 * @in: what is demanded
 * @reading: a reading
 *
 * Returns: all that fails at the reading: for each #BbVerdictReason the bit of its number; 0 for nothing
 */
guint
bb_wash_verdict_find_faults (const BbWashVerdictIn  *in,
                             const BbVerdictReading *reading)
{
  guint faults = 0;

  if (!bb_grade_meets ((BbGrade) reading->change, (BbGrade) in->minimum_change))
    faults |= 1u << BB_VERDICT_REASON_CHANGE;
  if (reading->stain != BB_CHOICE_NONE && !bb_grade_meets ((BbGrade) reading->stain, (BbGrade) in->minimum_stain))
    faults |= 1u << BB_VERDICT_REASON_STAIN;
  if (reading->cracked == 1 && in->crack_allowed != 1)
    faults |= 1u << BB_VERDICT_REASON_CRACKED;

  return faults;
}

/* Takes one reading into a verdict that is still open. */
static void
judge_reading (const BbWashVerdictIn  *in,
               const BbVerdictReading *reading,
               BbWashVerdictOut       *out)
{
  gboolean stain_demanded = in->minimum_stain != BB_GRADE_1;
  const guint faults = bb_wash_verdict_find_faults (in, reading);

  if (faults != 0)
    {
      out->verdict = BB_VERDICT_FAILED;
      out->reason = g_bit_nth_lsf (faults, -1);
      out->failed_at = reading->cycles;
    }
  else if (reading->cycles >= in->plan_cycles)
    {
      gboolean complete = reading->stain != BB_CHOICE_NONE || !stain_demanded;

      out->verdict = complete ? BB_VERDICT_PASSED : BB_VERDICT_OPEN;
      out->reason = complete ? BB_CHOICE_NONE : (int) BB_VERDICT_REASON_STAIN_NOT_READ;
    }
}

/**
 * bb_calc_wash_verdict:
 * @in: the plan and the readings
 * @out: the verdict
 * @error: return location for a #GError in the domain %BB_MODEL_ERROR
 *
 * Judges one specimen; see the top of bb-wash-verdict.h.
 *
 * Returns: %TRUE
 */
gboolean
bb_calc_wash_verdict (const BbWashVerdictIn *in,
                      BbWashVerdictOut      *out,
                      G_GNUC_UNUSED GError **error)
{
  g_autoptr (GPtrArray) readings = sort_readings (in);

  out->verdict = BB_VERDICT_OPEN;
  out->reason = BB_VERDICT_REASON_NOT_READ;
  for (guint i = 0; i < readings->len; i++)
    {
      const BbVerdictReading *reading = g_ptr_array_index (readings, i);

      out->worst_change = MAX (out->worst_change, reading->change);
      if (out->verdict == BB_VERDICT_OPEN)
        judge_reading (in, reading, out);
    }

  return TRUE;
}

static gboolean
check_in (gconstpointer record,
          GError      **error)
{
  g_autoptr (GPtrArray) readings = sort_readings (record);

  for (guint i = 1; i < readings->len; i++)
    {
      const BbVerdictReading *previous = g_ptr_array_index (readings, i - 1);
      const BbVerdictReading *reading = g_ptr_array_index (readings, i);

      if (reading->cycles == previous->cycles)
        {
          g_set_error (error, BB_MODEL_ERROR, BB_MODEL_ERROR_VALUE,
                       "readings: cycles %" G_GINT64_FORMAT " is read more than once, the maximum is once",
                       reading->cycles);
          return FALSE;
        }
    }

  return TRUE;
}

BB_DEFINE_CHOICES (bb_verdict, "verdict", BB_VERDICT_CHOICES);
BB_DEFINE_CHOICES (bb_verdict_reason, "verdict_reason", BB_VERDICT_REASON_CHOICES);
BB_DEFINE_TABLE (BbVerdictReading, bb_verdict_reading, "verdict_reading", N_("Reading"),
                 BB_VERDICT_READING_FIELDS, NULL)
BB_DEFINE_TABLE (BbWashVerdictIn, bb_wash_verdict_in, "wash_verdict_in", N_("Wash verdict"),
                 BB_WASH_VERDICT_IN_FIELDS, check_in)
BB_DEFINE_TABLE (BbWashVerdictOut, bb_wash_verdict_out, "wash_verdict_out", N_("Wash verdict"),
                 BB_WASH_VERDICT_OUT_FIELDS, NULL)
BB_DEFINE_CALCULATOR (WashVerdict, wash_verdict, "wash-verdict", N_("Wash verdict"),
                      .summary = N_("Whether one specimen stood its wash plan."),
                      .assumes = N_("Grades were read under standard light against the grey scales."),
                      .source = N_("The shop's own minimum grades; ISO 105-A02 and A03."))
