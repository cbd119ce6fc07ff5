/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gio/gio.h>

#include "bb-image-error.h"

G_BEGIN_DECLS

/*
 * Reads a PNG picture row by row, so that memory grows with its width only. Nothing is ever drawn over: an interlaced
 * picture comes as its seven passes, each a small picture of its own (ISO/IEC 15948, 8.2 "Adam7").
 *
 * Limits, so that no file can take the machine with it: the width, the number of pixels, the length of every chunk but
 * IDAT, and the length of a colour profile. Chunks that nobody here needs are passed over and never held in memory.
 *
 * Strict about what decides the pixels: a bad tRNS, too little or too much image data, and a wrong checksum anywhere
 * refuse the file. Lenient about what is written in pHYs, gAMA, sRGB and iCCP: if it makes no sense it counts as not
 * there, and `profile_bad` says so of a profile.
 *
 * A reader belongs to the thread that uses it, and many may be at work at a time.
 */

/* Common practice, no source, as are the next two: wider than 5 m at 1,000 pixels an inch. */
#define BB_PNG_MAX_WIDTH 200000u
#define BB_PNG_MAX_PIXELS G_GUINT64_CONSTANT (1000000000)
#define BB_PNG_MAX_CHUNK (32u * 1024 * 1024)
#define BB_PNG_MAX_PROFILE (4u * 1024 * 1024)

/**
 * BbPngForm:
 * @BB_PNG_FORM_COUNTABLE: the least work that still tells each pixel's 8-bit RGBA: samples of 1, 2, 4 or 8 bits with a
 *   table of 256 colours where the picture is grey or has a palette (`table` is set), else RGB or RGBA of 8 bits
 * @BB_PNG_FORM_RGBA: RGBA of 8 bits, whatever is stored
 * @BB_PNG_FORM_DEEP: 16-bit samples in the machine's order; grey, grey + alpha, RGB or RGBA as stored, a palette as RGB
 *
 * What the rows hold. 16 bits become 8 by rounding to the nearest, and alpha is never multiplied in. Colour profiles
 * are read for all forms but the first, which has no use for them.
 */
typedef enum {
  BB_PNG_FORM_COUNTABLE = 1,
  BB_PNG_FORM_RGBA,
  BB_PNG_FORM_DEEP,
} BbPngForm;

/**
 * BbPngInfo:
 * @width: columns
 * @height: rows
 * @bit_depth: bits of a sample as stored
 * @colour_type: as in the file: 0 grey, 2 RGB, 3 palette, 4 grey + alpha, 6 RGB + alpha
 * @interlaced: %TRUE if the rows come in seven passes
 * @has_alpha: %TRUE if a pixel can be transparent: an alpha channel, or a tRNS chunk
 * @pixels_per_metre_x: resolution across, from pHYs; 0 where the file names none
 * @pixels_per_metre_y: resolution along, from pHYs; 0 where the file names none
 * @gamma: the exponent of gAMA; 0 where there is none. For information: colours go by the profile, else as sRGB
 * @has_srgb: %TRUE if the file says that its colours are sRGB
 * @profile: (nullable): an embedded ICC profile, in the reader's memory
 * @profile_length: its length in bytes
 * @profile_bad: %TRUE if there is a profile that can't be read
 * @channels: samples of a pixel in the rows that are handed out
 * @sample_bits: bits of such a sample; below 8 they are packed, the first pixel in the highest bits
 * @table: (nullable): RGBA of each sample's value, 256 of them, where the rows hold indexes; else %NULL
 *
 * What is known of a picture before its rows are read.
 */
typedef struct {
  guint32 width;
  guint32 height;
  guint bit_depth;
  guint colour_type;
  gboolean interlaced;
  gboolean has_alpha;
  guint32 pixels_per_metre_x;
  guint32 pixels_per_metre_y;
  double gamma;
  gboolean has_srgb;
  const guint8 *profile;
  gsize profile_length;
  gboolean profile_bad;
  guint channels;
  guint sample_bits;
  const guint8 (*table)[4];
} BbPngInfo;

/**
 * BbPngRow:
 * @pixels: the samples; valid during the call only
 * @n_pixels: how many pixels
 * @y: the picture's row that they lie in
 * @x: the picture's column of the first
 * @step: how many columns lie from one to the next; 1 unless the picture is interlaced
 *
 * A row of a picture, or of one pass of an interlaced one.
 */
typedef struct {
  const guint8 *pixels;
  guint32 n_pixels;
  guint32 y;
  guint32 x;
  guint32 step;
} BbPngRow;

typedef void (*BbPngRowFunc) (const BbPngRow *row,
                              gpointer        data);

typedef void (*BbImageProgress) (double   fraction,
                                 gpointer data);

/**
 * BbImageWork:
 * @cancellable: (nullable): stops the work within a block of rows
 * @progress: (nullable): called after each block of rows with the share of the picture that is done, in the thread
 *   that does the work
 * @data: for @progress
 *
 * How long work on a picture is watched and stopped. Wherever one is taken, %NULL is allowed.
 */
typedef struct {
  GCancellable *cancellable;
  BbImageProgress progress;
  gpointer data;
} BbImageWork;

typedef struct _BbPng BbPng;

BbPng           *bb_png_new_for_file  (const char        *path,
                                       BbPngForm          form,
                                       GError           **error);
BbPng           *bb_png_new_for_bytes (GBytes            *bytes,
                                       const char        *name,
                                       BbPngForm          form,
                                       GError           **error);
void             bb_png_free          (BbPng             *self);
const BbPngInfo *bb_png_get_info      (const BbPng       *self);
const char      *bb_png_get_name      (const BbPng       *self);
guint32          bb_png_get_block     (const BbPng       *self);
gboolean         bb_png_read          (BbPng             *self,
                                       BbPngRowFunc       func,
                                       gpointer           data,
                                       const BbImageWork *work,
                                       GError           **error);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (BbPng, bb_png_free)

G_END_DECLS
