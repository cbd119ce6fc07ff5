/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-calc"

#include "bb-wash-evidence.h"

/* Eye and instrument read half steps apart often, a whole one seldom (common practice, no source). */
#define DISPUTE 1.0

/**
 * bb_grades_disagree:
 * @eye: a grade that a person read, or %BB_CHOICE_NONE
 * @measured: the same grade from an instrument, or %BB_CHOICE_NONE
 *
 * Returns: %TRUE if both are there and at least a full grade apart
 */
gboolean
bb_grades_disagree (BbGrade eye,
                    BbGrade measured)
{
  return fabs (bb_grade_to_number (eye) - bb_grade_to_number (measured)) >= DISPUTE;
}

/**
 * bb_reading_describe_dispute:
 * @reading: a reading
 *
 * Returns: (transfer full) (nullable): where eye and instrument are at least a full grade apart, in a sentence that
 *   says what to do; %NULL where they agree, or one of them is missing
 */
char *
bb_reading_describe_dispute (const BbReading *reading)
{
  gboolean change = bb_grades_disagree ((BbGrade) reading->change, (BbGrade) reading->change_measured);
  gboolean stain = bb_grades_disagree ((BbGrade) reading->stain, (BbGrade) reading->stain_measured);

  if (change && stain)
    return g_strdup_printf (_("Change is %s by eye and %s measured, staining %s and %s: look again under "
                              "standard light, and check the patch on the scan."),
                            bb_choices_get_title (&bb_grade_choices, reading->change),
                            bb_choices_get_title (&bb_grade_choices, reading->change_measured),
                            bb_choices_get_title (&bb_grade_choices, reading->stain),
                            bb_choices_get_title (&bb_grade_choices, reading->stain_measured));
  if (change)
    return g_strdup_printf (_("Change is %s by eye and %s measured: look again under standard light, and "
                              "check the patch on the scan."),
                            bb_choices_get_title (&bb_grade_choices, reading->change),
                            bb_choices_get_title (&bb_grade_choices, reading->change_measured));
  if (stain)
    return g_strdup_printf (_("Staining is %s by eye and %s measured: look again under standard light, and "
                              "check the patch on the scan."),
                            bb_choices_get_title (&bb_grade_choices, reading->stain),
                            bb_choices_get_title (&bb_grade_choices, reading->stain_measured));

  return NULL;
}
