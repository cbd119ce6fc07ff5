/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bb-run.h"
#include "bb-wash.h"

G_BEGIN_DECLS

/* What lists show of records, where that is more than the record itself: see bb_book_load_lines(). */

/**
 * BbRecipeLine:
 *
 * What a list shows of one recipe: the recipe, the revision that counts now, its state, and the garment. Codes
 * and names are empty texts where there are none.
 */
#define BB_RECIPE_LINE_FIELDS(F, T) \
  F (T, INTEGER, id, N_("Key"), .help = N_("The recipe's key in this book.")) \
  F (T, TEXT, code, N_("Code"), .help = N_("The recipe's code.")) \
  F (T, TEXT, name, N_("Name"), .help = N_("The recipe's name.")) \
  F (T, TEXT, blank, N_("Blank"), .help = N_("The garment's name, or the family of garments.")) \
  F (T, TEXT, colourway, N_("Colour"), .help = N_("The colour's name.")) \
  F (T, TEXT, srgb, N_("sRGB"), .help = N_("The garment's colour.")) \
  F (T, CHOICE, shade, N_("Colours"), .help = N_("Which garment colours it is for."), .choices = &bb_shade_choices) \
  F (T, INTEGER, revision, N_("Revision"), .help = N_("Key of the revision that counts now.")) \
  F (T, INTEGER, number, N_("Revision"), .help = N_("Number of the revision that counts now.")) \
  F (T, CHOICE, state, N_("State"), .help = N_("Where that revision stands."), .choices = &bb_state_choices) \
  F (T, NUMBER, pretreat_laydown_g_per_m2, N_("Laydown"), .help = N_("Of the revision that counts now."), \
     .quantity = BB_QUANTITY_MASS_PER_AREA) \
  F (T, DATE, made_at, N_("Made"), .help = N_("When that revision was made.")) \
  F (T, INTEGER, failed, N_("Failed"), .help = N_("How many specimens of that revision failed.")) \
  F (T, DATE, withdrawn_at, N_("Withdrawn"), .help = N_("When the recipe was taken out of use."))

BB_DECLARE_TABLE (BbRecipeLine, bb_recipe_line, BB_RECIPE_LINE_FIELDS);

/**
 * BbNameLine:
 *
 * What a person chooses a record by: see bb_book_load_names().
 */
#define BB_NAME_LINE_FIELDS(F, T) \
  F (T, INTEGER, id, N_("Key"), .help = N_("The record's key in this book.")) \
  F (T, TEXT, code, N_("Code"), .help = N_("The record's code.")) \
  F (T, TEXT, name, N_("Name"), \
     .help = N_("The record's name, of a colour after its blank's; none where such records have none."))

BB_DECLARE_TABLE (BbNameLine, bb_name_line, BB_NAME_LINE_FIELDS);

/**
 * BbWashLine:
 *
 * What a list shows of one wash test: the specimen, its recipe, the garment's colour, and what its verdict follows
 * from.
 */
#define BB_WASH_LINE_FIELDS(F, T) \
  F (T, INTEGER, id, N_("Key"), .help = N_("The wash test's key in this book.")) \
  F (T, OBJECT, test, N_("Wash test"), .help = N_("The specimen."), .item = &bb_wash_test_table) \
  F (T, OBJECT, revision, N_("Revision"), \
     .help = N_("The revision that it was made by; none where that is not as it was written."), \
     .item = &bb_revision_table) \
  F (T, TEXT, recipe, N_("Recipe"), .help = N_("Name of the revision's recipe.")) \
  F (T, TEXT, colourway, N_("Colour"), .help = N_("The garment's colour; none where it was not told.")) \
  F (T, TEXT, srgb, N_("sRGB"), .help = N_("That colour.")) \
  F (T, OBJECT, plan, N_("Wash plan"), .help = N_("The plan that it is washed to; none where there is none."), \
     .item = &bb_wash_plan_table) \
  F (T, LIST, readings, N_("Readings"), .help = N_("What was read, by count of washes."), \
     .item = &bb_reading_table) \
  F (T, DATE, withdrawn_at, N_("Withdrawn"), .help = N_("When the specimen was taken out of the evidence."))

BB_DECLARE_TABLE (BbWashLine, bb_wash_line, BB_WASH_LINE_FIELDS);

/**
 * BbJobCard:
 *
 * What a list shows of one job: the job, and its first line. Codes and names are empty texts where there are none.
 */
