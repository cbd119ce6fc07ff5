/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bb-grade.h"

#include <math.h>

BB_DEFINE_CHOICES (bb_grade, "grade", BB_GRADE_CHOICES);

/**
 * bb_grade_to_number:
 * @grade: a grade
 *
 * Returns: the grade in half steps as a number: 4-5 is 4.5
 */
double
bb_grade_to_number (BbGrade grade)
{
  return 5.0 - 0.5 * (double) grade;
}

/**
 * bb_grade_from_number:
 * @number: a grade as a number from 1 to 5
 *
 * Returns: the nearest grade; numbers beyond the scale take its end
 */
BbGrade
bb_grade_from_number (double number)
{
  double steps = round ((5.0 - CLAMP (number, 1.0, 5.0)) * 2.0);

  return (BbGrade) steps;
}

/**
 * bb_grade_meets:
 * @grade: a grade
 * @least: the least grade that passes
 *
 * Returns: %TRUE if @grade is as good as @least or better
 */
gboolean
bb_grade_meets (BbGrade grade,
                BbGrade least)
{
  return grade <= least;
}
