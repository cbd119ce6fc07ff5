/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bb-blank.h"
#include "bb-grade.h"
#include "bb-person.h"
#include "bb-supply.h"

G_BEGIN_DECLS

#define BB_SHADE_CHOICES(C) \
  C (BB_SHADE_ANY, "any", N_("Any colour")) \
  C (BB_SHADE_WHITE, "white", N_("White")) \
  C (BB_SHADE_LIGHT, "light", N_("Light colours")) \
  C (BB_SHADE_DARK, "dark", N_("Dark colours")) \
  C (BB_SHADE_BLACK, "black", N_("Black"))

BB_DECLARE_CHOICES (BbShade, bb_shade, BB_SHADE_CHOICES);

#define BB_RECIPE_FIELDS(F, T) \
  F (T, INTEGER, id, N_("Key"), .help = N_("The record's key in this book."), .derived = TRUE, .unsealed = TRUE) \
  F (T, TEXT, code, N_("Code"), .help = N_("A short name of your own that goes on labels and into searches."), \
     .limits = BB_BETWEEN (1, 40), .required = TRUE) \
  F (T, TEXT, name, N_("Name"), .help = N_("What the bench calls this recipe."), .limits = BB_BETWEEN (1, 120), \
     .required = TRUE) \
  F (T, REFERENCE, blank, N_("Blank"), .help = N_("The garment it is for; empty for a family of garments."), \
     .target = &bb_blank_table) \
  F (T, TEXT, family, N_("Family"), .help = N_("Which garments it is for, where it is for more than one."), \
     .limits = BB_BETWEEN (0, 120)) \
  F (T, REFERENCE, colourway, N_("Colourway"), .help = N_("The one colour it is for; empty for several."), \
     .target = &bb_colourway_table) \
  F (T, CHOICE, shade, N_("Colours"), .help = N_("Which garment colours it is for."), \
     .choices = &bb_shade_choices, .fallback = BB_DEFAULT (BB_SHADE_ANY), .required = TRUE) \
  F (T, TEXT, note, N_("Note"), .help = N_("What the next person should know about this recipe."), \
     .multiline = TRUE) \
  F (T, DATE, withdrawn_at, N_("Withdrawn"), .help = N_("When it was taken out of use."), \
     .derived = TRUE, .stepwise = TRUE)

BB_DECLARE_TABLE (BbRecipe, bb_recipe, BB_RECIPE_FIELDS);

#define BB_BASIS_CHOICES(C) \
  C (BB_BASIS_VOLUME, "volume", N_("By volume")) \
  C (BB_BASIS_MASS, "mass", N_("By mass"))

BB_DECLARE_CHOICES (BbBasis, bb_basis, BB_BASIS_CHOICES);

#define BB_PRETREAT_METHOD_CHOICES(C) \
  C (BB_PRETREAT_MACHINE, "machine", N_("Spray machine")) \
  C (BB_PRETREAT_GUN, "gun", N_("Spray gun")) \
  C (BB_PRETREAT_ROLLER, "roller", N_("Roller")) \
  C (BB_PRETREAT_NONE, "none", N_("No pretreat"))

BB_DECLARE_CHOICES (BbPretreatMethod, bb_pretreat_method, BB_PRETREAT_METHOD_CHOICES);

#define BB_HEAT_METHOD_CHOICES(C) \
  C (BB_HEAT_PRESS, "press", N_("Heat press")) \
  C (BB_HEAT_HOVER, "hover", N_("Heat press, hovering")) \
  C (BB_HEAT_TUNNEL, "tunnel", N_("Tunnel dryer")) \
  C (BB_HEAT_AIR, "air", N_("Hung in air"))

BB_DECLARE_CHOICES (BbHeatMethod, bb_heat_method, BB_HEAT_METHOD_CHOICES);

#define BB_PRINT_MODE_CHOICES(C) \
  C (BB_PRINT_COLOUR_ONLY, "colour-only", N_("Colour only")) \
  C (BB_PRINT_UNDERBASE, "underbase", N_("Underbase")) \
  C (BB_PRINT_UNDERBASE_KNOCKOUT, "underbase-knockout", N_("Underbase with knockout"))

BB_DECLARE_CHOICES (BbPrintMode, bb_print_mode, BB_PRINT_MODE_CHOICES);

