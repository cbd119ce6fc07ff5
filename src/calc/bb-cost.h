/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib/gi18n-lib.h>

#include "bb-calculator.h"

G_BEGIN_DECLS

/*
 * What a job costs, part by part, per good garment and for the job. Money in the shop's currency; masses in g, areas
 * in m², times in s, energy in kJ; prices per kg, per hour and per kWh (3,600 kJ) as bills have them.
 *
 * One garment's parts:
 *     blank    = blank_price
 *     pretreat = pretreat_g / 1000 · pretreat_price_per_kg
 *     ink      = Σ area_m2 · g_per_m2 / 1000 · price_per_kg, over all inks
 *     sheet    = sheets_per_garment · sheet_price / sheet_uses
 *     labour   = labour_s / 3600 · labour_price_per_h
 *     energy   = energy_kj / 3600 · energy_price_per_kwh
 *
 * A part per job is count times that. Spoilage is garments made besides, spoiled_garments = ceil (count ·
 * spoilage_fraction) as in batch; each costs all parts of a garment, and their sum is a part of its own. Per garment
 * it is spread over the count that is delivered, so that per garment, too, the parts make the total.
 *
 * An amount or a price that is left out is 0. pretreat_g is what the sprayer uses, overspray included (used_g of
 * laydown).
 *
 * Assumes that a spoiled garment has gone through the whole line and costs as much as a good one.
 * Refused: each key out of its limits; more than 100 inks.
 * Source: plain arithmetic; 1 kWh = 3,600 kJ exactly.
 */

#define BB_COST_INK_FIELDS(F, T) \
  F (T, NUMBER, area_m2, N_("Area"), .help = N_("Printed area of one garment in this ink."), \
     .quantity = BB_QUANTITY_AREA, .limits = BB_BETWEEN (0, 100), .required = TRUE) \
  F (T, NUMBER, g_per_m2, N_("Ink per area"), .help = N_("Mass of this ink per printed area."), \
     .quantity = BB_QUANTITY_MASS_PER_AREA, .limits = BB_BETWEEN (0, 10000), .required = TRUE) \
  F (T, NUMBER, price_per_kg, N_("Price per kilogram"), .help = N_("What the shop pays for one kilogram."), \
     .quantity = BB_QUANTITY_MONEY, .limits = BB_BETWEEN (0, 1e6), .required = TRUE)

BB_DECLARE_TABLE (BbCostInk, bb_cost_ink, BB_COST_INK_FIELDS);

#define BB_COST_IN_FIELDS(F, T) \
  F (T, INTEGER, count, N_("Garments"), .help = N_("How many good garments the job delivers."), \
     .limits = BB_BETWEEN (1, 1e6), .required = TRUE) \
  F (T, NUMBER, blank_price, N_("Blank"), .help = N_("Price of one undecorated garment."), \
     .quantity = BB_QUANTITY_MONEY, .limits = BB_BETWEEN (0, 1e6), .fallback = BB_DEFAULT (0), .required = TRUE) \
  F (T, NUMBER, pretreat_g, N_("Pretreat"), .help = N_("Pretreat that one garment uses, overspray included."), \
     .quantity = BB_QUANTITY_MASS, .limits = BB_BETWEEN (0, 100000), .fallback = BB_DEFAULT (0), .required = TRUE) \
  F (T, NUMBER, pretreat_price_per_kg, N_("Pretreat per kilogram"), .help = N_("Price of the pretreat as sprayed."), \
     .quantity = BB_QUANTITY_MONEY, .limits = BB_BETWEEN (0, 1e6), .fallback = BB_DEFAULT (0), .required = TRUE) \
  F (T, LIST, inks, N_("Inks"), .help = N_("Underbase, highlight and colours, each with its area."), \
     .item = &bb_cost_ink_table, .count = BB_BETWEEN (0, 100)) \
  F (T, NUMBER, sheets_per_garment, N_("Sheets"), .help = N_("Cover sheets that one garment takes."), \
     .limits = BB_BETWEEN (0, 1000), .fallback = BB_DEFAULT (0), .required = TRUE) \
  F (T, NUMBER, sheet_price, N_("Price of a sheet"), .help = N_("Price of one cover sheet."), \
     .quantity = BB_QUANTITY_MONEY, .limits = BB_BETWEEN (0, 1e6), .fallback = BB_DEFAULT (0), .required = TRUE) \
  F (T, NUMBER, sheet_uses, N_("Uses of a sheet"), .help = N_("How often a sheet is used before it is thrown away."), \
     .limits = BB_BETWEEN (1, 100000), .fallback = BB_DEFAULT (1), .required = TRUE) \
  F (T, NUMBER, labour_s, N_("Labour"), .help = N_("Time of hands on one garment, all stages together."), \
     .quantity = BB_QUANTITY_TIME, .limits = BB_BETWEEN (0, 1e6), .fallback = BB_DEFAULT (0), .required = TRUE) \
  F (T, NUMBER, labour_price_per_h, N_("Labour per hour"), .help = N_("What an hour costs the shop."), \
     .quantity = BB_QUANTITY_MONEY, .limits = BB_BETWEEN (0, 1e6), .fallback = BB_DEFAULT (0), .required = TRUE) \
  F (T, NUMBER, energy_kj, N_("Press energy"), .help = N_("Energy that presses and dryers take for one garment."), \
     .quantity = BB_QUANTITY_ENERGY, .limits = BB_BETWEEN (0, 1e6), .fallback = BB_DEFAULT (0), .required = TRUE) \
  F (T, NUMBER, energy_price_per_kwh, N_("Energy per kWh"), .help = N_("Price of one kilowatt hour."), \
     .quantity = BB_QUANTITY_MONEY, .limits = BB_BETWEEN (0, 1e6), .fallback = BB_DEFAULT (0), .required = TRUE) \
  F (T, NUMBER, spoilage_fraction, N_("Spoilage"), \
     .help = N_("Garments made besides, as a share of those delivered."), \
     .quantity = BB_QUANTITY_FRACTION, .limits = BB_BETWEEN (0, 1), .fallback = BB_DEFAULT (0), .required = TRUE)

