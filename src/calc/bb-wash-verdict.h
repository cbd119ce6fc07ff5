/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib/gi18n-lib.h>

#include "bb-calculator.h"
#include "bb-grade.h"

G_BEGIN_DECLS

/*
 * Whether one specimen stood its wash plan, from its readings in any order. Cycles are counts of washes.
 *
 * The readings are taken in the order of their cycles until one closes the test:
 *     failed   a reading shows a change or staining below its minimum, or cracking where none is allowed; failed_at
 *              is its cycle, and reason what failed there (change before staining before cracking where several did)
 *     passed   a reading at the plan's last cycle or beyond shows none of these
 *     open     no reading did either; reason says what is wanting
 * What is read after the test is closed changes nothing: a specimen that failed stays failed, and one that stood its
 * plan and was washed on until it failed has stood its plan; how long prints last is wash-life's question.
 * Staining that was not read fails nobody, but neither does it pass: where a minimum above grade 1 is set, the
 * verdict stays open until a reading at the plan's last cycle or beyond has it.
 * reason is null where the verdict is passed; worst_change is the lowest grade of all changes read, null without
 * readings.
 *
 * Assumes that grades were read under standard light against the grey scales.
 * Refused: two readings at the same cycle, a plan of no cycles or above 100,000, more than 10,000 readings.
 * Source: none needed; grades are those of ISO 105-A02 and A03.
 */

#define BB_VERDICT_CHOICES(C) \
  C (BB_VERDICT_PASSED, "passed", N_("Passed")) \
  C (BB_VERDICT_FAILED, "failed", N_("Failed")) \
  C (BB_VERDICT_OPEN, "open", N_("Open"))

BB_DECLARE_CHOICES (BbVerdict, bb_verdict, BB_VERDICT_CHOICES);

#define BB_VERDICT_REASON_CHOICES(C) \
  C (BB_VERDICT_REASON_CHANGE, "change", N_("The colour changed more than is allowed.")) \
  C (BB_VERDICT_REASON_STAIN, "stain", N_("It stained white fabric more than is allowed.")) \
  C (BB_VERDICT_REASON_CRACKED, "cracked", N_("It cracked.")) \
  C (BB_VERDICT_REASON_NOT_READ, "not-read", N_("It has not been read at the plan's last cycle.")) \
  C (BB_VERDICT_REASON_STAIN_NOT_READ, "stain-not-read", \
     N_("Staining has not been read at the plan's last cycle."))

BB_DECLARE_CHOICES (BbVerdictReason, bb_verdict_reason, BB_VERDICT_REASON_CHOICES);

#define BB_VERDICT_READING_FIELDS(F, T) \
  F (T, INTEGER, cycles, N_("Cycles"), .help = N_("How many washes it has had."), \
     .limits = BB_BETWEEN (0, 100000), .required = TRUE) \
  F (T, CHOICE, change, N_("Change"), .help = N_("Grade of change in colour."), .choices = &bb_grade_choices, \
     .required = TRUE) \
  F (T, CHOICE, stain, N_("Staining"), .help = N_("Grade of staining; empty where it was not read."), \
     .choices = &bb_grade_choices) \
  F (T, FLAG, cracked, N_("Cracked"), .help = N_("Whether the print has cracked."), .required = TRUE) \
  F (T, TEXT, note, N_("Note"), .help = N_("What else was seen; it has no part in the verdict."), .multiline = TRUE)

BB_DECLARE_TABLE (BbVerdictReading, bb_verdict_reading, BB_VERDICT_READING_FIELDS);

#define BB_WASH_VERDICT_IN_FIELDS(F, T) \
  F (T, INTEGER, plan_cycles, N_("Planned cycles"), .help = N_("At how many washes the test ends."), \
     .limits = BB_BETWEEN (1, 100000), .required = TRUE) \
  F (T, CHOICE, minimum_change, N_("Least grade of change"), .help = N_("The lowest grade of change that passes."), \
     .choices = &bb_grade_choices, .required = TRUE) \
  F (T, CHOICE, minimum_stain, N_("Least grade of staining"), \
     .help = N_("The lowest grade of staining that passes; 1 demands nothing."), \
     .choices = &bb_grade_choices, .required = TRUE) \
  F (T, FLAG, crack_allowed, N_("Cracking allowed"), .help = N_("Whether a cracked print may pass."), \
     .required = TRUE) \
  F (T, LIST, readings, N_("Readings"), .help = N_("What was read at which cycle."), \
     .item = &bb_verdict_reading_table, .count = BB_BETWEEN (0, 10000), .required = TRUE)

BB_DECLARE_TABLE (BbWashVerdictIn, bb_wash_verdict_in, BB_WASH_VERDICT_IN_FIELDS);

#define BB_WASH_VERDICT_OUT_FIELDS(F, T) \
  F (T, CHOICE, verdict, N_("Verdict"), .help = N_("Whether the specimen stood the plan."), \
     .choices = &bb_verdict_choices) \
  F (T, INTEGER, failed_at, N_("Failed at"), .help = N_("The first cycle at which it failed.")) \
  F (T, CHOICE, reason, N_("Reason"), .help = N_("Why it failed, or why the verdict is open."), \
     .choices = &bb_verdict_reason_choices) \
  F (T, CHOICE, worst_change, N_("Worst change"), .help = N_("The lowest grade of change that was read."), \
     .choices = &bb_grade_choices)

BB_DECLARE_TABLE (BbWashVerdictOut, bb_wash_verdict_out, BB_WASH_VERDICT_OUT_FIELDS);

BB_DECLARE_CALCULATOR (WashVerdict, wash_verdict);

guint bb_wash_verdict_find_faults (const BbWashVerdictIn  *in,
                                   const BbVerdictReading *reading);

G_END_DECLS
