/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/*
 * What is done for each single pixel, and nothing else. The file behind it is compiled for speed (-O3), because these
 * loops decide how much longer counting takes than decoding.
 */

/**
 * BbPixelSums:
 * @n_empty: pixels of alpha 0
 * @n_opaque: pixels of alpha 255
 * @n_black: pixels of alpha > 0 whose largest of red, green and blue is not above the limit
 * @n_white: pixels of alpha > 0 whose smallest of red, green and blue is not below the limit
 * @alpha: the sum of all alpha, of 255
 * @black_alpha: the sum of the black pixels' alpha
 * @white_alpha: the sum of the white pixels' alpha
 *
 * Sums over one row; 32 bits are enough for rows of sixteen million pixels.
 */
typedef struct {
  guint32 n_empty;
  guint32 n_opaque;
  guint32 n_black;
  guint32 n_white;
  guint32 alpha;
  guint32 black_alpha;
  guint32 white_alpha;
} BbPixelSums;

void  _bb_pixels_sum_rgb         (const guint8 *pixels,
                                  gsize         n_pixels,
                                  guint8        black_at,
                                  guint8        white_at,
                                  BbPixelSums  *sums);
void  _bb_pixels_sum_rgba        (const guint8 *pixels,
                                  gsize         n_pixels,
                                  guint8        black_at,
                                  guint8        white_at,
                                  BbPixelSums  *sums);
void  _bb_pixels_count_bytes     (const guint8 *bytes,
                                  gsize         n_bytes,
                                  guint32       counts[256]);
gsize _bb_pixels_skip_alike      (const guint8 *bytes,
                                  gsize         n_bytes);
gsize _bb_pixels_skip_alike_back (const guint8 *bytes,
                                  gsize         n_bytes);
gsize _bb_pixels_skip_empty      (const guint8 *pixels,
                                  gsize         n_pixels);
gsize _bb_pixels_skip_empty_back (const guint8 *pixels,
                                  gsize         n_pixels);

G_END_DECLS
