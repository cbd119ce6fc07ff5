/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-calc"

#include "bb-scan-proof.h"

#include "bb-colour-difference.h"
#include "bb-error.h"
#include "bb-fastness-change.h"
#include "bb-fastness-stain.h"

/* Common practice, no source: about what an eye just sees. */
#define LARGEST_DRIFT_DE_00 1.0

BB_DEFINE_TABLE (BbScanProof, bb_scan_proof, "scan_proof", N_("Scans"), BB_SCAN_PROOF_FIELDS, NULL)

/* The inputs of the calculators that are used here are two colours each, in this order. */
static gboolean
run_on_colours (const BbCalculator *calculator,
                const double        first[3],
                const double        second[3],
                gpointer            out,
                GError            **error)
{
  gpointer in = bb_record_new (calculator->in);
  gboolean done = FALSE;

  g_array_append_vals (bb_field_ensure_array (&calculator->in->fields[0], in), first, 3);
  g_array_append_vals (bb_field_ensure_array (&calculator->in->fields[1], in), second, 3);
  done = bb_calculator_run (calculator, in, out, error);
  bb_record_free (calculator->in, in);

  return done;
}

static gboolean
find_difference (const double  first[3],
                 const double  second[3],
                 double       *de_00,
                 GError      **error)
{
  g_autoptr (BbColourDifferenceOut) out = bb_colour_difference_out_new ();

  if (!run_on_colours (&bb_colour_difference_calculator, first, second, out, error))
    return FALSE;
  *de_00 = out->de_00;

  return TRUE;
}

static gboolean
grade_change (const double  before[3],
              const double  after[3],
              BbScanProof  *out,
              GError      **error)
{
  g_autoptr (BbFastnessChangeOut) change = bb_fastness_change_out_new ();

  if (!run_on_colours (&bb_fastness_change_calculator, before, after, change, error))
    return FALSE;
  out->difference = change->de_f;
  out->rating = change->gsc;
  out->grade = change->grade;

  return TRUE;
}

static gboolean
grade_stain (const double  before[3],
             const double  after[3],
             BbScanProof  *out,
             GError      **error)
{
  g_autoptr (BbFastnessStainOut) stain = bb_fastness_stain_out_new ();

  if (!run_on_colours (&bb_fastness_stain_calculator, before, after, stain, error))
    return FALSE;
  out->difference = stain->de_gs;
  out->rating = stain->ssr;
  out->grade = stain->grade;

  return TRUE;
}

static gboolean
check_pair (const BbScan *before,
            const BbScan *after,
            GError      **error)
{
  const char *why = NULL;

  if (before->wash_test != after->wash_test)
    why = _("The two scans are of different specimens.");
  else if (before->subject != after->subject)
    why = _("One scan is of the print, the other of the fabric beside it.");
  else if (before->cycles >= after->cycles)
    why = _("The second scan has to be of more washes than the first.");

  if (why != NULL)
    g_set_error_literal (error, BB_MODEL_ERROR, BB_MODEL_ERROR_VALUE, why);

  return why == NULL;
}

/**
 * bb_scan_proof_judge:
 * @before: a scan of a specimen
 * @after: a scan of the same, of the same subject and after more washes
 * @out: (out caller-allocates): what they say
 * @error: return location for a #GError in the domain %BB_MODEL_ERROR
 *
 * Compares two scans: see the top of this header.
 *
 * Returns: %FALSE if the two can't be compared
 */
gboolean
bb_scan_proof_judge (const BbScan *before,
                     const BbScan *after,
                     BbScanProof  *out,
                     GError      **error)
{
  const double first[3] = { before->l, before->a, before->b };
  double second[3] = { after->l, after->a, after->b };

  g_return_val_if_fail (before != NULL && after != NULL && out != NULL, FALSE);

  if (!check_pair (before, after, error))
    return FALSE;

  out->drifted = FALSE;
  if (bb_scan_has_patch (before) && bb_scan_has_patch (after))
    {
      const double patch_before[3] = { before->patch_l, before->patch_a, before->patch_b };
      const double patch_after[3] = { after->patch_l, after->patch_a, after->patch_b };

      if (!find_difference (patch_before, patch_after, &out->drift_de_00, error))
        return FALSE;
      for (guint i = 0; i < 3; i++)
        second[i] -= patch_after[i] - patch_before[i];
      second[0] = MAX (second[0], 0.0);
      out->drifted = out->drift_de_00 > LARGEST_DRIFT_DE_00;
    }
  out->l = second[0];
  out->a = second[1];
  out->b = second[2];

  return find_difference (first, second, &out->de_00, error) &&
         (after->subject == BB_SUBJECT_PRINT ? grade_change : grade_stain) (first, second, out, error);
}
