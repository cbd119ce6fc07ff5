/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib/gi18n-lib.h>

#include "bb-calculator.h"

G_BEGIN_DECLS

/*
 * How fast a line of stages works, and how long a job takes on it. Times in s.
 *
 * A stage with several equal stations lets a garment out every seconds_per_garment / stations. The bottleneck is the
 * stage for which that is longest, the first of several equals; its cycle sets the pace:
 *
 *     garments_per_hour = 3600 / cycle
 *     job_s             = Σ seconds_per_garment + (count − 1) · cycle
 *
 * the first garment through the line, then one per cycle.
 *
 * Assumptions: no waiting for hands or material, room for garments between stages, nothing spoiled; the stations of
 * the bottleneck start in turn and not together.
 * Refused: no stages; each key out of its limits.
 * Source: plain arithmetic.
 */

#define BB_LINE_STAGE_FIELDS(F, T) \
  F (T, TEXT, name, N_("Stage"), .help = N_("What is done there."), .limits = BB_BETWEEN (1, 80), .required = TRUE) \
  F (T, NUMBER, seconds_per_garment, N_("Time per garment"), \
     .help = N_("How long one garment takes one station, with handling."), \
     .quantity = BB_QUANTITY_TIME, .limits = BB_BETWEEN (0.001, 1e6), .required = TRUE) \
  F (T, INTEGER, stations, N_("Stations"), .help = N_("How many garments are worked on there at once."), \
     .limits = BB_BETWEEN (1, 1000), .required = TRUE)

BB_DECLARE_TABLE (BbLineStage, bb_line_stage, BB_LINE_STAGE_FIELDS);

#define BB_LINE_RATE_IN_FIELDS(F, T) \
  F (T, LIST, stages, N_("Stages"), .help = N_("The stages of the line, in order."), \
     .item = &bb_line_stage_table, .count = BB_BETWEEN (1, 10000), .required = TRUE) \
  F (T, INTEGER, count, N_("Garments"), .help = N_("How many garments the job has."), \
     .limits = BB_BETWEEN (1, 1e6), .required = TRUE)

BB_DECLARE_TABLE (BbLineRateIn, bb_line_rate_in, BB_LINE_RATE_IN_FIELDS);

#define BB_LINE_RATE_OUT_FIELDS(F, T) \
  F (T, TEXT, bottleneck, N_("Bottleneck"), .help = N_("The stage that sets the pace.")) \
  F (T, NUMBER, garments_per_hour, N_("Garments per hour"), .help = N_("How many garments leave the line.")) \
  F (T, NUMBER, job_s, N_("Job"), .help = N_("From the first garment's start to the last one's end."), \
     .quantity = BB_QUANTITY_TIME)

BB_DECLARE_TABLE (BbLineRateOut, bb_line_rate_out, BB_LINE_RATE_OUT_FIELDS);

BB_DECLARE_CALCULATOR (LineRate, line_rate);

G_END_DECLS
