/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-calc"

#include "bb-wash-proof.h"

static void
fill_in (BbWashVerdictIn  *in,
         const BbRevision *revision)
{
  in->minimum_change = revision->proof_change;
  in->minimum_stain = revision->proof_stain != BB_CHOICE_NONE ? revision->proof_stain : BB_GRADE_1;
  in->crack_allowed = FALSE;
}

static void
fill_reading (BbVerdictReading *item,
              const BbRevision *revision,
              const BbReading  *reading)
{
  item->cycles = reading->cycles;
  item->change = reading->change;
  item->stain = reading->stain;
  /* The choices run from no cracking to the worst: what is beyond the worst allowed counts as cracked. */
  item->cracked = reading->crack > revision->proof_crack;
}

/**
 * bb_wash_proof_find_faults:
 * @revision: the revision that the specimen was made by: it says what must be passed
 * @reading: one of its readings
 *
 * Returns: all in which the reading shows less than what the revision demands, whatever was read before it: for each
 *   #BbVerdictReason the bit of its number; 0 for nothing
 */
guint
bb_wash_proof_find_faults (const BbRevision *revision,
                           const BbReading  *reading)
{
  g_autoptr (BbWashVerdictIn) in = bb_wash_verdict_in_new ();
  g_autoptr (BbVerdictReading) item = bb_verdict_reading_new ();

  g_return_val_if_fail (revision != NULL && reading != NULL, 0);

  fill_in (in, revision);
  fill_reading (item, revision, reading);

  return bb_wash_verdict_find_faults (in, item);
}

/**
 * bb_wash_proof_describe_faults:
 * @faults: what fails at a reading, as bb_wash_proof_find_faults() gives it
 *
 * Returns: (transfer full): all of it, a sentence each
 */
char *
bb_wash_proof_describe_faults (guint faults)
{
  g_autoptr (GString) text = g_string_new (NULL);

  for (guint i = 0; i < bb_verdict_reason_choices.n_items; i++)
    if ((faults & (1u << i)) != 0)
      g_string_append_printf (text, "%s%s", text->len > 0 ? " " : "",
                              bb_choices_get_title (&bb_verdict_reason_choices, (int) i));

  return g_string_free (g_steal_pointer (&text), FALSE);
}

/**
 * bb_wash_proof_name_faults:
 * @faults: what fails at a reading, as bb_wash_proof_find_faults() gives it
 *
 * Returns: (transfer full): all of it, a word each
 */
char *
bb_wash_proof_name_faults (guint faults)
{
  static const char * const words[] = {
    [BB_VERDICT_REASON_CHANGE] = N_("colour"),
    [BB_VERDICT_REASON_STAIN] = N_("staining"),
    [BB_VERDICT_REASON_CRACKED] = N_("cracking"),
  };
  g_autoptr (GString) text = g_string_new (NULL);

  for (guint i = 0; i < G_N_ELEMENTS (words); i++)
    if ((faults & (1u << i)) != 0)
      g_string_append_printf (text, "%s%s", text->len > 0 ? ", " : "", _(words[i]));

  return g_string_free (g_steal_pointer (&text), FALSE);
}

/**
 * bb_wash_proof_judge:
 * @revision: the revision that the specimen was made by: it says what must be passed
 * @test: the specimen
 * @readings: (element-type BbReading): its readings, in any order
 * @out: (out caller-allocates): the verdict
 * @error: return location for a #GError in the domain %BB_MODEL_ERROR
 *
 * Holds a specimen of the book against what its revision demands, by the calculator `wash-verdict`.
 *
 * Returns: %FALSE if the readings contradict each other
 */
gboolean
bb_wash_proof_judge (const BbRevision *revision,
                     const BbWashTest *test,
                     GPtrArray        *readings,
                     BbWashVerdictOut *out,
                     GError          **error)
{
  const BbField *list = bb_table_find_field (&bb_wash_verdict_in_table, "readings");
  g_autoptr (BbWashVerdictIn) in = bb_wash_verdict_in_new ();

  g_return_val_if_fail (revision != NULL && test != NULL && readings != NULL && out != NULL, FALSE);

  /* A test planned shorter than what must be passed proves nothing beyond its plan. */
  in->plan_cycles = MAX (test->plan_cycles, revision->proof_cycles);
  fill_in (in, revision);
  bb_field_ensure_array (list, in);
  for (guint i = 0; i < readings->len; i++)
    fill_reading (bb_field_append_item (list, in), revision, readings->pdata[i]);

  return bb_calculator_run (&bb_wash_verdict_calculator, in, out, error);
}
