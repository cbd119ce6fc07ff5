/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bb-recipe.h"

G_BEGIN_DECLS

/* How a specimen is dried after each wash; the first six are procedures A to F of ISO 6330. */
#define BB_DRYING_CHOICES(C) \
  C (BB_DRYING_LINE, "line", N_("Hung on a line")) \
  C (BB_DRYING_DRIP_LINE, "drip-line", N_("Hung dripping wet")) \
  C (BB_DRYING_FLAT, "flat", N_("Laid flat")) \
  C (BB_DRYING_DRIP_FLAT, "drip-flat", N_("Laid flat dripping wet")) \
  C (BB_DRYING_FLAT_PRESS, "flat-press", N_("Pressed flat")) \
  C (BB_DRYING_TUMBLE, "tumble", N_("Tumble dryer"))

BB_DECLARE_CHOICES (BbDrying, bb_drying, BB_DRYING_CHOICES);

/* How far a plan's parameters can be trusted. */
#define BB_PLAN_ORIGIN_CHOICES(C) \
  C (BB_PLAN_ORIGIN_SHOP, "shop", N_("The shop's own")) \
  C (BB_PLAN_ORIGIN_STANDARD, "standard", N_("Checked against the standard")) \
  C (BB_PLAN_ORIGIN_PART, "part", N_("Read in part in public texts: check it against the standard")) \
  C (BB_PLAN_ORIGIN_MEMORY, "memory", N_("From memory: check it against the standard"))

BB_DECLARE_CHOICES (BbPlanOrigin, bb_plan_origin, BB_PLAN_ORIGIN_CHOICES);

/* One number of cycles after which a specimen is graded. */
#define BB_PLAN_STOP_FIELDS(F, T) \
  F (T, INTEGER, cycles, N_("Cycles"), .help = N_("After how many washes to grade."), \
     .limits = BB_BETWEEN (1, 500), .required = TRUE)

BB_DECLARE_TABLE (BbPlanStop, bb_plan_stop, BB_PLAN_STOP_FIELDS);

