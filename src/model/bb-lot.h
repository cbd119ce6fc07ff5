/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bb-person.h"
#include "bb-supply.h"

G_BEGIN_DECLS

/* One container of a supply. What is left in it is nowhere stored: it follows from its entries. */
#define BB_LOT_FIELDS(F, T) \
  F (T, INTEGER, id, N_("Key"), .help = N_("The record's key in this book."), .derived = TRUE, .unsealed = TRUE) \
  F (T, TEXT, code, N_("Code"), .help = N_("What is written on the container's own label."), \
     .limits = BB_BETWEEN (1, 60), .required = TRUE) \
  F (T, REFERENCE, supply, N_("Supply"), .help = N_("What is in the container."), .target = &bb_supply_table, \
     .required = TRUE) \
  F (T, TEXT, batch, N_("Maker's batch"), .help = N_("The batch that the maker printed on the container."), \
     .limits = BB_BETWEEN (0, 80)) \
  F (T, DATE, received_at, N_("Received"), .help = N_("When it came into the shop.")) \
  F (T, DATE, opened_at, N_("Opened"), .help = N_("When the seal was broken; empty while it is closed.")) \
  F (T, DATE, expires_at, N_("Use by"), .help = N_("The last day of use that the maker printed on the container.")) \
  F (T, NUMBER, start_g, N_("Amount at first"), \
     .help = N_("Net mass when it was new. Empty for what is not weighed, like sheets: then nothing is counted."), \
     .quantity = BB_QUANTITY_MASS, .limits = BB_ABOVE_TO (0, 1e6)) \
  F (T, NUMBER, container_g, N_("Empty container"), \
     .help = N_("Mass of the container without its contents, so that what is left can be weighed."), \
     .quantity = BB_QUANTITY_MASS, .limits = BB_BETWEEN (0, 1e5)) \
  F (T, TEXT, note, N_("Note"), .help = N_("What the next person should know about this container."), \
     .multiline = TRUE) \
  F (T, DATE, withdrawn_at, N_("Withdrawn"), .help = N_("When it was empty, or thrown away."), \
     .derived = TRUE, .stepwise = TRUE)

BB_DECLARE_TABLE (BbLot, bb_lot, BB_LOT_FIELDS);

/**
 * BbStock:
 *
 * One lot as it stands now: what is left in it, and until when it may be used.
 */
#define BB_STOCK_FIELDS(F, T) \
  F (T, INTEGER, id, N_("Key"), .help = N_("The lot's key in this book."), .unsealed = TRUE) \
  F (T, TEXT, code, N_("Lot"), .help = N_("The lot's code.")) \
  F (T, REFERENCE, supply, N_("Supply"), .help = N_("What is in it."), .target = &bb_supply_table) \
  F (T, TEXT, name, N_("Name"), .help = N_("The name of what is in it.")) \
  F (T, TEXT, batch, N_("Maker's batch"), .help = N_("The maker's batch.")) \
  F (T, DATE, received_at, N_("Received"), .help = N_("When it came into the shop.")) \
  F (T, DATE, opened_at, N_("Opened"), .help = N_("When it was opened.")) \
  F (T, DATE, last_day, N_("Use by"), .help = N_("The last day of use, printed or counted from opening.")) \
  F (T, NUMBER, start_g, N_("Amount at first"), .help = N_("What was in it when it was new."), \
     .quantity = BB_QUANTITY_MASS) \
  F (T, NUMBER, left_g, N_("Left"), .help = N_("What is left in it; empty where that is not counted."), \
     .quantity = BB_QUANTITY_MASS)

BB_DECLARE_TABLE (BbStock, bb_stock, BB_STOCK_FIELDS);

/**
 * BbWeighing:
 *
 * What a person says who puts a container on the scale, so that the book knows again what is left in it.
 */
#define BB_WEIGHING_FIELDS(F, T) \
  F (T, REFERENCE, lot, N_("Lot"), .help = N_("The container."), .target = &bb_lot_table, .owner = TRUE, \
     .derived = TRUE, .required = TRUE) \
  F (T, NUMBER, scale_g, N_("On the scale"), .help = N_("What the scale shows, with the container and its lid."), \
     .quantity = BB_QUANTITY_MASS, .limits = BB_BETWEEN (0, 1e6), .required = TRUE) \
  F (T, TEXT, note, N_("Note"), .help = N_("What else was noticed."), .limits = BB_BETWEEN (0, 400))

BB_DECLARE_TABLE (BbWeighing, bb_weighing, BB_WEIGHING_FIELDS);

/**
 * BbDisposal:
 *
 * What a person says who pours something away, or puts an empty container out.
 */
#define BB_DISPOSAL_FIELDS(F, T) \
  F (T, REFERENCE, lot, N_("Lot"), .help = N_("The container."), .target = &bb_lot_table, .owner = TRUE, \
     .derived = TRUE, .required = TRUE) \
  F (T, NUMBER, amount_g, N_("Poured away"), \
     .help = N_("What went down; empty where nobody weighed it. Where and how says the safety data sheet."), \
     .quantity = BB_QUANTITY_MASS, .limits = BB_BETWEEN (0, 1e6)) \
  F (T, TEXT, note, N_("Reason"), .help = N_("Empty, spilt, past its date, settled…"), .limits = BB_BETWEEN (1, 400), \
     .required = TRUE) \
  F (T, FLAG, finished, N_("Off the shelf"), .help = N_("Whether the container goes too."), \
     .fallback = BB_DEFAULT (1), .required = TRUE)

BB_DECLARE_TABLE (BbDisposal, bb_disposal, BB_DISPOSAL_FIELDS);

char    *bb_lot_dup_last_day  (const BbLot     *self,
                               const BbSupply  *supply);
int      bb_stock_compare     (const BbStock   *a,
                               const BbStock   *b);
gboolean bb_stock_is_past     (const BbStock   *self,
                               const char      *day);
double   bb_stock_sum_left    (const GPtrArray *stock,
                               const char      *day);
gboolean bb_supply_is_low     (const BbSupply  *self,
                               double           left_g);

G_END_DECLS
