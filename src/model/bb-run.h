/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bb-equipment.h"
#include "bb-job.h"
#include "bb-lot.h"

G_BEGIN_DECLS

#define BB_WEIGHED_FIELDS(F, T) \
  F (T, NUMBER, tare_g, N_("Tare"), .help = N_("Mass of the garment before pretreat."), \
     .quantity = BB_QUANTITY_MASS, .limits = BB_ABOVE_TO (0, 5000), .required = TRUE) \
  F (T, NUMBER, wet_g, N_("Wet mass"), .help = N_("Mass of the garment right after pretreat."), \
     .quantity = BB_QUANTITY_MASS, .limits = BB_ABOVE_TO (0, 5000), .required = TRUE) \
  F (T, NUMBER, box_area_m2, N_("Box area"), .help = N_("Area that was sprayed."), \
     .quantity = BB_QUANTITY_AREA, .limits = BB_ABOVE_TO (0, 4), .required = TRUE)

BB_DECLARE_TABLE (BbWeighed, bb_weighed, BB_WEIGHED_FIELDS);

/* A setting of the revision that was done otherwise. The value is written as files and labels write it: a number in
 * its canonical unit, the word of a choice, the code of a supply. */
#define BB_DEPARTURE_FIELDS(F, T) \
  F (T, TEXT, setting, N_("Setting"), .help = N_("The name of the revision's field, like cure_c."), \
     .limits = BB_BETWEEN (1, 60), .names = &bb_revision_table, .required = TRUE) \
  F (T, TEXT, done, N_("Done"), \
     .help = N_("What was set instead, in the unit that stands beside the setting; empty for not at all."), \
     .limits = BB_BETWEEN (0, 80)) \
  F (T, TEXT, why, N_("Why"), .help = N_("Why it was set otherwise."), .limits = BB_BETWEEN (0, 200))

BB_DECLARE_TABLE (BbDeparture, bb_departure, BB_DEPARTURE_FIELDS);

gboolean bb_departure_apply (const BbDeparture *self,
                             BbRevision        *revision);

#define BB_SPOILT_CHOICES(C) \
  C (BB_SPOILT_STAIN, "pretreat-stain", N_("Pretreat stain or box mark")) \
  C (BB_SPOILT_FIBRES, "fibres", N_("Fibres through the print")) \
  C (BB_SPOILT_PLACE, "place", N_("Crooked or out of place")) \
  C (BB_SPOILT_PRINT, "print", N_("Missing or blurred ink")) \
  C (BB_SPOILT_HEAT, "heat", N_("Scorched or press mark")) \
  C (BB_SPOILT_ADHESION, "adhesion", N_("Ink lifts or cracks")) \
  C (BB_SPOILT_GARMENT, "garment", N_("Fault of the garment")) \
  C (BB_SPOILT_OTHER, "other", N_("Something else"))

BB_DECLARE_CHOICES (BbSpoilt, bb_spoilt, BB_SPOILT_CHOICES);

/* Which containers a run drew from stands in the lots' entries. */
#define BB_RUN_FIELDS(F, T) \
  F (T, INTEGER, id, N_("Key"), .help = N_("The record's key in this book."), .derived = TRUE, .unsealed = TRUE) \
  F (T, TEXT, code, N_("Code"), .help = N_("The line's code and the run's number."), .limits = BB_BETWEEN (1, 80), \
     .derived = TRUE, .required = TRUE) \
  F (T, REFERENCE, line, N_("Line"), .help = N_("The line of a job that was printed."), .target = &bb_job_line_table, \
     .owner = TRUE, .derived = TRUE, .required = TRUE) \
  F (T, INTEGER, number, N_("Run"), .help = N_("Counts from 1 within the line."), .limits = BB_BETWEEN (1, 9999), \
     .derived = TRUE, .required = TRUE) \
  F (T, REFERENCE, revision, N_("Revision"), .help = N_("The revision that was printed by."), \
     .target = &bb_revision_table, .derived = TRUE, .required = TRUE) \
  F (T, REFERENCE, person, N_("By"), .help = N_("Who stood at the machines."), .target = &bb_person_table) \
  F (T, REFERENCE, sprayer, N_("Sprayer"), .help = N_("What the pretreat was put on with."), \
     .target = &bb_equipment_table, .among = BB_DEFAULT (BB_EQUIPMENT_SPRAYER)) \
  F (T, REFERENCE, dryer, N_("Dried on"), .help = N_("The press or tunnel that dried the pretreat."), \
     .target = &bb_equipment_table) \
  F (T, REFERENCE, printer, N_("Printer"), .help = N_("What it was printed on."), \
     .target = &bb_equipment_table, .among = BB_DEFAULT (BB_EQUIPMENT_PRINTER)) \
  F (T, REFERENCE, curer, N_("Cured on"), .help = N_("The press or tunnel that cured the ink."), \
     .target = &bb_equipment_table) \
  F (T, DATE, started_at, N_("Started"), .help = N_("When the run began."), .required = TRUE) \
  F (T, LIST, weighed, N_("Weigh-ins"), .help = N_("Garments that were weighed before and after pretreat."), \
     .item = &bb_weighed_table, .count = BB_BETWEEN (0, 500)) \
  F (T, LIST, departures, N_("Set otherwise"), .help = N_("What was set otherwise than the revision says."), \
     .item = &bb_departure_table, .count = BB_BETWEEN (0, 60)) \
  F (T, INTEGER, good, N_("Good"), .help = N_("How many garments came out well."), \
     .limits = BB_BETWEEN (0, 1000000)) \
  F (T, INTEGER, spoiled, N_("Spoiled"), .help = N_("How many garments were spoiled."), \
     .limits = BB_BETWEEN (0, 1000000)) \
  F (T, CHOICE, spoilt_by, N_("Spoiled by"), .help = N_("What spoiled most of them."), .choices = &bb_spoilt_choices) \
  F (T, TEXT, note, N_("Note"), .help = N_("What happened, and what to do otherwise next time."), .multiline = TRUE) \
  F (T, DATE, finished_at, N_("Finished"), .help = N_("When the run ended; from then on it can only be annotated."), \
     .derived = TRUE, .stepwise = TRUE)

