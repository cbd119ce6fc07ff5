/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib/gi18n-lib.h>

#include "bb-field.h"

G_BEGIN_DECLS

/* Fibres by their generic names (Regulation (EU) No 1007/2011, Annex I). */
#define BB_FIBRE_CHOICES(C) \
  C (BB_FIBRE_COTTON, "cotton", N_("Cotton")) \
  C (BB_FIBRE_POLYESTER, "polyester", N_("Polyester")) \
  C (BB_FIBRE_VISCOSE, "viscose", N_("Viscose")) \
  C (BB_FIBRE_MODAL, "modal", N_("Modal")) \
  C (BB_FIBRE_LYOCELL, "lyocell", N_("Lyocell")) \
  C (BB_FIBRE_LINEN, "linen", N_("Linen")) \
  C (BB_FIBRE_HEMP, "hemp", N_("Hemp")) \
  C (BB_FIBRE_WOOL, "wool", N_("Wool")) \
  C (BB_FIBRE_SILK, "silk", N_("Silk")) \
  C (BB_FIBRE_POLYAMIDE, "polyamide", N_("Polyamide (nylon)")) \
  C (BB_FIBRE_ACRYLIC, "acrylic", N_("Acrylic")) \
  C (BB_FIBRE_POLYPROPYLENE, "polypropylene", N_("Polypropylene")) \
  C (BB_FIBRE_ELASTANE, "elastane", N_("Elastane"))

BB_DECLARE_CHOICES (BbFibre, bb_fibre, BB_FIBRE_CHOICES);

#define BB_KNIT_CHOICES(C) \
  C (BB_KNIT_JERSEY, "jersey", N_("Single jersey")) \
  C (BB_KNIT_RIB, "rib", N_("Rib")) \
  C (BB_KNIT_INTERLOCK, "interlock", N_("Interlock")) \
  C (BB_KNIT_PIQUE, "pique", N_("Piqué")) \
  C (BB_KNIT_FLEECE, "fleece", N_("Brushed fleece")) \
  C (BB_KNIT_TERRY, "terry", N_("French terry")) \
  C (BB_KNIT_MESH, "mesh", N_("Mesh")) \
  C (BB_KNIT_WOVEN, "woven", N_("Woven"))

BB_DECLARE_CHOICES (BbKnit, bb_knit, BB_KNIT_CHOICES);

#define BB_FINISH_CHOICES(C) \
  C (BB_FINISH_NONE, "none", N_("None known")) \
  C (BB_FINISH_RING_SPUN, "combed-ring-spun", N_("Combed ring-spun")) \
  C (BB_FINISH_ENZYME, "enzyme-washed", N_("Enzyme washed")) \
  C (BB_FINISH_GARMENT_DYED, "garment-dyed", N_("Garment dyed")) \
  C (BB_FINISH_SOFTENED, "softened", N_("Heavily softened")) \
  C (BB_FINISH_WATER_REPELLENT, "water-repellent", N_("Water repellent"))

BB_DECLARE_CHOICES (BbFinish, bb_finish, BB_FINISH_CHOICES);

#define BB_FIBRE_SHARE_FIELDS(F, T) \
  F (T, CHOICE, fibre, N_("Fibre"), .help = N_("As the garment's label names it."), \
     .choices = &bb_fibre_choices, .required = TRUE) \
  F (T, NUMBER, fraction, N_("Share"), .help = N_("Share of the garment's mass. All shares together make 100 %."), \
     .quantity = BB_QUANTITY_FRACTION, .limits = BB_ABOVE_TO (0, 1), .required = TRUE)

BB_DECLARE_TABLE (BbFibreShare, bb_fibre_share, BB_FIBRE_SHARE_FIELDS);

#define BB_BLANK_FIELDS(F, T) \
  F (T, INTEGER, id, N_("Key"), .help = N_("The record's key in this book."), .derived = TRUE, .unsealed = TRUE) \
  F (T, TEXT, code, N_("Code"), .help = N_("A short name of your own that goes on labels and into searches."), \
     .limits = BB_BETWEEN (1, 40), .required = TRUE) \
  F (T, TEXT, name, N_("Name"), .help = N_("What the bench calls this garment."), \
     .limits = BB_BETWEEN (1, 120), .required = TRUE) \
  F (T, TEXT, maker, N_("Maker"), .help = N_("Who makes the garment."), .limits = BB_BETWEEN (0, 120)) \
  F (T, LIST, composition, N_("Fibres"), .help = N_("What the fabric is made of, from the garment's label."), \
     .item = &bb_fibre_share_table, .count = BB_BETWEEN (1, 8), .required = TRUE) \
  F (T, NUMBER, mass_g_per_m2, N_("Fabric mass"), .help = N_("Mass per area of the fabric that is printed."), \
     .quantity = BB_QUANTITY_MASS_PER_AREA, .limits = BB_BETWEEN (40, 1000), .required = TRUE) \
  F (T, CHOICE, knit, N_("Knit"), .help = N_("How the fabric is made."), .choices = &bb_knit_choices, \
     .required = TRUE) \
  F (T, CHOICE, finish, N_("Finish"), .help = N_("What was done to the fabric after knitting and dyeing."), \
     .choices = &bb_finish_choices, .fallback = BB_DEFAULT (BB_FINISH_NONE), .required = TRUE) \
  F (T, NUMBER, price, N_("Price"), .help = N_("What the shop pays for one garment."), \
     .quantity = BB_QUANTITY_MONEY, .limits = BB_BETWEEN (0, 1e6)) \
  F (T, TEXT, note, N_("Note"), .help = N_("What the next person should know about this garment."), \
     .multiline = TRUE) \
  F (T, DATE, withdrawn_at, N_("Withdrawn"), .help = N_("When it was taken out of use."), \
     .derived = TRUE, .stepwise = TRUE)

BB_DECLARE_TABLE (BbBlank, bb_blank, BB_BLANK_FIELDS);

#define BB_COLOURWAY_FIELDS(F, T) \
  F (T, INTEGER, id, N_("Key"), .help = N_("The record's key in this book."), .derived = TRUE, .unsealed = TRUE) \
  F (T, TEXT, code, N_("Code"), .help = N_("A short name of your own that goes on labels and into searches."), \
     .limits = BB_BETWEEN (1, 60), .required = TRUE) \
  F (T, REFERENCE, blank, N_("Blank"), .help = N_("The garment that comes in this colour."), \
     .target = &bb_blank_table, .required = TRUE) \
  F (T, TEXT, name, N_("Colour"), .help = N_("What the maker calls the colour."), .limits = BB_BETWEEN (1, 80), \
     .required = TRUE) \
  F (T, TEXT, srgb, N_("Colour on screen"), \
     .help = N_("The garment's colour as #rrggbb, measured or judged beside a screen: an aid for the eye."), \
     .limits = BB_BETWEEN (7, 7), .colour = TRUE, .required = TRUE) \
  F (T, DATE, withdrawn_at, N_("Withdrawn"), .help = N_("When it was taken out of use."), \
     .derived = TRUE, .stepwise = TRUE)

BB_DECLARE_TABLE (BbColourway, bb_colourway, BB_COLOURWAY_FIELDS);

gboolean bb_composition_check (const GArray *composition,
                               const char   *key,
                               GError      **error);
char    *bb_composition_dup_text (const GArray *composition);
gboolean bb_srgb_parse        (const char   *text,
                               guint8        rgb[3]);
gboolean bb_srgb_check        (const char   *text,
                               const char   *key,
                               GError      **error);
char    *bb_srgb_format       (double        red,
                               double        green,
                               double        blue);

G_END_DECLS