/* Parameters only: the text of a standard is with its publisher, and the plan says which one to buy. */
#define BB_WASH_PLAN_FIELDS(F, T) \
  F (T, INTEGER, id, N_("Key"), .help = N_("The record's key in this book."), .derived = TRUE, .unsealed = TRUE) \
  F (T, TEXT, code, N_("Code"), .help = N_("A short name that goes on labels."), .limits = BB_BETWEEN (1, 40), \
     .required = TRUE, .settled = BB_SETTLED_BY_USE) \
  F (T, TEXT, name, N_("Name"), .help = N_("What the bench calls this plan."), .limits = BB_BETWEEN (1, 120), \
     .required = TRUE) \
  F (T, CHOICE, standard, N_("Wash method"), .help = N_("The method that is followed."), \
     .choices = &bb_wash_method_choices, .fallback = BB_DEFAULT (BB_WASH_SHOP), .required = TRUE, \
     .settled = BB_SETTLED_BY_METHOD) \
  F (T, TEXT, publication, N_("Standard to buy"), \
     .help = N_("The edition to buy and follow: this book holds only numbers of it, not its text."), \
     .limits = BB_BETWEEN (0, 120), .settled = BB_SETTLED_BY_METHOD, .of_standard = TRUE) \
  F (T, TEXT, procedure, N_("Procedure"), .help = N_("The standard's own code of the procedure, like 4N."), \
     .limits = BB_BETWEEN (0, 20), .settled = BB_SETTLED_BY_METHOD, .of_standard = TRUE) \
  F (T, NUMBER, wash_c, N_("Wash temperature"), .help = N_("Temperature of the wash."), \
     .quantity = BB_QUANTITY_TEMPERATURE, .limits = BB_BETWEEN (5, 100), .settled = BB_SETTLED_BY_METHOD) \
  F (T, NUMBER, wash_s, N_("Time"), .help = N_("How long it is washed at that temperature."), \
     .quantity = BB_QUANTITY_TIME, .limits = BB_ABOVE_TO (0, 86400), .settled = BB_SETTLED_BY_METHOD) \
  F (T, NUMBER, liquor_ml, N_("Liquor"), .help = N_("Volume of the wash liquor in a laboratory machine."), \
     .quantity = BB_QUANTITY_VOLUME, .limits = BB_ABOVE_TO (0, 1000000), .settled = BB_SETTLED_BY_METHOD, \
     .of_standard = TRUE) \
  F (T, INTEGER, steel_balls, N_("Steel balls"), .help = N_("How many are put into a laboratory machine's beaker."), \
     .limits = BB_BETWEEN (0, 1000), .settled = BB_SETTLED_BY_METHOD, .of_standard = TRUE) \
  F (T, TEXT, detergent, N_("Detergent"), .help = N_("Which, and how much."), .limits = BB_BETWEEN (0, 120), \
     .settled = BB_SETTLED_BY_METHOD) \
  F (T, CHOICE, drying, N_("Drying"), .help = N_("How it is dried after each wash."), \
     .choices = &bb_drying_choices, .settled = BB_SETTLED_BY_METHOD) \
  F (T, INTEGER, launderings, N_("Launderings a cycle"), \
     .help = N_("How many home launderings one cycle stands for, as the standard says."), \
     .limits = BB_BETWEEN (1, 50), .fallback = BB_DEFAULT (1), .required = TRUE, .settled = BB_SETTLED_BY_METHOD) \
  F (T, LIST, grade_at, N_("Grade at"), .help = N_("After how many cycles to grade; the last one ends the test."), \
     .item = &bb_plan_stop_table, .count = BB_BETWEEN (1, 40), .required = TRUE, .settled = BB_SETTLED_BY_USE) \
  F (T, INTEGER, rest_days, N_("Days before the first wash"), \
     .help = N_("How long a fresh print is left before it is washed."), .limits = BB_BETWEEN (0, 60), \
     .fallback = BB_DEFAULT (1), .required = TRUE, .settled = BB_SETTLED_BY_USE) \
  F (T, NUMBER, cycles_per_week, N_("Cycles a week"), \
     .help = N_("How fast the shop washes: from it follows when a reading is due."), \
     .limits = BB_ABOVE_TO (0, 500), .fallback = BB_DEFAULT (12), .required = TRUE) \
  F (T, INTEGER, grace_days, N_("Days of grace"), \
     .help = N_("How many days after it is due a reading may come before it counts as overdue."), \
     .limits = BB_BETWEEN (0, 60), .fallback = BB_DEFAULT (2), .required = TRUE) \
  F (T, CHOICE, origin, N_("Where its numbers are from"), .help = N_("How far the plan's numbers can be trusted."), \
     .choices = &bb_plan_origin_choices, .fallback = BB_DEFAULT (BB_PLAN_ORIGIN_SHOP), .required = TRUE) \
  F (T, TEXT, note, N_("Note"), .help = N_("What else to know when washing to this plan."), .multiline = TRUE) \
  F (T, DATE, withdrawn_at, N_("Withdrawn"), .help = N_("When it was taken out of use."), \
     .derived = TRUE, .stepwise = TRUE)

BB_DECLARE_TABLE (BbWashPlan, bb_wash_plan, BB_WASH_PLAN_FIELDS);

gint64      bb_wash_plan_get_last     (const BbWashPlan *self);
gboolean    bb_wash_plan_is_published (const BbWashPlan *self);
gboolean    bb_wash_plan_is_settled   (const BbWashPlan *self,
                                       const BbWashPlan *draft,
                                       gboolean          is_used,
                                       const BbField    *field);
gboolean    bb_wash_plan_asks_for     (const BbWashPlan *self,
                                       const BbField    *field);
BbWashPlan *bb_wash_plan_dup_as_own   (const BbWashPlan *self);

G_END_DECLS
