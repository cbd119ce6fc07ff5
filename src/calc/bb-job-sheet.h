/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bb-box.h"
#include "bb-calculator.h"
#include "bb-equipment.h"
#include "bb-job.h"
#include "bb-lot.h"
#include "bb-signature.h"

G_BEGIN_DECLS

/*
 * What a job takes, line by line and in all: boxes, pretreat, what to mix and from which containers, cost and time. It
 * runs the calculators box, laydown, batch, mix, cost and line-rate, each with the figures of the one before, and adds
 * up; of its own it only knows the order in which containers are used up, and how long a stage takes:
 *
 *     spray   handling of the sprayer; not counted where it is done by hand
 *     dry     dwell · presses + handling of the dryer
 *     print   handling of the printer + print_s_per_m2 · printed area · passes
 *     cure    dwell · presses + handling of the curer
 *
 * Lines are worked off one after the other, so that their times add up; the time of a line is known where that of each
 * of its stages is, and the job's where that of each line is. A stage's is not known without its machine or what hands
 * take there: 0 is a time, and nothing entered is none. Pretreat that is put on by hand is not timed.
 *
 * A line that prints the garments of another a second time takes pretreat, ink and time, and no garments. Lines by one
 * pretreat in one dilution are mixed together. Concentrate is taken from the container that has to be used first, never
 * from one that is past its day.
 *
 * Areas in m², masses in g, volumes in ml, times in s, money in the shop's currency.
 * Source: the calculators; the rest is plain arithmetic.
 */

/**
 * BbSheetLine:
 * @line: the line
 * @blank: its garment
 * @revision: (nullable): what it is printed by
 * @pretreat: (nullable): the revision's pretreat
 * @dry_sheet: (nullable): the revision's cover sheet of drying
 * @cure_sheet: (nullable): the revision's cover sheet of curing
 * @sprayer: (nullable): what the pretreat is put on with
 * @dryer: (nullable): what dries it
 * @printer: (nullable): what prints
 * @curer: (nullable): what cures
 *
 * One line of a job with all that its sum needs. Everything is borrowed.
 */
typedef struct {
  const BbJobLine *line;
  const BbBlank *blank;
  const BbRevision *revision;
  const BbSupply *pretreat;
  const BbSupply *dry_sheet;
  const BbSupply *cure_sheet;
  const BbEquipment *sprayer;
  const BbEquipment *dryer;
  const BbEquipment *printer;
  const BbEquipment *curer;
} BbSheetLine;

gboolean bb_sheet_line_find_box (const BbSheetLine  *line,
                                 BbBoxOut           *out,
                                 GError            **error);

#define BB_STAGE_TIME_FIELDS(F, T) \
  F (T, TEXT, name, N_("Stage"), .help = N_("What is done there.")) \
  F (T, NUMBER, seconds_s, N_("Time per garment"), .help = N_("How long one garment takes there, with handling."), \
     .quantity = BB_QUANTITY_TIME) \
  F (T, INTEGER, stations, N_("Stations"), .help = N_("How many garments are worked on there at once."))

BB_DECLARE_TABLE (BbStageTime, bb_stage_time, BB_STAGE_TIME_FIELDS);

#define BB_LINE_SHEET_FIELDS(F, T) \
  F (T, TEXT, code, N_("Line"), .help = N_("The line's code.")) \
  F (T, TEXT, missing, N_("Missing"), .help = N_("What has to be said before the line can be computed.")) \
  F (T, INTEGER, garments, N_("Garments"), .help = N_("To print, spares included.")) \
  F (T, INTEGER, spares, N_("Spares"), .help = N_("Garments made besides those ordered.")) \
  F (T, NUMBER, box_width_mm, N_("Box width"), .help = N_("Width of the rectangle to spray."), \
     .quantity = BB_QUANTITY_LENGTH) \
  F (T, NUMBER, box_height_mm, N_("Box height"), .help = N_("Height of the rectangle to spray."), \
     .quantity = BB_QUANTITY_LENGTH) \
  F (T, NUMBER, box_area_m2, N_("Box area"), .help = N_("Area of the rectangle to spray."), \
     .quantity = BB_QUANTITY_AREA) \
  F (T, FLAG, clipped, N_("Clipped"), .help = N_("The margin was cut to what the sprayer or press reaches.")) \
  F (T, NUMBER, wet_g, N_("On the garment"), .help = N_("Wet pretreat on one garment: what a weigh-in shows."), \
     .quantity = BB_QUANTITY_MASS) \
  F (T, NUMBER, used_g, N_("Used"), .help = N_("Pretreat that leaves the nozzles for one garment."), \
     .quantity = BB_QUANTITY_MASS) \
  F (T, NUMBER, needed_g, N_("Needed"), .help = N_("Pretreat that leaves the nozzles for all garments."), \
     .quantity = BB_QUANTITY_MASS) \
  F (T, NUMBER, sheets, N_("Sheets"), .help = N_("Cover sheets that are used up.")) \
  F (T, NUMBER, cost_per_garment, N_("Cost per garment"), .help = N_("All parts of one delivered garment."), \
     .quantity = BB_QUANTITY_MONEY) \
  F (T, NUMBER, cost, N_("Cost"), .help = N_("All parts of the line."), .quantity = BB_QUANTITY_MONEY) \
  F (T, LIST, stages, N_("Stages"), .help = N_("The stages whose time is known."), .item = &bb_stage_time_table) \
  F (T, TEXT, bottleneck, N_("Bottleneck"), .help = N_("The stage that sets the pace.")) \
  F (T, NUMBER, time_s, N_("Time"), \
     .help = N_("From the first garment's start to the last one's end, without pretreat that is put on by hand; " \
                "empty where it is not known how long a stage takes."), .quantity = BB_QUANTITY_TIME)

