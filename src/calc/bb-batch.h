/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib/gi18n-lib.h>

#include "bb-calculator.h"

G_BEGIN_DECLS

/*
 * How much pretreat to make up for an order. Masses in g, fractions of 1.
 *
 *     count'    = count + ⌈count · spoilage_fraction⌉      for each line
 *     garments  = Σ count'                                 spare garments included
 *     needed_g  = Σ count' · used_g
 *     total_g   = (needed_g + line_loss_g) · (1 + reserve_fraction), rounded up to round_up_to_g
 *
 * A round_up_to_g of 0 rounds nothing. Both roundings go by decimals: see bb-rounding.h. Where
 * the step is so small beside the total that a double holds no such step, the total stays as it
 * is. A count of 0 and a used_g of 0 are allowed: a size that nobody ordered, a garment that
 * takes no pretreat.
 * Assumes that the sprayer is primed and purged once for the whole order.
 * Refused: no lines; each key out of its limits.
 * Source: plain arithmetic.
 */

#define BB_BATCH_LINE_FIELDS(F, T) \
  F (T, INTEGER, count, N_("Count"), .help = N_("How many good garments are wanted."), \
     .limits = BB_BETWEEN (0, 1e6), .required = TRUE) \
  F (T, NUMBER, used_g, N_("Used"), \
     .help = N_("Pretreat that leaves the nozzles for one garment."), \
     .quantity = BB_QUANTITY_MASS, .limits = BB_BETWEEN (0, 1e6), .required = TRUE)

BB_DECLARE_TABLE (BbBatchLine, bb_batch_line, BB_BATCH_LINE_FIELDS);

#define BB_BATCH_IN_FIELDS(F, T) \
  F (T, LIST, lines, N_("Lines"), .help = N_("One line for each kind of garment and box."), \
     .item = &bb_batch_line_table, .count = BB_BETWEEN (1, 10000), .required = TRUE) \
  BB_BATCH_ALLOWANCE_FIELDS (F, T)

#define BB_BATCH_ALLOWANCE_FIELDS(F, T) \
  F (T, NUMBER, spoilage_fraction, N_("Spoilage"), \
     .help = N_("Spare garments as a share of those wanted, rounded up on each line."), \
     .quantity = BB_QUANTITY_FRACTION, .limits = BB_BETWEEN (0, 1), .fallback = BB_DEFAULT (0), \
     .group = N_("Losses and reserve")) \
  F (T, NUMBER, line_loss_g, N_("Line loss"), \
     .help = N_("What priming and purging the sprayer takes, once."), \
     .quantity = BB_QUANTITY_MASS, .limits = BB_BETWEEN (0, 1e6), .fallback = BB_DEFAULT (0), \
     .group = N_("Losses and reserve")) \
  F (T, NUMBER, reserve_fraction, N_("Reserve"), \
     .help = N_("How much more to make up, as a share of all the rest."), \
     .quantity = BB_QUANTITY_FRACTION, .limits = BB_BETWEEN (0, 1), .fallback = BB_DEFAULT (0), \
     .group = N_("Losses and reserve")) \
  F (T, NUMBER, round_up_to_g, N_("Round up to"), \
     .help = N_("The step that the total is rounded up to; 0 for none."), \
     .quantity = BB_QUANTITY_MASS, .limits = BB_BETWEEN (0, 1e6), .fallback = BB_DEFAULT (0), \
     .group = N_("Losses and reserve"))

BB_DECLARE_TABLE (BbBatchIn, bb_batch_in, BB_BATCH_IN_FIELDS);

#define BB_BATCH_OUT_FIELDS(F, T) \
  F (T, INTEGER, garments, N_("Garments"), .help = N_("Garments to pretreat, spares included.")) \
  F (T, NUMBER, needed_g, N_("Needed"), .help = N_("What leaves the nozzles for all garments."), \
     .quantity = BB_QUANTITY_MASS) \
  F (T, NUMBER, total_g, N_("To make up"), \
     .help = N_("What to make up, with line loss and reserve, rounded up."), \
     .quantity = BB_QUANTITY_MASS)

BB_DECLARE_TABLE (BbBatchOut, bb_batch_out, BB_BATCH_OUT_FIELDS);

BB_DECLARE_CALCULATOR (Batch, batch);

G_END_DECLS
