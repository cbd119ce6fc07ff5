/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-calc"

#include "bb-wash-proof.h"

static void
add_reading (BbWashVerdictIn  *in,
             const BbRevision *revision,
             const BbReading  *reading)
{
  BbVerdictReading *item = bb_field_append_item (bb_table_find_field (&bb_wash_verdict_in_table, "readings"), in);

  item->cycles = reading->cycles;
  item->change = reading->change;
  item->stain = reading->stain;
  /* The choices run from no cracking to the worst: what is beyond the worst allowed counts as cracked. */
  item->cracked = reading->crack > revision->proof_crack;
}

/**
 * bb_wash_proof_fails:
 * @revision: the revision that the specimen was made by: it says what must be passed
 * @test: the specimen
 * @reading: one of its readings
 *
 * Returns: %TRUE if the reading shows less than what the revision demands, whatever was read before it
 */
gboolean
bb_wash_proof_fails (const BbRevision *revision,
                     const BbWashTest *test,
                     const BbReading  *reading)
{
  g_autoptr (GPtrArray) alone = g_ptr_array_new ();
  g_autoptr (BbWashVerdictOut) out = bb_wash_verdict_out_new ();

  g_ptr_array_add (alone, (gpointer) reading);

  return bb_wash_proof_judge (revision, test, alone, out, NULL) && out->verdict == BB_VERDICT_FAILED;
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
  g_autoptr (BbWashVerdictIn) in = bb_wash_verdict_in_new ();

  g_return_val_if_fail (revision != NULL && test != NULL && readings != NULL && out != NULL, FALSE);

  /* A test planned shorter than what must be passed proves nothing beyond its plan. */
  in->plan_cycles = MAX (test->plan_cycles, revision->proof_cycles);
  in->minimum_change = revision->proof_change;
  in->minimum_stain = revision->proof_stain != BB_CHOICE_NONE ? revision->proof_stain : BB_GRADE_1;
  in->crack_allowed = FALSE;
  bb_field_ensure_array (bb_table_find_field (&bb_wash_verdict_in_table, "readings"), in);
  for (guint i = 0; i < readings->len; i++)
    add_reading (in, revision, readings->pdata[i]);

  return bb_calculator_run (&bb_wash_verdict_calculator, in, out, error);
}
