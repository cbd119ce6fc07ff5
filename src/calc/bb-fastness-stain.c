/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-calc"

#include "bb-fastness-stain.h"

/* ISO 105-A04: the least rating of each grade but the last, in hundredths. */
static const int class_limits[] = { 475, 425, 375, 325, 275, 225, 175, 125 };

static double
rating (double de_gs)
{
  double rated = 6.1 - 1.45 * log (de_gs);

  return rated > 4.0 ? 5.0 - 0.23 * de_gs : rated;
}

static BbGrade
grade_of_rating (double ssr)
{
  int hundredths = (int) round (ssr * 100.0);
  int grade = BB_GRADE_5;

  for (guint i = 0; i < G_N_ELEMENTS (class_limits); i++)
    if (hundredths < class_limits[i])
      grade = (int) i + 1;

  return (BbGrade) grade;
}

/**
 * bb_calc_fastness_stain:
 * @in: the white fabric's colour before and after the test
 * @out: the difference, rating and grade
 * @error: return location for a #GError in the domain %BB_MODEL_ERROR
 *
 * Grades staining; see the top of bb-fastness-stain.h.
 *
 * Returns: %TRUE
 */
gboolean
bb_calc_fastness_stain (const BbFastnessStainIn *in,
                        BbFastnessStainOut      *out,
                        G_GNUC_UNUSED GError   **error)
{
  cmsCIELab unstained = bb_lab_from_array (in->lab_unstained);
  cmsCIELab stained = bb_lab_from_array (in->lab_stained);
  /* √(ΔE² − ΔL²) without the digits that the subtraction loses. */
  double chromatic = hypot (stained.a - unstained.a, stained.b - unstained.b);

  out->de_gs = cmsDeltaE (&unstained, &stained) - 0.4 * chromatic;
  out->ssr = rating (out->de_gs);
  out->grade = grade_of_rating (out->ssr);

  return TRUE;
}

static gboolean
check_in (gconstpointer record,
          GError      **error)
{
  const BbFastnessStainIn *in = record;

  return bb_lab_check ("lab_unstained", in->lab_unstained, error) &&
         bb_lab_check ("lab_stained", in->lab_stained, error);
}

BB_DEFINE_TABLE (BbFastnessStainIn, bb_fastness_stain_in, "fastness_stain_in", N_("Staining"),
                 BB_FASTNESS_STAIN_IN_FIELDS, check_in)
BB_DEFINE_TABLE (BbFastnessStainOut, bb_fastness_stain_out, "fastness_stain_out", N_("Staining"),
                 BB_FASTNESS_STAIN_OUT_FIELDS, NULL)
BB_DEFINE_CALCULATOR (FastnessStain, fastness_stain, "fastness-stain", N_("Grade of staining"),
                      .summary = N_("The grey-scale grade of staining, from measurements of white fabric before and "
                                    "after."),
                      .assumes = N_("It supports, and does not replace, a trained eye under standard light. A scan "
                                    "needs a fixed set-up and a patch that shows drift."),
                      .source = N_("ISO 105-A04; the steps are those of ISO 105-A03."))
