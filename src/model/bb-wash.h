/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bb-wash-plan.h"

G_BEGIN_DECLS

#define BB_WASH_TEST_FIELDS(F, T) \
  F (T, INTEGER, id, N_("Key"), .help = N_("The record's key in this book."), .derived = TRUE, .unsealed = TRUE) \
  F (T, TEXT, code, N_("Specimen"), .help = N_("What is written on the specimen's label."), \
     .limits = BB_BETWEEN (1, 40), .required = TRUE) \
  F (T, REFERENCE, revision, N_("Revision"), .help = N_("The revision that the specimen was made by."), \
     .target = &bb_revision_table, .owner = TRUE, .required = TRUE) \
  F (T, REFERENCE, colourway, N_("Colourway"), .help = N_("The garment that was printed."), \
     .target = &bb_colourway_table) \
  F (T, REFERENCE, plan, N_("Wash plan"), \
     .help = N_("The plan that it is washed to: method, temperature and cycles follow from it."), \
     .target = &bb_wash_plan_table) \
  F (T, CHOICE, method, N_("Wash method"), .help = N_("How it is washed and dried."), \
     .choices = &bb_wash_method_choices, .required = TRUE) \
  F (T, NUMBER, wash_c, N_("Wash temperature"), .help = N_("Temperature of the wash."), \
     .quantity = BB_QUANTITY_TEMPERATURE, .limits = BB_BETWEEN (5, 100)) \
  F (T, INTEGER, plan_cycles, N_("Planned cycles"), .help = N_("At how many washes the test ends."), \
     .limits = BB_BETWEEN (1, 500), .required = TRUE) \
  F (T, NUMBER, tare_g, N_("Tare"), .help = N_("Mass of the garment before pretreat."), \
     .quantity = BB_QUANTITY_MASS, .limits = BB_ABOVE_TO (0, 5000), .group = N_("Weigh-in")) \
  F (T, NUMBER, wet_g, N_("Wet mass"), .help = N_("Mass of the garment right after pretreat."), \
     .quantity = BB_QUANTITY_MASS, .limits = BB_ABOVE_TO (0, 5000), .group = N_("Weigh-in")) \
  F (T, NUMBER, box_area_m2, N_("Box area"), .help = N_("Area that was sprayed."), \
     .quantity = BB_QUANTITY_AREA, .limits = BB_ABOVE_TO (0, 4), .group = N_("Weigh-in")) \
  F (T, DATE, made_at, N_("Printed"), .help = N_("When the specimen was printed."), .required = TRUE) \
  F (T, REFERENCE, person, N_("By"), .help = N_("Who made the specimen."), .target = &bb_person_table) \
  F (T, TEXT, note, N_("Note"), .help = N_("What else may have mattered."), .multiline = TRUE) \
  F (T, DATE, withdrawn_at, N_("Withdrawn"), .help = N_("When it was taken out of the evidence."), \
     .derived = TRUE, .stepwise = TRUE)

BB_DECLARE_TABLE (BbWashTest, bb_wash_test, BB_WASH_TEST_FIELDS);

void     bb_wash_test_follow      (BbWashTest       *self,
                                   const BbWashPlan *plan);
gboolean bb_wash_test_is_followed (const BbWashPlan *plan,
                                   const BbField    *field);

/* How marked a fault is; none of them has a part in the verdict. */
#define BB_FAULT_CHOICES(C) \
  C (BB_FAULT_NONE, "none", N_("None")) \
  C (BB_FAULT_SLIGHT, "slight", N_("Slight")) \
  C (BB_FAULT_MARKED, "marked", N_("Marked"))

BB_DECLARE_CHOICES (BbFault, bb_fault, BB_FAULT_CHOICES);

#define BB_READING_FIELDS(F, T) \
  F (T, INTEGER, id, N_("Key"), .help = N_("The record's key in this book."), .derived = TRUE, .unsealed = TRUE) \
  F (T, REFERENCE, wash_test, N_("Specimen"), .help = N_("The specimen that was read."), \
     .target = &bb_wash_test_table, .owner = TRUE, .required = TRUE) \
  F (T, INTEGER, cycles, N_("Cycles"), .help = N_("How many washes it has had."), .limits = BB_BETWEEN (0, 500), \
     .required = TRUE) \
  F (T, CHOICE, change, N_("Change"), .help = N_("Change in colour, against the grey scale of ISO 105-A02."), \
     .choices = &bb_grade_choices, .required = TRUE, .quick = TRUE) \
  F (T, CHOICE, stain, N_("Staining"), .help = N_("Staining of white fabric beside it, against ISO 105-A03."), \
     .choices = &bb_grade_choices, .quick = TRUE) \
  F (T, CHOICE, crack, N_("Cracking"), .help = N_("The worst cracking on the print."), \
     .choices = &bb_crack_choices, .fallback = BB_DEFAULT (BB_CRACK_NONE), .required = TRUE, .quick = TRUE) \
  F (T, CHOICE, lifting, N_("Lifting"), .help = N_("Whether the print comes off at its edges or in patches."), \
     .choices = &bb_fault_choices, .quick = TRUE) \
  F (T, CHOICE, fibrillation, N_("Fibrillation"), .help = N_("Whether fibres stand up through the print."), \
     .choices = &bb_fault_choices, .quick = TRUE) \
  F (T, INTEGER, hand, N_("Hand"), .help = N_("How it feels: 1 is stiff as a board, 5 as soft as the blank."), \
     .limits = BB_BETWEEN (1, 5), .quick = TRUE) \
  F (T, CHOICE, box_mark, N_("Box mark"), .help = N_("Whether the edge of the pretreat shows on the garment."), \
     .choices = &bb_fault_choices, .quick = TRUE) \
  F (T, CHOICE, change_measured, N_("Change, measured"), \
     .help = N_("Grade of change from a scan, by ISO 105-A05: kept beside the eye's, not in its place."), \
     .choices = &bb_grade_choices) \
  F (T, CHOICE, stain_measured, N_("Staining, measured"), \
     .help = N_("Grade of staining from a scan, by ISO 105-A04: kept beside the eye's, not in its place."), \
     .choices = &bb_grade_choices) \
  F (T, DATE, read_at, N_("Read"), .help = N_("When it was graded."), .required = TRUE) \
  F (T, REFERENCE, person, N_("By"), .help = N_("Who graded it."), .target = &bb_person_table, \
     .wanted = N_("a grade without a grader proves nothing: say who graded it.")) \
  F (T, TEXT, note, N_("Note"), .help = N_("What else was seen."), .multiline = TRUE)

BB_DECLARE_TABLE (BbReading, bb_reading, BB_READING_FIELDS);

G_END_DECLS
