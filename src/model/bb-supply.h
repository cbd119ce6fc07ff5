/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib/gi18n-lib.h>

#include "bb-field.h"

G_BEGIN_DECLS

#define BB_SUPPLY_KIND_CHOICES(C) \
  C (BB_SUPPLY_PRETREAT, "pretreat", N_("Pretreat")) \
  C (BB_SUPPLY_INK, "ink", N_("Ink")) \
  C (BB_SUPPLY_SHEET, "sheet", N_("Cover sheet")) \
  C (BB_SUPPLY_CLEANER, "cleaner", N_("Cleaner"))

BB_DECLARE_CHOICES (BbSupplyKind, bb_supply_kind, BB_SUPPLY_KIND_CHOICES);

#define BB_SUPPLY_FIELDS(F, T) \
  F (T, INTEGER, id, N_("Key"), .help = N_("The record's key in this book."), .derived = TRUE, .unsealed = TRUE) \
  F (T, TEXT, code, N_("Code"), .help = N_("A short name of your own that goes on labels and into searches."), \
     .limits = BB_BETWEEN (1, 40), .required = TRUE) \
  F (T, TEXT, name, N_("Name"), .help = N_("What the container's label says."), .limits = BB_BETWEEN (1, 120), \
     .required = TRUE) \
  F (T, TEXT, maker, N_("Maker"), .help = N_("Who makes it."), .limits = BB_BETWEEN (0, 120)) \
  F (T, CHOICE, kind, N_("Kind"), .help = N_("What it is used for."), .choices = &bb_supply_kind_choices, \
     .required = TRUE) \
  F (T, NUMBER, density_g_per_ml, N_("Density"), \
     .help = N_("From the supplier's data sheet, or a weighed measuring flask. Grams and millilitres come from it."), \
     .quantity = BB_QUANTITY_DENSITY, .limits = BB_BETWEEN (0.5, 2), \
     .group = N_("From the data sheet")) \
  F (T, NUMBER, solids_fraction, N_("Solids"), \
     .help = N_("Share of the mass that stays when the water is gone, from the supplier's data sheet."), \
     .quantity = BB_QUANTITY_FRACTION, .limits = BB_BETWEEN (0, 1), \
     .group = N_("From the data sheet")) \
  F (T, NUMBER, water_parts_least, N_("Least parts of water"), \
     .help = N_("Least parts of water to one part of concentrate that the supplier allows; 0 for ready to use."), \
     .limits = BB_BETWEEN (0, 100), .group = N_("From the data sheet")) \
  F (T, NUMBER, water_parts_most, N_("Most parts of water"), \
     .help = N_("Most parts of water to one part of concentrate that the supplier allows."), \
     .limits = BB_BETWEEN (0, 100), .group = N_("From the data sheet")) \
  F (T, NUMBER, laydown_least_g_per_m2, N_("Least laydown"), \
     .help = N_("Least wet mass per area that the supplier advises."), \
     .quantity = BB_QUANTITY_MASS_PER_AREA, .limits = BB_BETWEEN (0, 1000), \
     .group = N_("From the data sheet")) \
  F (T, NUMBER, laydown_most_g_per_m2, N_("Most laydown"), \
     .help = N_("Most wet mass per area that the supplier advises."), \
     .quantity = BB_QUANTITY_MASS_PER_AREA, .limits = BB_BETWEEN (0, 1000), \
     .group = N_("From the data sheet")) \
  F (T, NUMBER, price_per_kg, N_("Price per kilogram"), .help = N_("What the shop pays for one kilogram."), \
     .quantity = BB_QUANTITY_MONEY, .limits = BB_BETWEEN (0, 1e6)) \
  F (T, NUMBER, sheet_price, N_("Price of a sheet"), .help = N_("What the shop pays for one cover sheet."), \
     .quantity = BB_QUANTITY_MONEY, .limits = BB_BETWEEN (0, 1e6)) \
  F (T, NUMBER, sheet_uses, N_("Uses of a sheet"), \
     .help = N_("How often a cover sheet is used before it is thrown away."), .limits = BB_BETWEEN (1, 100000)) \
  F (T, NUMBER, low_stock_g, N_("Low below"), \
     .help = N_("When less than this is left in all containers together, it is time to order."), \
     .quantity = BB_QUANTITY_MASS, .limits = BB_BETWEEN (0, 1e6)) \
  F (T, INTEGER, shelf_life_days, N_("Shelf life in days"), \
     .help = N_("Days from filling to the last day of use, unopened, from the label."), \
     .limits = BB_BETWEEN (1, 5000)) \
  F (T, INTEGER, open_life_days, N_("Days once opened"), \
     .help = N_("Days of use after the container was opened, from the supplier's data sheet."), \
     .limits = BB_BETWEEN (1, 5000)) \
  F (T, TEXT, hazards, N_("Hazard statements"), \
     .help = N_("Codes from section 2 of the supplier's safety data sheet, like H319, separated by spaces."), \
     .limits = BB_BETWEEN (0, 200), .group = N_("From the data sheet")) \
  F (T, TEXT, note, N_("Note"), .help = N_("Storage, stirring, where the safety data sheet is kept."), \
     .multiline = TRUE) \
  F (T, DATE, withdrawn_at, N_("Withdrawn"), .help = N_("When it was taken out of use."), \
     .derived = TRUE, .stepwise = TRUE)

BB_DECLARE_TABLE (BbSupply, bb_supply, BB_SUPPLY_FIELDS);

G_END_DECLS
