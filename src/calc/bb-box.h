/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib/gi18n-lib.h>

#include "bb-calculator.h"

G_BEGIN_DECLS

/*
 * The rectangle that is sprayed: print plus margin on every side, clipped to what the sprayer or platen
 * reaches. Lengths in mm, area in m².
 * Assumes that the print lies square on the platen, in the middle of the box.
 * Refused: a print that is itself wider or higher than the reach; each key out of its limits.
 * Source: plain geometry.
 */

#define BB_BOX_IN_FIELDS(F, T) BB_BOX_PRINT_FIELDS (F, T) BB_BOX_REACH_FIELDS (F, T)

#define BB_BOX_PRINT_FIELDS(F, T) \
  F (T, NUMBER, print_width_mm, N_("Print width"), .help = N_("Width of the printed artwork."), \
     .quantity = BB_QUANTITY_LENGTH, .limits = BB_ABOVE_TO (0, 5000), .required = TRUE, \
     .group = N_("This job")) \
  F (T, NUMBER, print_height_mm, N_("Print height"), .help = N_("Height of the printed artwork."), \
     .quantity = BB_QUANTITY_LENGTH, .limits = BB_ABOVE_TO (0, 5000), .required = TRUE, \
     .group = N_("This job")) \
  F (T, NUMBER, margin_mm, N_("Margin"), .help = N_("How far the box reaches past the print on each side."), \
     .quantity = BB_QUANTITY_LENGTH, .limits = BB_BETWEEN (0, 500), .fallback = BB_DEFAULT (0), \
     .group = N_("Pretreat"))

#define BB_BOX_REACH_FIELDS(F, T) \
  F (T, NUMBER, max_width_mm, N_("Reach across"), .help = N_("Widest box that the sprayer or platen allows."), \
     .quantity = BB_QUANTITY_LENGTH, .limits = BB_ABOVE_TO (0, 5000), \
     .group = N_("Container and sprayer")) \
  F (T, NUMBER, max_height_mm, N_("Reach along"), .help = N_("Highest box that the sprayer or platen allows."), \
     .quantity = BB_QUANTITY_LENGTH, .limits = BB_ABOVE_TO (0, 5000), \
     .group = N_("Container and sprayer"))

BB_DECLARE_TABLE (BbBoxIn, bb_box_in, BB_BOX_IN_FIELDS);

#define BB_BOX_OUT_FIELDS(F, T) \
  F (T, NUMBER, box_width_mm, N_("Box width"), .help = N_("Width of the rectangle to spray."), \
     .quantity = BB_QUANTITY_LENGTH) \
  F (T, NUMBER, box_height_mm, N_("Box height"), .help = N_("Height of the rectangle to spray."), \
     .quantity = BB_QUANTITY_LENGTH) \
  F (T, NUMBER, box_area_m2, N_("Box area"), .help = N_("Area of the rectangle to spray."), \
     .quantity = BB_QUANTITY_AREA) \
  F (T, FLAG, clipped, N_("Clipped"), .help = N_("The margin was cut to what the sprayer or platen reaches."))

BB_DECLARE_TABLE (BbBoxOut, bb_box_out, BB_BOX_OUT_FIELDS);

BB_DECLARE_CALCULATOR (Box, box);

G_END_DECLS