BB_DECLARE_TABLE (BbCostIn, bb_cost_in, BB_COST_IN_FIELDS);

#define BB_COST_OUT_FIELDS(F, T) \
  F (T, NUMBER, blank_per_garment, N_("Blank per garment"), .help = N_("The undecorated garment."), \
     .quantity = BB_QUANTITY_MONEY) \
  F (T, NUMBER, pretreat_per_garment, N_("Pretreat per garment"), .help = N_("Pretreat of one garment."), \
     .quantity = BB_QUANTITY_MONEY) \
  F (T, NUMBER, ink_per_garment, N_("Ink per garment"), .help = N_("All inks of one garment."), \
     .quantity = BB_QUANTITY_MONEY) \
  F (T, NUMBER, sheet_per_garment, N_("Sheets per garment"), .help = N_("Cover sheets of one garment."), \
     .quantity = BB_QUANTITY_MONEY) \
  F (T, NUMBER, labour_per_garment, N_("Labour per garment"), .help = N_("Time of hands on one garment."), \
     .quantity = BB_QUANTITY_MONEY) \
  F (T, NUMBER, energy_per_garment, N_("Energy per garment"), .help = N_("Press energy of one garment."), \
     .quantity = BB_QUANTITY_MONEY) \
  F (T, NUMBER, spoilage_per_garment, N_("Spoilage per garment"), \
     .help = N_("Spoiled garments, spread over those delivered."), .quantity = BB_QUANTITY_MONEY) \
  F (T, NUMBER, total_per_garment, N_("Total per garment"), .help = N_("All parts of one delivered garment."), \
     .quantity = BB_QUANTITY_MONEY) \
  F (T, NUMBER, blank_per_job, N_("Blanks"), .help = N_("The undecorated garments delivered."), \
     .quantity = BB_QUANTITY_MONEY) \
  F (T, NUMBER, pretreat_per_job, N_("Pretreat"), .help = N_("Pretreat of the garments delivered."), \
     .quantity = BB_QUANTITY_MONEY) \
  F (T, NUMBER, ink_per_job, N_("Ink"), .help = N_("Ink of the garments delivered."), .quantity = BB_QUANTITY_MONEY) \
  F (T, NUMBER, sheet_per_job, N_("Sheets"), .help = N_("Cover sheets of the garments delivered."), \
     .quantity = BB_QUANTITY_MONEY) \
  F (T, NUMBER, labour_per_job, N_("Labour"), .help = N_("Time of hands on the garments delivered."), \
     .quantity = BB_QUANTITY_MONEY) \
  F (T, NUMBER, energy_per_job, N_("Energy"), .help = N_("Press energy of the garments delivered."), \
     .quantity = BB_QUANTITY_MONEY) \
  F (T, NUMBER, spoilage_per_job, N_("Spoilage"), .help = N_("All parts of the garments made besides."), \
     .quantity = BB_QUANTITY_MONEY) \
  F (T, NUMBER, total_per_job, N_("Total"), .help = N_("All parts of the job."), .quantity = BB_QUANTITY_MONEY) \
  F (T, INTEGER, spoiled_garments, N_("Spoiled garments"), .help = N_("How many garments are made besides."))

BB_DECLARE_TABLE (BbCostOut, bb_cost_out, BB_COST_OUT_FIELDS);

BB_DECLARE_CALCULATOR (Cost, cost);

G_END_DECLS