BB_DECLARE_TABLE (BbLineSheet, bb_line_sheet, BB_LINE_SHEET_FIELDS);

#define BB_TAKE_FIELDS(F, T) \
  F (T, INTEGER, lot, N_("Key"), .help = N_("The lot's key."), .unsealed = TRUE) \
  F (T, TEXT, code, N_("Lot"), .help = N_("The lot's code.")) \
  F (T, DATE, last_day, N_("Use by"), .help = N_("Its last day of use.")) \
  F (T, NUMBER, amount_g, N_("Take"), .help = N_("Concentrate to take from it."), .quantity = BB_QUANTITY_MASS) \
  F (T, NUMBER, left_g, N_("Then left"), .help = N_("What is left in it then; empty where that is not counted."), \
     .quantity = BB_QUANTITY_MASS)

BB_DECLARE_TABLE (BbTake, bb_take, BB_TAKE_FIELDS);

#define BB_MIX_SHEET_FIELDS(F, T) \
  F (T, INTEGER, supply, N_("Key"), .help = N_("The pretreat's key."), .unsealed = TRUE) \
  F (T, TEXT, product, N_("Product"), .help = N_("The pretreat.")) \
  F (T, NUMBER, parts_concentrate, N_("Dilution"), .help = N_("Parts of concentrate to parts of water."), \
     .parts_with = "parts_water") \
  F (T, NUMBER, parts_water, N_("Parts of water"), .help = N_("Parts of water in the dilution.")) \
  F (T, CHOICE, basis, N_("Parts"), .help = N_("Whether the parts are measured by volume or by mass."), \
     .choices = &bb_basis_choices) \
  F (T, INTEGER, garments, N_("Garments"), .help = N_("Garments to pretreat, spares included.")) \
  F (T, NUMBER, needed_g, N_("Needed"), .help = N_("Pretreat that leaves the nozzles for all of them."), \
     .quantity = BB_QUANTITY_MASS) \
  F (T, NUMBER, total_g, N_("To make up"), .help = N_("With line loss and reserve, rounded up."), \
     .quantity = BB_QUANTITY_MASS) \
  F (T, NUMBER, concentrate_g, N_("Concentrate"), .help = N_("To weigh in."), .quantity = BB_QUANTITY_MASS) \
  F (T, NUMBER, concentrate_ml, N_("Concentrate by volume"), .help = N_("The same by volume."), \
     .quantity = BB_QUANTITY_VOLUME) \
  F (T, NUMBER, water_g, N_("Water"), .help = N_("To weigh in."), .quantity = BB_QUANTITY_MASS) \
  F (T, NUMBER, water_ml, N_("Water by volume"), .help = N_("The same by volume."), .quantity = BB_QUANTITY_VOLUME) \
  F (T, LIST, takes, N_("Containers"), .help = N_("What to take the concentrate from, first to be used first."), \
     .item = &bb_take_table) \
  F (T, NUMBER, short_g, N_("Missing"), .help = N_("Concentrate that no container has; 0 where there is enough."), \
     .quantity = BB_QUANTITY_MASS) \
  F (T, TEXTS, past, N_("Past their day"), .help = N_("Containers that are not used, because their day is past.")) \
  F (T, FLAG, low, N_("Low"), .help = N_("Less is left then than the shop wants to have."))

BB_DECLARE_TABLE (BbMixSheet, bb_mix_sheet, BB_MIX_SHEET_FIELDS);

#define BB_JOB_SHEET_FIELDS(F, T) \
  F (T, LIST, lines, N_("Lines"), .help = N_("What each line takes."), .item = &bb_line_sheet_table) \
  F (T, LIST, mixes, N_("Mixes"), .help = N_("What to pour together."), .item = &bb_mix_sheet_table) \
  F (T, INTEGER, garments, N_("Garments"), .help = N_("Garments to set out, spares included, each counted once.")) \
  F (T, INTEGER, spares, N_("Spares"), .help = N_("How many of them are spares.")) \
  F (T, INTEGER, sheets, N_("Sheets"), .help = N_("Cover sheets that are used up, rounded up.")) \
  F (T, NUMBER, cost_per_garment, N_("Cost per garment"), .help = N_("Of one delivered garment."), \
     .quantity = BB_QUANTITY_MONEY) \
  F (T, NUMBER, cost, N_("Cost"), .help = N_("Of the whole job."), .quantity = BB_QUANTITY_MONEY) \
  F (T, TEXT, bottleneck, N_("Bottleneck"), .help = N_("The stage that the job spends most time at.")) \
  F (T, NUMBER, time_s, N_("Time"), .help = N_("One line after the other; empty where the time of one is not known."), \
     .quantity = BB_QUANTITY_TIME) \
  F (T, FLAG, whole, N_("Whole"), .help = N_("Whether every line could be computed."))

BB_DECLARE_TABLE (BbJobSheet, bb_job_sheet, BB_JOB_SHEET_FIELDS);

void  bb_job_sheet_compute    (BbJobSheet        *self,
                               const BbJob       *job,
                               const BbSheetLine *lines,
                               guint              n_lines,
                               const BbShop      *shop,
                               const GPtrArray   *stock,
                               const char        *day);
char *bb_job_sheet_dup_finish (const BbJobSheet  *self,
                               const char        *start);
void  bb_mix_sheet_choose_lots (BbMixSheet        *self,
                                const BbSupply    *product,
                                const GPtrArray   *stock,
                                const char        *day);

G_END_DECLS