BB_DECLARE_TABLE (BbRun, bb_run, BB_RUN_FIELDS);

#define BB_ANNOTATION_FIELDS(F, T) \
  F (T, INTEGER, id, N_("Key"), .help = N_("The record's key in this book."), .derived = TRUE, .unsealed = TRUE) \
  F (T, REFERENCE, run, N_("Run"), .help = N_("The run that the remark is about."), .target = &bb_run_table, \
     .owner = TRUE, .required = TRUE) \
  F (T, INTEGER, number, N_("Remark"), .help = N_("Counts from 1 within the run."), .limits = BB_BETWEEN (1, 9999), \
     .derived = TRUE, .required = TRUE) \
  F (T, DATE, at, N_("When"), .help = N_("When it was written."), .derived = TRUE, .required = TRUE) \
  F (T, REFERENCE, person, N_("By"), .help = N_("Who wrote it."), .target = &bb_person_table, .derived = TRUE) \
  F (T, TEXT, text, N_("Remark"), .help = N_("What was learned about the run afterwards."), \
     .limits = BB_BETWEEN (1, 4000), .multiline = TRUE, .required = TRUE)

BB_DECLARE_TABLE (BbAnnotation, bb_annotation, BB_ANNOTATION_FIELDS);

#define BB_LOT_DEED_CHOICES(C) \
  C (BB_LOT_USED, "used", N_("Used")) \
  C (BB_LOT_WEIGHED, "weighed", N_("Weighed")) \
  C (BB_LOT_WASTED, "wasted", N_("Poured away"))

BB_DECLARE_CHOICES (BbLotDeed, bb_lot_deed, BB_LOT_DEED_CHOICES);

/* Entries are only ever added. What is left in a lot is its amount at first and all changes. A use without a change
 * says that the lot had a part in the run, and nobody weighed how much. */
#define BB_LOT_ENTRY_FIELDS(F, T) \
  F (T, INTEGER, id, N_("Key"), .help = N_("The record's key in this book."), .derived = TRUE, .unsealed = TRUE) \
  F (T, REFERENCE, lot, N_("Lot"), .help = N_("The container."), .target = &bb_lot_table, \
     .owner = TRUE, .required = TRUE) \
  F (T, INTEGER, number, N_("Entry"), .help = N_("Counts from 1 within the lot."), \
     .limits = BB_BETWEEN (1, 999999), .derived = TRUE, .required = TRUE) \
  F (T, DATE, at, N_("When"), .help = N_("When it was taken or weighed."), .derived = TRUE, .required = TRUE) \
  F (T, REFERENCE, person, N_("By"), .help = N_("Who did it."), .target = &bb_person_table, .derived = TRUE) \
  F (T, CHOICE, deed, N_("What"), .help = N_("What was done."), .choices = &bb_lot_deed_choices, .required = TRUE) \
  F (T, REFERENCE, run, N_("Run"), .help = N_("The run that it was used for."), .target = &bb_run_table) \
  F (T, NUMBER, change_g, N_("Change"), .help = N_("How much more is left than before: less than nothing when used."), \
     .quantity = BB_QUANTITY_MASS, .limits = BB_BETWEEN (-1e6, 1e6)) \
  F (T, NUMBER, scale_g, N_("On the scale"), .help = N_("What the scale showed, with the container."), \
     .quantity = BB_QUANTITY_MASS, .limits = BB_BETWEEN (0, 1e6)) \
  F (T, TEXT, note, N_("Note"), .help = N_("Why."), .limits = BB_BETWEEN (0, 400))

BB_DECLARE_TABLE (BbLotEntry, bb_lot_entry, BB_LOT_ENTRY_FIELDS);

/**
 * BbLotUse:
 *
 * What a person says who takes something from a container for a run. It becomes an entry of the lot.
 */
#define BB_LOT_USE_FIELDS(F, T) \
  F (T, REFERENCE, lot, N_("Container"), .help = N_("The container that it is taken from."), \
     .target = &bb_lot_table, .required = TRUE) \
  F (T, NUMBER, amount_g, N_("Taken"), .help = N_("How much is taken out; empty where nobody weighed it."), \
     .quantity = BB_QUANTITY_MASS, .limits = BB_ABOVE_TO (0, 1e6))

BB_DECLARE_TABLE (BbLotUse, bb_lot_use, BB_LOT_USE_FIELDS);

G_END_DECLS
