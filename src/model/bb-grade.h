/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib/gi18n-lib.h>

#include "bb-choices.h"

G_BEGIN_DECLS

/* The nine steps of the grey scales, best first (ISO 105-A02 for change, ISO 105-A03 for staining). */
#define BB_GRADE_CHOICES(C) \
  C (BB_GRADE_5, "5", N_("5")) \
  C (BB_GRADE_4_5, "4-5", N_("4-5")) \
  C (BB_GRADE_4, "4", N_("4")) \
  C (BB_GRADE_3_4, "3-4", N_("3-4")) \
  C (BB_GRADE_3, "3", N_("3")) \
  C (BB_GRADE_2_3, "2-3", N_("2-3")) \
  C (BB_GRADE_2, "2", N_("2")) \
  C (BB_GRADE_1_2, "1-2", N_("1-2")) \
  C (BB_GRADE_1, "1", N_("1"))

BB_DECLARE_CHOICES (BbGrade, bb_grade, BB_GRADE_CHOICES);

double   bb_grade_to_number   (BbGrade grade);
BbGrade  bb_grade_from_number (double  number);
gboolean bb_grade_meets       (BbGrade grade,
                               BbGrade least);

G_END_DECLS