#define BB_JOB_CARD_FIELDS(F, T) \
  F (T, INTEGER, id, N_("Key"), .help = N_("The job's key in this book."), .unsealed = TRUE) \
  F (T, TEXT, code, N_("Number"), .help = N_("The job's number.")) \
  F (T, TEXT, customer, N_("Customer"), .help = N_("Who ordered it.")) \
  F (T, TEXT, title, N_("For what"), .help = N_("What the order is for.")) \
  F (T, CHOICE, state, N_("State"), .help = N_("How far the job has come."), .choices = &bb_job_state_choices) \
  F (T, DATE, ordered_at, N_("Ordered"), .help = N_("When the order came in.")) \
  F (T, DATE, due_at, N_("Due"), .help = N_("When it has to be ready.")) \
  F (T, INTEGER, n_lines, N_("Lines"), .help = N_("How many lines it has, those struck off not counted.")) \
  F (T, INTEGER, garments, N_("Garments"), .help = N_("How many good garments are wanted.")) \
  F (T, INTEGER, good, N_("Good"), .help = N_("How many came out well so far.")) \
  F (T, TEXT, blank, N_("Blank"), .help = N_("The garment of the first line.")) \
  F (T, TEXT, colourway, N_("Colour"), .help = N_("The colour of the first line.")) \
  F (T, TEXT, srgb, N_("sRGB"), .help = N_("That colour.")) \
  F (T, TEXT, artwork, N_("Artwork"), .help = N_("The artwork of the first line.")) \
  F (T, TEXT, revision, N_("Recipe"), .help = N_("Code of the revision of the first line."))

BB_DECLARE_TABLE (BbJobCard, bb_job_card, BB_JOB_CARD_FIELDS);

/**
 * BbLineCard:
 *
 * What a list shows of one line of a job, and how far it has come.
 */
#define BB_LINE_CARD_FIELDS(F, T) \
  F (T, INTEGER, id, N_("Key"), .help = N_("The line's key in this book."), .unsealed = TRUE) \
  F (T, TEXT, code, N_("Line"), .help = N_("The line's code.")) \
  F (T, TEXT, blank, N_("Blank"), .help = N_("The garment.")) \
  F (T, TEXT, colourway, N_("Colour"), .help = N_("The garment's colour.")) \
  F (T, TEXT, srgb, N_("sRGB"), .help = N_("That colour.")) \
  F (T, TEXT, size, N_("Sizes"), .help = N_("Which sizes.")) \
  F (T, INTEGER, count, N_("Garments"), .help = N_("How many good garments are wanted.")) \
  F (T, TEXT, artwork, N_("Artwork"), .help = N_("Name or file of the artwork.")) \
  F (T, TEXT, placement, N_("Place"), .help = N_("Where on the garment.")) \
  F (T, TEXT, revision, N_("Recipe"), .help = N_("Code of the revision.")) \
  F (T, CHOICE, state, N_("State"), .help = N_("Where that revision stands."), .choices = &bb_state_choices) \
  F (T, INTEGER, good, N_("Good"), .help = N_("How many came out well so far.")) \
  F (T, INTEGER, spoiled, N_("Spoiled"), .help = N_("How many were spoiled so far.")) \
  F (T, INTEGER, running, N_("Running"), .help = N_("How many runs have not ended."))

BB_DECLARE_TABLE (BbLineCard, bb_line_card, BB_LINE_CARD_FIELDS);

/**
 * BbRunCard:
 *
 * What a list shows of one run, and what a report of a fault has to say of it: for whom, on what, by what and from
 * what.
 */
#define BB_RUN_CARD_FIELDS(F, T) \
  F (T, INTEGER, id, N_("Key"), .help = N_("The run's key in this book."), .unsealed = TRUE) \
  F (T, TEXT, code, N_("Run"), .help = N_("The run's code.")) \
  F (T, TEXT, job, N_("Job"), .help = N_("The job's number.")) \
  F (T, TEXT, customer_code, N_("Code of the customer"), \
     .help = N_("By it two customers of one name are told apart.")) \
  F (T, TEXT, customer, N_("Customer"), .help = N_("Who ordered it.")) \
  F (T, TEXT, contact, N_("Contact"), .help = N_("Whom to ask, and how to reach them.")) \
  F (T, TEXT, blank, N_("Blank"), .help = N_("The garment.")) \
  F (T, TEXT, colourway, N_("Colour"), .help = N_("The garment's colour.")) \
  F (T, TEXT, artwork, N_("Artwork"), .help = N_("Name or file of the artwork.")) \
  F (T, TEXT, revision, N_("Recipe"), .help = N_("Code of the revision.")) \
  F (T, CHOICE, state, N_("State"), .help = N_("Where that revision stands now."), .choices = &bb_state_choices) \
  F (T, TEXT, person, N_("By"), .help = N_("Who stood at the machines.")) \
  F (T, DATE, started_at, N_("Started"), .help = N_("When it began.")) \
  F (T, DATE, finished_at, N_("Finished"), .help = N_("When it ended; empty while it runs.")) \
  F (T, INTEGER, good, N_("Good"), .help = N_("How many garments came out well.")) \
  F (T, INTEGER, spoiled, N_("Spoiled"), .help = N_("How many garments were spoiled.")) \
  F (T, TEXT, machines, N_("Machines"), .help = N_("Codes of the machines.")) \
  F (T, TEXT, lots, N_("Lots"), .help = N_("Codes of the containers.")) \
  F (T, INTEGER, remarks, N_("Remarks"), .help = N_("How many remarks were written since."))

BB_DECLARE_TABLE (BbRunCard, bb_run_card, BB_RUN_CARD_FIELDS);

G_END_DECLS
