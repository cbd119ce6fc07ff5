/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bb-png.h"

G_BEGIN_DECLS

/**
 * BbCounts:
 * @width: columns
 * @height: rows
 * @pixels_per_metre_x: resolution across that the file names; 0 where it names none
 * @n_pixels: all pixels
 * @n_empty: pixels of alpha 0
 * @n_opaque: pixels of alpha 255
 * @n_black: pixels of alpha > 0 and max (R, G, B) ≤ black_at
 * @n_white: pixels of alpha > 0 and min (R, G, B) ≥ white_at
 * @alpha: sum of all pixels' alpha, of 255
 * @black_alpha: sum of the black pixels' alpha
 * @white_alpha: sum of the white pixels' alpha
 * @left: first column with a pixel of alpha > 0
 * @top: first row with one
 * @right: the column behind the last with one; equal to @left where all pixels are empty
 * @bottom: the row behind the last with one
 *
 * Exact counts of a picture as if it were expanded to RGBA of 8 bits.
 */
typedef struct {
  guint32 width;
  guint32 height;
  guint32 pixels_per_metre_x;
  guint64 n_pixels;
  guint64 n_empty;
  guint64 n_opaque;
  guint64 n_black;
  guint64 n_white;
  guint64 alpha;
  guint64 black_alpha;
  guint64 white_alpha;
  guint32 left;
  guint32 top;
  guint32 right;
  guint32 bottom;
} BbCounts;

gboolean bb_counts_read (BbCounts          *self,
                         BbPng             *png,
                         guint8             black_at,
                         guint8             white_at,
                         const BbImageWork *work,
                         GError           **error);

G_END_DECLS
