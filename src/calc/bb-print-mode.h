/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib/gi18n-lib.h>

#include "bb-calculator.h"
#include "bb-recipe.h"

G_BEGIN_DECLS

/*
 * Which print mode suits a garment's colour, and why. The garment decides (common practice, no source for the limits):
 *   white   L* at least 94 and chroma at most 5: colour only
 *   black   L* at most 16 and chroma at most 6: underbase with knockout
 *   other   underbase, with dark pixels printed, because the garment is not the black that the artwork means
 * in CIELAB of D50, from the garment's sRGB by Little CMS, relative colorimetric. The artwork's fractions of all
 * pixels, as the calculator artwork counts them, decide what else is worth saying:
 *   white-is-garment   white garment, some pixels are white: white is left to the garment
 *   black-is-garment   black garment, some pixels are black: black is left to the garment
 *   no-black           black garment, none is: knockout changes nothing
 *   soft-edges         an underbase is printed and some pixels are half transparent: it shows there
 *
 * Assumes that the garment's sRGB is near enough; it is an aid for the eye. A test on the garment decides.
 * Refused: anything but #rrggbb, fractions outside 0 to 1.
 * Source: IEC 61966-2-1 (sRGB) and ISO 15076-1 (its way to D50) by Little CMS; common practice for the rest.
 */

#define BB_MODE_REASON_CHOICES(C) \
  C (BB_MODE_REASON_GARMENT_WHITE, "garment-white", \
     N_("The garment is white: colours are bright on it without an underbase.")) \
  C (BB_MODE_REASON_GARMENT_BLACK, "garment-black", \
     N_("The garment is black: colours need an underbase, and black can be left to the garment.")) \
  C (BB_MODE_REASON_GARMENT_COLOURED, "garment-coloured", \
     N_("The garment is neither white nor black: colours need an underbase, and dark pixels are printed, because the " \
        "garment is not the black that the artwork means.")) \
  C (BB_MODE_REASON_WHITE_IS_GARMENT, "white-is-garment", \
     N_("Where the artwork is white, the garment shows.")) \
  C (BB_MODE_REASON_BLACK_IS_GARMENT, "black-is-garment", \
     N_("Where the artwork is black, the garment shows: less ink, a softer hand.")) \
  C (BB_MODE_REASON_NO_BLACK, "no-black", N_("No pixel is black, so that knockout changes nothing here.")) \
  C (BB_MODE_REASON_SOFT_EDGES, "soft-edges", \
     N_("Some pixels are half transparent: the underbase shows at such soft edges."))

BB_DECLARE_CHOICES (BbModeReason, bb_mode_reason, BB_MODE_REASON_CHOICES);

#define BB_PRINT_MODE_IN_FIELDS(F, T) \
  F (T, TEXT, garment_srgb, N_("Garment colour"), .help = N_("The garment's colour as #rrggbb."), \
     .limits = BB_BETWEEN (7, 7), .required = TRUE) \
  F (T, NUMBER, white_fraction, N_("White"), .help = N_("Share of the artwork's pixels that are white."), \
     .quantity = BB_QUANTITY_FRACTION, .limits = BB_BETWEEN (0, 1), .required = TRUE) \
  F (T, NUMBER, black_fraction, N_("Black"), .help = N_("Share of the artwork's pixels that are black."), \
     .quantity = BB_QUANTITY_FRACTION, .limits = BB_BETWEEN (0, 1), .required = TRUE) \
  F (T, NUMBER, partial_fraction, N_("Soft"), \
     .help = N_("Share of the artwork's pixels that are partly transparent."), .quantity = BB_QUANTITY_FRACTION, \
     .limits = BB_BETWEEN (0, 1), .required = TRUE)

BB_DECLARE_TABLE (BbPrintModeIn, bb_print_mode_in, BB_PRINT_MODE_IN_FIELDS);

#define BB_PRINT_MODE_OUT_FIELDS(F, T) \
  F (T, CHOICE, mode, N_("Print mode"), .help = N_("The mode to start from."), .choices = &bb_print_mode_choices) \
  F (T, TEXTS, reasons, N_("Reasons"), \
     .help = N_("Why, the garment's colour first: garment-white, garment-black, garment-coloured, white-is-garment, " \
                "black-is-garment, no-black, soft-edges."), \
     .choices = &bb_mode_reason_choices)

BB_DECLARE_TABLE (BbPrintModeOut, bb_print_mode_out, BB_PRINT_MODE_OUT_FIELDS);

BB_DECLARE_CALCULATOR (PrintMode, print_mode);

G_END_DECLS
