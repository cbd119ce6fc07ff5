/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <math.h>

#include "bb-counts.h"

G_BEGIN_DECLS

/**
 * BbPrintSize:
 * @width_mm: width of the print; NaN where it is not known
 * @height_mm: its height; likewise
 * @is_typed: whether a person typed it, so that it stands when another artwork comes
 *
 * The size of a print, as a form has it beside an artwork: where there is one, width and height stand in its ratio.
 */
typedef struct {
  double width_mm;
  double height_mm;
  gboolean is_typed;
} BbPrintSize;

/* Nothing is known, and nothing was typed. */
#define BB_PRINT_SIZE_UNKNOWN ((BbPrintSize) { .width_mm = (double) NAN, .height_mm = (double) NAN })

gboolean bb_print_size_is_length (double          mm);
gboolean bb_print_size_take_art  (BbPrintSize    *self,
                                  const BbCounts *art);
gboolean bb_print_size_follow    (BbPrintSize    *self,
                                  const BbCounts *art,
                                  double         *width_mm,
                                  double         *height_mm);

G_END_DECLS
