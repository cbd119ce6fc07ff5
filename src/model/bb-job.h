/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bb-recipe.h"

G_BEGIN_DECLS

#define BB_CUSTOMER_FIELDS(F, T) \
  F (T, INTEGER, id, N_("Key"), .help = N_("The record's key in this book."), .derived = TRUE, .unsealed = TRUE) \
  F (T, TEXT, code, N_("Code"), .help = N_("A short name of your own that goes on labels and into searches."), \
     .limits = BB_BETWEEN (1, 40), .required = TRUE) \
  F (T, TEXT, name, N_("Name"), .help = N_("Who orders."), .limits = BB_BETWEEN (1, 120), .required = TRUE) \
  F (T, TEXT, contact, N_("Contact"), .help = N_("Whom to ask about a job, and how to reach them."), \
     .limits = BB_BETWEEN (0, 200)) \
  F (T, TEXT, note, N_("Note"), .help = N_("What this customer wants done in a way of their own."), \
     .multiline = TRUE) \
  F (T, DATE, withdrawn_at, N_("Withdrawn"), .help = N_("When it was taken out of use."), \
     .derived = TRUE, .stepwise = TRUE)

BB_DECLARE_TABLE (BbCustomer, bb_customer, BB_CUSTOMER_FIELDS);

#define BB_JOB_STATE_CHOICES(C) \
  C (BB_JOB_PLANNED, "planned", N_("Planned")) \
  C (BB_JOB_RUNNING, "running", N_("Running")) \
  C (BB_JOB_DONE, "done", N_("Done")) \
  C (BB_JOB_CANCELLED, "cancelled", N_("Cancelled"))

BB_DECLARE_CHOICES (BbJobState, bb_job_state, BB_JOB_STATE_CHOICES);

#define BB_JOB_FIELDS(F, T) \
  F (T, INTEGER, id, N_("Key"), .help = N_("The record's key in this book."), .derived = TRUE, .unsealed = TRUE) \
  F (T, TEXT, code, N_("Number"), .help = N_("The number of the job, as it stands on labels and papers."), \
     .limits = BB_BETWEEN (1, 40), .required = TRUE) \
  F (T, REFERENCE, customer, N_("Customer"), .help = N_("Who ordered it."), .target = &bb_customer_table, \
     .required = TRUE) \
  F (T, TEXT, title, N_("For what"), .help = N_("What the order is for, in a few words."), \
     .limits = BB_BETWEEN (0, 120)) \
  F (T, DATE, ordered_at, N_("Ordered"), .help = N_("When the order came in."), .required = TRUE) \
  F (T, DATE, due_at, N_("Due"), .help = N_("When it has to be ready.")) \
  F (T, NUMBER, spoilage_fraction, N_("Spoilage"), \
     .help = N_("Spare garments as a share of those ordered, rounded up on each line."), \
     .quantity = BB_QUANTITY_FRACTION, .limits = BB_BETWEEN (0, 1), .fallback = BB_DEFAULT (0.02)) \
  F (T, TEXT, note, N_("Note"), .help = N_("What else was agreed with the customer."), .multiline = TRUE) \
  F (T, REFERENCE, repeats, N_("Repeats"), .help = N_("The job that this one was opened from."), \
     .target = &bb_job_table, .derived = TRUE) \
  F (T, CHOICE, state, N_("State"), .help = N_("How far the job has come."), .choices = &bb_job_state_choices, \
     .fallback = BB_DEFAULT (BB_JOB_PLANNED), .required = TRUE, .derived = TRUE, .stepwise = TRUE) \
  F (T, DATE, since, N_("Since"), .help = N_("When it came to this state."), .derived = TRUE, .stepwise = TRUE)

BB_DECLARE_TABLE (BbJob, bb_job, BB_JOB_FIELDS);

gboolean bb_job_state_may_become (BbJobState from,
                                  BbJobState to);
gboolean bb_job_state_is_over    (int         state);
gboolean bb_job_is_overdue       (int         state,
                                  const char *due_at,
                                  const char *today);

