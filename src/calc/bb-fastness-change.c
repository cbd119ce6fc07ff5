/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-calc"

#include "bb-fastness-change.h"

/* ISO 105-A05, classes of ΔE_F: the least difference of each grade after the first. */
static const double class_limits[] = { 0.40, 1.25, 2.10, 2.95, 4.10, 5.80, 8.20, 11.60 };

#define DECIMAL_SLACK 1e-9

static double
mean_hue (double first,
          double second)
{
  double mean = (first + second) / 2.0;

  if (fabs (second - first) <= 180.0)
    return mean;

  return first + second < 360.0 ? mean + 180.0 : mean - 180.0;
}

/* ISO 105-A05: how far a hue lies from 280°, squared, in units of 30°. */
static double
distance_from_blue (double hue)
{
  double degrees = fabs (hue - 280.0);

  if (degrees > 180.0)
    degrees = 360.0 - degrees;

  return (degrees / 30.0) * (degrees / 30.0);
}

static double
difference_f (const cmsCIELab *original,
              const cmsCIELab *tested)
{
  cmsCIELCh from;
  cmsCIELCh to;
  double dc = 0.0;
  double dh = 0.0;
  double mean_chroma = 0.0;
  double cross = 0.0;

  cmsLab2LCh (&from, original);
  cmsLab2LCh (&to, tested);

  dc = to.C - from.C;
  dh = bb_lch_hue_difference (&from, &to);
  mean_chroma = (from.C + to.C) / 2.0;
  cross = dc * mean_chroma * exp (-distance_from_blue (mean_hue (from.h, to.h))) / 100.0;
  dc = (dc - cross) / (1.0 + pow (20.0 * mean_chroma / 1000.0, 2.0));
  dh = (dh - cross) / (1.0 + pow (10.0 * mean_chroma / 1000.0, 2.0));

  return hypot (to.L - from.L, hypot (dc, dh));
}

static double
rating (double de_f)
{
  double rated = de_f <= 3.4 ? 5.0 - de_f / 1.7 : 5.0 - log2 (de_f / 0.85);

  return MAX (rated, 1.0);
}

static BbGrade
grade_of_class (double de_f)
{
  int grade = BB_GRADE_5;

  for (guint i = 0; i < G_N_ELEMENTS (class_limits); i++)
    if (de_f >= class_limits[i] - DECIMAL_SLACK)
      grade = (int) i + 1;

  return (BbGrade) grade;
}

/**
 * bb_calc_fastness_change:
 * @in: the colour before and after the test
 * @out: the difference, rating and grade
 * @error: return location for a #GError in the domain %BB_MODEL_ERROR
 *
 * Grades a change in colour; see the top of bb-fastness-change.h.
 *
 * Returns: %TRUE
 */
gboolean
bb_calc_fastness_change (const BbFastnessChangeIn *in,
                         BbFastnessChangeOut      *out,
                         G_GNUC_UNUSED GError    **error)
{
  cmsCIELab original = bb_lab_from_array (in->lab_original);
  cmsCIELab tested = bb_lab_from_array (in->lab_tested);

  out->de_f = difference_f (&original, &tested);
  out->gsc = rating (out->de_f);
  out->grade = grade_of_class (out->de_f);

  return TRUE;
}

static gboolean
check_in (gconstpointer record,
          GError      **error)
{
  const BbFastnessChangeIn *in = record;

  return bb_lab_check ("lab_original", in->lab_original, error) &&
         bb_lab_check ("lab_tested", in->lab_tested, error);
}

BB_DEFINE_TABLE (BbFastnessChangeIn, bb_fastness_change_in, "fastness_change_in", N_("Change in colour"),
                 BB_FASTNESS_CHANGE_IN_FIELDS, check_in)
BB_DEFINE_TABLE (BbFastnessChangeOut, bb_fastness_change_out, "fastness_change_out", N_("Change in colour"),
                 BB_FASTNESS_CHANGE_OUT_FIELDS, NULL)
BB_DEFINE_CALCULATOR (FastnessChange, fastness_change, "fastness-change", N_("Grade of change"),
                      .summary = N_("The grey-scale grade of a change in colour, from measurements before and after."),
                      .assumes = N_("It supports, and does not replace, a trained eye under standard light. A scan "
                                    "needs a fixed set-up and a patch that shows drift."),
                      .source = N_("ISO 105-A05; the steps are those of ISO 105-A02."))
