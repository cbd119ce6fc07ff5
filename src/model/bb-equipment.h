/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib/gi18n-lib.h>

#include "bb-field.h"

G_BEGIN_DECLS

#define BB_EQUIPMENT_KIND_CHOICES(C) \
  C (BB_EQUIPMENT_SPRAYER, "sprayer", N_("Sprayer")) \
  C (BB_EQUIPMENT_PRESS, "press", N_("Heat press")) \
  C (BB_EQUIPMENT_PRINTER, "printer", N_("Printer")) \
  C (BB_EQUIPMENT_TUNNEL, "tunnel", N_("Tunnel dryer"))

BB_DECLARE_CHOICES (BbEquipmentKind, bb_equipment_kind, BB_EQUIPMENT_KIND_CHOICES);

#define BB_EQUIPMENT_FIELDS(F, T) \
  F (T, INTEGER, id, N_("Key"), .help = N_("The record's key in this book."), .derived = TRUE, .unsealed = TRUE) \
  F (T, TEXT, code, N_("Code"), .help = N_("A short name of your own that goes on labels and into searches."), \
     .limits = BB_BETWEEN (1, 40), .required = TRUE) \
  F (T, TEXT, name, N_("Name"), .help = N_("What the bench calls this machine."), .limits = BB_BETWEEN (1, 120), \
     .required = TRUE) \
  F (T, CHOICE, kind, N_("Kind"), .help = N_("What it does."), .choices = &bb_equipment_kind_choices, \
     .required = TRUE) \
  F (T, INTEGER, stations, N_("Stations"), .help = N_("How many garments it works on at once."), \
     .limits = BB_BETWEEN (1, 1000), .fallback = BB_DEFAULT (1), .required = TRUE) \
  F (T, NUMBER, handling_s, N_("Handling"), \
     .help = N_("Time of hands on one garment: loading, smoothing, taking off. Of a sprayer with the spraying."), \
     .quantity = BB_QUANTITY_TIME, .limits = BB_BETWEEN (0, 3600)) \
  F (T, NUMBER, print_s_per_m2, N_("Print time per area"), \
     .help = N_("Seconds that one pass over one square metre takes, timed on a print of known size. Printers only."), \
     .limits = BB_ABOVE_TO (0, 100000)) \
  F (T, NUMBER, reach_width_mm, N_("Reach across"), .help = N_("The widest box that it can work on."), \
     .quantity = BB_QUANTITY_LENGTH, .limits = BB_ABOVE_TO (0, 5000)) \
  F (T, NUMBER, reach_height_mm, N_("Reach along"), .help = N_("The highest box that it can work on."), \
     .quantity = BB_QUANTITY_LENGTH, .limits = BB_ABOVE_TO (0, 5000)) \
  F (T, NUMBER, power_w, N_("Power"), .help = N_("What it draws while it works, for the cost of energy."), \
     .quantity = BB_QUANTITY_HEAT_FLOW, .limits = BB_BETWEEN (0, 1e6)) \
  F (T, DATE, calibrated_at, N_("Calibrated"), \
     .help = N_("When its heat, laydown or heads were last measured and put right.")) \
  F (T, INTEGER, calibrate_days, N_("Days between calibrations"), \
     .help = N_("After how many days it has to be measured again, by its manual or the shop's own rule."), \
     .limits = BB_BETWEEN (1, 5000)) \
  F (T, TEXT, note, N_("Note"), .help = N_("Where its manual is kept, what it is not good at."), .multiline = TRUE) \
  F (T, DATE, withdrawn_at, N_("Withdrawn"), .help = N_("When it was taken out of use."), \
     .derived = TRUE, .stepwise = TRUE)

BB_DECLARE_TABLE (BbEquipment, bb_equipment, BB_EQUIPMENT_FIELDS);

char    *bb_equipment_dup_due_day (const BbEquipment *self);
gboolean bb_equipment_is_due      (const BbEquipment *self,
                                   const char        *day);
int      bb_equipment_compare_due (const BbEquipment *self,
                                   const BbEquipment *other,
                                   const char        *day);

G_END_DECLS