/* Parameters only; the standards' texts are with their publishers (see the Safety and Wash log pages). */
#define BB_WASH_METHOD_CHOICES(C) \
  C (BB_WASH_SHOP, "shop", N_("The shop's own plan")) \
  C (BB_WASH_ISO_6330, "iso-6330", N_("ISO 6330 domestic washing and drying")) \
  C (BB_WASH_ISO_105_C06, "iso-105-c06", N_("ISO 105-C06 domestic and commercial laundering")) \
  C (BB_WASH_AATCC_61, "aatcc-61", N_("AATCC TM61 accelerated laundering")) \
  C (BB_WASH_AATCC_LP1, "aatcc-lp1", N_("AATCC LP1 home laundering"))

BB_DECLARE_CHOICES (BbWashMethod, bb_wash_method, BB_WASH_METHOD_CHOICES);

#define BB_CRACK_CHOICES(C) \
  C (BB_CRACK_NONE, "none", N_("None")) \
  C (BB_CRACK_HAIRLINE, "hairline", N_("Hairline, when stretched")) \
  C (BB_CRACK_VISIBLE, "visible", N_("Visible at rest"))

BB_DECLARE_CHOICES (BbCrack, bb_crack, BB_CRACK_CHOICES);

#define BB_REVISION_FIELDS(F, T) \
  F (T, INTEGER, id, N_("Key"), .help = N_("The record's key in this book."), .derived = TRUE, .unsealed = TRUE) \
  F (T, TEXT, code, N_("Code"), .help = N_("The recipe's code and the revision's number."), \
     .limits = BB_BETWEEN (1, 60), .derived = TRUE, .required = TRUE) \
  F (T, REFERENCE, recipe, N_("Recipe"), .help = N_("The recipe it is a revision of."), .target = &bb_recipe_table, \
     .owner = TRUE, .derived = TRUE, .required = TRUE) \
  F (T, INTEGER, number, N_("Revision"), .help = N_("Counts from 1 within the recipe."), \
     .limits = BB_BETWEEN (1, 9999), .derived = TRUE, .required = TRUE) \
  F (T, DATE, made_at, N_("Made"), .help = N_("When this revision was written."), .derived = TRUE, \
     .required = TRUE) \
  F (T, REFERENCE, made_by, N_("Made by"), .help = N_("Who wrote it."), .target = &bb_person_table, .derived = TRUE) \
  F (T, TEXT, reason, N_("Reason"), .help = N_("Why this revision differs from the one before."), \
     .limits = BB_BETWEEN (0, 400)) \
  F (T, CHOICE, pretreat_method, N_("Method"), .help = N_("How the pretreat is put on."), \
     .choices = &bb_pretreat_method_choices, .fallback = BB_DEFAULT (BB_PRETREAT_MACHINE), .required = TRUE, \
     .station = BB_STATION_PRETREAT) \
  F (T, REFERENCE, pretreat_product, N_("Product"), .help = N_("The pretreat concentrate."), \
     .target = &bb_supply_table, .among = BB_DEFAULT (BB_SUPPLY_PRETREAT), .station = BB_STATION_PRETREAT) \
  F (T, NUMBER, pretreat_parts_concentrate, N_("Dilution"), \
     .help = N_("Parts of concentrate to parts of water, like 1:3; 1:0 is ready to use."), \
     .limits = BB_ABOVE_TO (0, 100), .parts_with = "pretreat_parts_water", .station = BB_STATION_PRETREAT) \
  F (T, NUMBER, pretreat_parts_water, N_("Parts of water"), .help = N_("Parts of water in the dilution."), \
     .limits = BB_BETWEEN (0, 100), .station = BB_STATION_PRETREAT) \
  F (T, CHOICE, pretreat_basis, N_("Parts"), .help = N_("Whether the parts are measured by volume or by mass."), \
     .choices = &bb_basis_choices, .fallback = BB_DEFAULT (BB_BASIS_VOLUME), .station = BB_STATION_PRETREAT) \
  F (T, NUMBER, pretreat_laydown_g_per_m2, N_("Laydown"), \
     .help = N_("Wet mass of pretreat on the garment per area, checked by a weigh-in."), \
     .quantity = BB_QUANTITY_MASS_PER_AREA, .limits = BB_ABOVE_TO (0, 600), .station = BB_STATION_PRETREAT) \
  F (T, NUMBER, pretreat_margin_mm, N_("Margin"), .help = N_("How far the box reaches past the print on each side."), \
     .quantity = BB_QUANTITY_LENGTH, .limits = BB_BETWEEN (0, 200), .station = BB_STATION_PRETREAT) \
  F (T, INTEGER, pretreat_passes, N_("Passes"), .help = N_("How often the sprayer or roller goes over the box."), \
     .limits = BB_BETWEEN (1, 20), .station = BB_STATION_PRETREAT) \
  F (T, CHOICE, dry_method, N_("Method"), .help = N_("How the pretreat is dried."), \
     .choices = &bb_heat_method_choices, .fallback = BB_DEFAULT (BB_HEAT_PRESS), .required = TRUE, \
     .station = BB_STATION_DRY) \
  F (T, NUMBER, dry_c, N_("Temperature"), .help = N_("Measured at the platen's or the fabric's surface."), \
     .quantity = BB_QUANTITY_TEMPERATURE, .limits = BB_BETWEEN (10, 230), .station = BB_STATION_DRY) \
  F (T, NUMBER, dry_s, N_("Dwell"), .help = N_("Time under heat of one press, or in the heated length."), \
     .quantity = BB_QUANTITY_TIME, .limits = BB_ABOVE_TO (0, 86400), .station = BB_STATION_DRY) \
  F (T, NUMBER, dry_kpa, N_("Pressure"), .help = N_("As the press shows it, or none where it only hovers."), \
     .quantity = BB_QUANTITY_PRESSURE, .limits = BB_BETWEEN (0, 1000), .station = BB_STATION_DRY) \
  F (T, REFERENCE, dry_sheet, N_("Cover sheet"), .help = N_("What lies between platen and garment."), \
     .target = &bb_supply_table, .among = BB_DEFAULT (BB_SUPPLY_SHEET), .station = BB_STATION_DRY) \
  F (T, INTEGER, dry_presses, N_("Presses"), .help = N_("How often it is pressed, steam let off between."), \
     .limits = BB_BETWEEN (1, 20), .station = BB_STATION_DRY) \
  F (T, CHOICE, print_mode, N_("Mode"), \
     .help = N_("Whether white lies under the colour, and whether the garment itself serves as black."), \
     .choices = &bb_print_mode_choices, .required = TRUE, .station = BB_STATION_PRINT) \
  F (T, NUMBER, print_white_g_per_m2, N_("Underbase white"), .help = N_("White ink under the colour, per area."), \
     .quantity = BB_QUANTITY_MASS_PER_AREA, .limits = BB_BETWEEN (0, 600), .station = BB_STATION_PRINT) \
  F (T, NUMBER, print_highlight_g_per_m2, N_("Highlight white"), \
     .help = N_("White ink where the artwork itself is white, per area."), \
     .quantity = BB_QUANTITY_MASS_PER_AREA, .limits = BB_BETWEEN (0, 600), .station = BB_STATION_PRINT) \
  F (T, INTEGER, print_passes, N_("Passes"), .help = N_("How often the heads go over the same place."), \
     .limits = BB_BETWEEN (1, 32), .station = BB_STATION_PRINT) \
  F (T, NUMBER, print_colour_limit, N_("Colour limit"), \
     .help = N_("Most ink of all colours together, as a share of one full colour; 2 is two full colours."), \
     .limits = BB_ABOVE_TO (0, 4), .station = BB_STATION_PRINT) \
  F (T, CHOICE, cure_method, N_("Method"), .help = N_("How the ink is cured."), \
     .choices = &bb_heat_method_choices, .fallback = BB_DEFAULT (BB_HEAT_PRESS), .required = TRUE, \
     .station = BB_STATION_CURE) \
  F (T, NUMBER, cure_c, N_("Temperature"), .help = N_("Measured at the ink's surface, not only set."), \
     .quantity = BB_QUANTITY_TEMPERATURE, .limits = BB_BETWEEN (10, 230), .required = TRUE, \
     .station = BB_STATION_CURE) \
  F (T, NUMBER, cure_s, N_("Dwell"), .help = N_("Time under heat of one press, or in the heated length."), \
     .quantity = BB_QUANTITY_TIME, .limits = BB_ABOVE_TO (0, 3600), .required = TRUE, .station = BB_STATION_CURE) \
  F (T, NUMBER, cure_kpa, N_("Pressure"), .help = N_("As the press shows it, or none where it only hovers."), \
     .quantity = BB_QUANTITY_PRESSURE, .limits = BB_BETWEEN (0, 1000), .station = BB_STATION_CURE) \
  F (T, REFERENCE, cure_sheet, N_("Cover sheet"), .help = N_("What lies between platen and print."), \
     .target = &bb_supply_table, .among = BB_DEFAULT (BB_SUPPLY_SHEET), .station = BB_STATION_CURE) \
  F (T, INTEGER, cure_presses, N_("Presses"), .help = N_("How often it is pressed."), .limits = BB_BETWEEN (1, 20), \
     .station = BB_STATION_CURE) \
  F (T, NUMBER, cure_belt_mm_per_s, N_("Belt speed"), .help = N_("Of a tunnel dryer."), \
     .quantity = BB_QUANTITY_SPEED, .limits = BB_ABOVE_TO (0, 1000), .station = BB_STATION_CURE) \
  F (T, CHOICE, proof_method, N_("Wash method"), .help = N_("How specimens are washed and dried."), \
     .choices = &bb_wash_method_choices, .fallback = BB_DEFAULT (BB_WASH_SHOP), .required = TRUE, \
     .station = BB_STATION_PROOF) \
  F (T, INTEGER, proof_cycles, N_("Cycles"), .help = N_("How many washes it has to stand."), \
     .limits = BB_BETWEEN (1, 500), .required = TRUE, .station = BB_STATION_PROOF) \
  F (T, CHOICE, proof_change, N_("Least grade of change"), \
     .help = N_("Grey scale for change in colour, ISO 105-A02."), \
     .choices = &bb_grade_choices, .fallback = BB_DEFAULT (BB_GRADE_4), .required = TRUE, .station = BB_STATION_PROOF) \
  F (T, CHOICE, proof_stain, N_("Least grade of staining"), .help = N_("Grey scale for staining, ISO 105-A03."), \
     .choices = &bb_grade_choices, .fallback = BB_DEFAULT (BB_GRADE_4), .station = BB_STATION_PROOF) \
  F (T, CHOICE, proof_crack, N_("Cracking allowed"), .help = N_("The worst cracking that still passes."), \
     .choices = &bb_crack_choices, .fallback = BB_DEFAULT (BB_CRACK_NONE), .required = TRUE, \
     .station = BB_STATION_PROOF) \
  F (T, TEXT, note, N_("Note"), .help = N_("What the settings do not say."), .multiline = TRUE) \
  F (T, TEXT, seal, N_("Seal"), .help = N_("SHA-256 of the revision's canonical text: a changed byte is found."), \
     .limits = BB_BETWEEN (64, 64), .derived = TRUE, .unsealed = TRUE, .required = TRUE)