#define BB_JOB_LINE_FIELDS(F, T) \
  F (T, INTEGER, id, N_("Key"), .help = N_("The record's key in this book."), .derived = TRUE, .unsealed = TRUE) \
  F (T, TEXT, code, N_("Code"), .help = N_("The job's number and the line's."), .limits = BB_BETWEEN (1, 60), \
     .derived = TRUE, .required = TRUE) \
  F (T, REFERENCE, job, N_("Job"), .help = N_("The job that it is a line of."), .target = &bb_job_table, \
     .owner = TRUE, .derived = TRUE, .required = TRUE) \
  F (T, INTEGER, number, N_("Line"), .help = N_("Counts from 1 within the job."), .limits = BB_BETWEEN (1, 9999), \
     .derived = TRUE, .required = TRUE) \
  F (T, REFERENCE, colourway, N_("Garment"), .help = N_("The blank, in the colour that is to be printed."), \
     .target = &bb_colourway_table, .required = TRUE) \
  F (T, TEXT, size, N_("Sizes"), .help = N_("Which sizes, like S–XL, or 6 M, 4 L."), .limits = BB_BETWEEN (0, 80)) \
  F (T, INTEGER, count, N_("Garments"), .help = N_("How many good garments are wanted."), \
     .limits = BB_BETWEEN (1, 1000000), .required = TRUE) \
  F (T, TEXT, artwork, N_("Artwork"), .help = N_("Name or file of the artwork."), .limits = BB_BETWEEN (0, 200)) \
  F (T, TEXT, placement, N_("Place"), .help = N_("Where on the garment: front, back, left sleeve."), \
     .limits = BB_BETWEEN (0, 80)) \
  F (T, FLAG, same_garments, N_("Same garments again"), \
     .help = N_("These are the garments of another line, printed in a second place: they are not counted twice."), \
     .fallback = BB_DEFAULT (0), .required = TRUE) \
  F (T, NUMBER, print_width_mm, N_("Print width"), \
     .help = N_("Width of the print on this line; youth and adult sizes differ."), .quantity = BB_QUANTITY_LENGTH, \
     .limits = BB_ABOVE_TO (0, 5000)) \
  F (T, NUMBER, print_height_mm, N_("Print height"), .help = N_("Height of the print on this line."), \
     .quantity = BB_QUANTITY_LENGTH, .limits = BB_ABOVE_TO (0, 5000)) \
  F (T, NUMBER, white_fraction, N_("Underbase covers"), \
     .help = N_("Share of the print's rectangle that gets white under the colour; empty for all of it."), \
     .quantity = BB_QUANTITY_FRACTION, .limits = BB_BETWEEN (0, 1)) \
  F (T, NUMBER, highlight_fraction, N_("Highlight covers"), \
     .help = N_("Share of the print's rectangle that is white in the artwork itself; empty for none."), \
     .quantity = BB_QUANTITY_FRACTION, .limits = BB_BETWEEN (0, 1)) \
  F (T, NUMBER, colour_fraction, N_("Colour covers"), \
     .help = N_("Share of the print's rectangle that gets colour; empty for all of it."), \
     .quantity = BB_QUANTITY_FRACTION, .limits = BB_BETWEEN (0, 1)) \
  F (T, CHOICE, print_mode, N_("Mode wanted"), \
     .help = N_("What the artwork asks for on this garment; empty where the recipe decides."), \
     .choices = &bb_print_mode_choices) \
  F (T, REFERENCE, revision, N_("Recipe"), .help = N_("The revision that this line is printed by."), \
     .target = &bb_revision_table, .beside = TRUE) \
  F (T, TEXT, why, N_("Why this recipe"), .help = N_("On what grounds this revision was chosen."), \
     .limits = BB_BETWEEN (0, 400)) \
  F (T, TEXT, note, N_("Note"), .help = N_("What the bench should know about this line."), .multiline = TRUE) \
  F (T, DATE, withdrawn_at, N_("Withdrawn"), .help = N_("When the line was struck off."), \
     .derived = TRUE, .stepwise = TRUE)

BB_DECLARE_TABLE (BbJobLine, bb_job_line, BB_JOB_LINE_FIELDS);

G_END_DECLS
