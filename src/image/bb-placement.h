/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bb-artwork.h"

G_BEGIN_DECLS

/*
 * Where a counted picture lies: the whole picture, the art in it, and the box that is sprayed around the art. A bench
 * names the size of what is seen on the garment, which is the art box; a file has the size of the whole picture. All of
 * it follows from the counts, so that nothing is read again when a size changes.
 *
 * Lengths in mm, from the top left corner of the picture. Assumes square pixels. Source: plain geometry.
 */

/**
 * BbRectangle:
 * @x_mm: its left edge
 * @y_mm: its top edge
 * @width_mm: its width
 * @height_mm: its height
 */
typedef struct {
  double x_mm;
  double y_mm;
  double width_mm;
  double height_mm;
} BbRectangle;

/**
 * BbPlacement:
 * @picture: the whole picture, its empty edge included
 * @art: all that is visible of it; the whole picture where nothing is
 * @box: what is sprayed, with the art in its middle
 * @view: the smallest rectangle that holds @art and @box
 */
typedef struct {
  BbRectangle picture;
  BbRectangle art;
  BbRectangle box;
  BbRectangle view;
} BbPlacement;

/**
 * BbShare:
 * @fraction: share of the art box, 0 to 1
 * @area_m2: the area itself
 */
typedef struct {
  double fraction;
  double area_m2;
} BbShare;

/**
 * BbCoverage:
 * @colour: what the colours cover
 * @underbase: what the white under the colours covers
 * @highlight: what is white in the artwork itself, where there is an underbase
 * @knockout: black that is left to the garment
 * @soft: pixels that are neither empty nor opaque, whole, not by their alpha
 *
 * How much of the art box each part of the print takes. A pixel counts for its area by its alpha, except in @soft.
 */
typedef struct {
  BbShare colour;
  BbShare underbase;
  BbShare highlight;
  BbShare knockout;
  BbShare soft;
} BbCoverage;

double bb_placement_natural_width    (const BbCounts     *counts);
double bb_placement_width_for_height (const BbCounts     *counts,
                                      double              height_mm);
double bb_placement_height_for_width (const BbCounts     *counts,
                                      double              width_mm);
double bb_placement_picture_width    (const BbCounts     *counts,
                                      double              width_mm);
void   bb_placement_fill             (BbPlacement        *self,
                                      const BbCounts     *counts,
                                      double              width_mm,
                                      double              box_width_mm,
                                      double              box_height_mm);
void   bb_coverage_fill              (BbCoverage         *self,
                                      const BbArtworkIn  *in,
                                      const BbArtworkOut *out);

G_END_DECLS
