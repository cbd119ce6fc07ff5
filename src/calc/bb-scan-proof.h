/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bb-grade.h"
#include "bb-scan.h"

G_BEGIN_DECLS

/*
 * What two scans of a specimen say: the grade of change from scans of the print (ISO 105-A05, `fastness-change`), the
 * grade of staining from scans of the white fabric beside it (ISO 105-A04, `fastness-stain`). CIELAB of D50, no units.
 *
 * Where a patch was measured on both scans, what the patch moved is taken off the later colour, in L*, a* and b* each:
 * common practice, no source. It mends a small drift of the scanner, and no other set-up: beyond a ΔE00 of 1 between
 * the patches, `drifted` says that the scans should be taken again. That limit is common practice, no source.
 *
 * It supports, and does not replace, a trained eye under standard light.
 */
#define BB_SCAN_PROOF_FIELDS(F, T) \
  F (T, NUMBER, l, N_("L* after"), .help = N_("Lightness after the washes, less the drift.")) \
  F (T, NUMBER, a, N_("a* after"), .help = N_("a* after the washes, less the drift.")) \
  F (T, NUMBER, b, N_("b* after"), .help = N_("b* after the washes, less the drift.")) \
  F (T, NUMBER, de_00, N_("ΔE00"), .help = N_("CIEDE2000 between before and after.")) \
  F (T, NUMBER, difference, N_("Standard's ΔE"), \
     .help = N_("ΔEF of ISO 105-A05 for change, ΔEGS of A04 for staining.")) \
  F (T, NUMBER, rating, N_("Rating"), .help = N_("The grey-scale rating by formula.")) \
  F (T, CHOICE, grade, N_("Grade"), .help = N_("The grey-scale grade in half steps."), .choices = &bb_grade_choices) \
  F (T, NUMBER, drift_de_00, N_("Drift"), \
     .help = N_("ΔE00 between the patches; empty without a patch on both scans.")) \
  F (T, FLAG, drifted, N_("Drifted"), .help = N_("Whether the scanner drifted too far for a correction."))

BB_DECLARE_TABLE (BbScanProof, bb_scan_proof, BB_SCAN_PROOF_FIELDS);

gboolean bb_scan_proof_judge (const BbScan *before,
                              const BbScan *after,
                              BbScanProof  *out,
                              GError      **error);

G_END_DECLS
