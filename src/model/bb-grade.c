/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bb-grade.h"

#include <math.h>

BB_DEFINE_CHOICES (bb_grade, "grade", BB_GRADE_CHOICES);

static gboolean
is_on_scale (BbGrade grade)
{
  return (int) grade >= BB_GRADE_5 && (int) grade <= BB_GRADE_1;
}

/**
 * bb_grade_to_number:
 * @grade: a grade, or %BB_CHOICE_NONE
 *
 * Returns: the grade in half steps as a number: 4-5 is 4.5; NaN where there is none
 */
double
bb_grade_to_number (BbGrade grade)
{
  return is_on_scale (grade) ? 5.0 - 0.5 * (double) grade : (double) NAN;
}

/**
 * bb_grade_from_number:
 * @number: a grade as a number from 1 to 5
 *
 * Returns: the nearest grade, the worse one of two that are as near; numbers beyond the scale take
 *   its end, and NaN the worst
 */
BbGrade
bb_grade_from_number (double number)
{
  if (isnan (number))
    return BB_GRADE_1;

  return (BbGrade) round ((5.0 - CLAMP (number, 1.0, 5.0)) * 2.0);
}

/**
 * bb_grade_meets:
 * @grade: a grade, or %BB_CHOICE_NONE
 * @least: the least grade that passes, or %BB_CHOICE_NONE where any does
 *
 * Returns: %TRUE if @grade is as good as @least or better; %FALSE where there is no grade
 */
gboolean
bb_grade_meets (BbGrade grade,
                BbGrade least)
{
  return is_on_scale (grade) && (!is_on_scale (least) || grade <= least);
}
