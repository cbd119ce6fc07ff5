/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bb-field.h"
#include "bb-job.h"
#include "bb-run.h"

G_BEGIN_DECLS

/*
 * What has changed since a line of a job was last printed, for who wants to print it again. Nothing is decided here: a
 * person reads the findings, and chooses.
 */

#define BB_FINDING_CHOICES(C) \
  C (BB_FINDING_SUPERSEDED, "superseded", N_("Recipe superseded")) \
  C (BB_FINDING_WITHDRAWN, "withdrawn", N_("Recipe withdrawn")) \
  C (BB_FINDING_UNPROVEN, "unproven", N_("Recipe not proven")) \
  C (BB_FINDING_WASH_FAILED, "wash-failed", N_("Wash test failed")) \
  C (BB_FINDING_LOT_OTHER, "lot-other", N_("Another lot")) \
  C (BB_FINDING_LOT_PAST, "lot-past", N_("Lot past its date")) \
  C (BB_FINDING_LOT_NONE, "lot-none", N_("No lot")) \
  C (BB_FINDING_FABRIC, "fabric", N_("Fabric edited")) \
  C (BB_FINDING_GARMENT_GONE, "garment-gone", N_("Garment out of use")) \
  C (BB_FINDING_CALIBRATED, "calibrated", N_("Machine calibrated")) \
  C (BB_FINDING_MACHINE_GONE, "machine-gone", N_("Machine out of use"))

BB_DECLARE_CHOICES (BbFindingKind, bb_finding, BB_FINDING_CHOICES);

#define BB_FINDING_FIELDS(F, T) \
  F (T, TEXT, line, N_("Line"), .help = N_("The code of the line that was printed then.")) \
  F (T, CHOICE, kind, N_("What"), .help = N_("What has changed."), .choices = &bb_finding_choices) \
  F (T, TEXT, subject, N_("Of what"), .help = N_("Code or name of what has changed.")) \
  F (T, TEXT, before, N_("Then"), .help = N_("What it was then.")) \
  F (T, TEXT, after, N_("Now"), .help = N_("What it is now.")) \
  F (T, DATE, at, N_("When"), .help = N_("When it changed, where that is known.")) \
  F (T, INTEGER, cycles, N_("Washes"), .help = N_("After how many washes a specimen failed."))

BB_DECLARE_TABLE (BbFinding, bb_finding, BB_FINDING_FIELDS);

/**
 * BbRepeatFailure:
 * @specimen: code of a specimen that failed
 * @cycles: after how many washes
 * @at: when that was read
 *
 * A failure of the revision's proof.
 */
typedef struct {
  const char *specimen;
  gint64 cycles;
  const char *at;
} BbRepeatFailure;

/**
 * BbRepeatCase:
 * @line: the line that was printed then
 * @since: when it was last printed
 * @today: the day that it shall be printed again, as `YYYY-MM-DD`
 * @revision: (nullable): the revision that it was printed by
 * @standing: (nullable): where that stands now
 * @newer: (nullable): the newest proven revision of the same recipe, where that is a later one
 * @failures: (array length=n_failures): specimens of @revision that failed since
 * @n_failures: how many
 * @blank_then: (nullable): the garment as it was described then; %NULL where that is not known
 * @blank: the garment as it is described now
 * @colourway: the garment's colour
 * @lots: (element-type BbLot): the lots that were used then
 * @stock: (element-type BbStock): the lots that are in the shop now, in the order in which they are to be used up
 * @machines: (element-type BbEquipment): the machines that it was made on
 *
 * What then and now are held against each other by. Everything is borrowed.
 */
typedef struct {
  const BbJobLine *line;
  const char *since;
  const char *today;
  const BbRevision *revision;
  const BbStanding *standing;
  const BbRevision *newer;
  const BbRepeatFailure *failures;
  guint n_failures;
  const BbBlank *blank_then;
  const BbBlank *blank;
  const BbColourway *colourway;
  const GPtrArray *lots;
  const GPtrArray *stock;
  const GPtrArray *machines;
} BbRepeatCase;

void  bb_repeat_find       (const BbRepeatCase  *self,
                            const BbUnitContext *context,
                            GPtrArray           *findings);
char *bb_finding_describe  (const BbFinding     *self,
                            const char          *day);

G_END_DECLS