BB_DECLARE_TABLE (BbRevision, bb_revision, BB_REVISION_FIELDS);

BbRevision *bb_revision_new_next (const BbRevision *before,
                                  gint64            number);

#define BB_STATE_CHOICES(C) \
  C (BB_STATE_DRAFT, "draft", N_("Draft")) \
  C (BB_STATE_ON_TRIAL, "on-trial", N_("On trial")) \
  C (BB_STATE_PROVEN, "proven", N_("Proven")) \
  C (BB_STATE_WITHDRAWN, "withdrawn", N_("Withdrawn"))

BB_DECLARE_CHOICES (BbState, bb_state, BB_STATE_CHOICES);

/* A revision never changes once it is used; where it stands does, and so has a record of its own. */
#define BB_STANDING_FIELDS(F, T) \
  F (T, INTEGER, id, N_("Key"), .help = N_("The record's key in this book."), .derived = TRUE, .unsealed = TRUE) \
  F (T, REFERENCE, revision, N_("Revision"), .help = N_("The revision whose state it is."), \
     .target = &bb_revision_table, .owner = TRUE, .required = TRUE) \
  F (T, CHOICE, state, N_("State"), .help = N_("Where the revision stands."), .choices = &bb_state_choices, \
     .fallback = BB_DEFAULT (BB_STATE_DRAFT), .required = TRUE) \
  F (T, DATE, since, N_("Since"), .help = N_("When it came to this state."), .required = TRUE) \
  F (T, REFERENCE, person, N_("By"), .help = N_("Who decided."), .target = &bb_person_table) \
  F (T, TEXT, reason, N_("Reason"), .help = N_("On what grounds."), .limits = BB_BETWEEN (0, 400))

BB_DECLARE_TABLE (BbStanding, bb_standing, BB_STANDING_FIELDS);

gboolean bb_state_may_become (BbState from,
                              BbState to);

G_END_DECLS
