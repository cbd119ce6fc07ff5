/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-test"

#include <math.h>
#include <string.h>

#include "bb-counts.h"
#include "pictures.h"
#include "reference.h"

/*
 * Counts against two other ways to them: ImageMagick's pixels for the committed pictures, and for random pictures of
 * every kind the colours that they were made of, counted one by one.
 */

#define SEED 20251105
#define N_RANDOM 3000
#define WIDEST 320

static void
read_counts (GBytes     *bytes,
             const char *name,
             guint8      black_at,
             guint8      white_at,
             BbCounts   *counts)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (BbPng) png = bb_png_new_for_bytes (bytes, name, BB_PNG_FORM_COUNTABLE, &error);

  g_assert_no_error (error);
  bb_counts_read (counts, png, black_at, white_at, NULL, &error);
  g_assert_no_error (error);
}

static void
assert_equal (const char *name,
              const char *what,
              guint64     is,
              guint64     should)
{
  if (is == should)
    return;
  g_test_message ("%s: %s is %" G_GUINT64_FORMAT ", not %" G_GUINT64_FORMAT, name, what, is, should);
  g_test_fail ();
}

static void
assert_counts_equal (const char     *name,
                     const BbCounts *is,
                     const BbCounts *should)
{
  assert_equal (name, "width", is->width, should->width);
  assert_equal (name, "height", is->height, should->height);
  assert_equal (name, "pixels", is->n_pixels, (guint64) should->width * should->height);
  assert_equal (name, "empty", is->n_empty, should->n_empty);
  assert_equal (name, "opaque", is->n_opaque, should->n_opaque);
  assert_equal (name, "black", is->n_black, should->n_black);
  assert_equal (name, "white", is->n_white, should->n_white);
  assert_equal (name, "alpha", is->alpha, should->alpha);
  assert_equal (name, "alpha of black", is->black_alpha, should->black_alpha);
  assert_equal (name, "alpha of white", is->white_alpha, should->white_alpha);
  assert_equal (name, "left", is->left, should->left);
  assert_equal (name, "top", is->top, should->top);
  assert_equal (name, "right", is->right, should->right);
  assert_equal (name, "bottom", is->bottom, should->bottom);
}

static guint64
whole (const Reference *reference,
       guint            row,
       const char      *column)
{
  return (guint64) reference_get_number (reference, row, column);
}

static void
test_imagemagick (void)
{
  g_autoptr (Reference) reference = reference_load ("artwork-imagemagick");
  g_auto (GStrv) names = picture_list ();

  g_assert_cmpuint (reference_get_length (reference), ==, g_strv_length (names));
  for (guint i = 0; i < reference_get_length (reference); i++)
    {
      const char *name = reference_get_text (reference, i, "name");
      g_autoptr (GBytes) bytes = picture_load (name);
      BbCounts counts;
      const BbCounts expected = {
        .width = (guint32) whole (reference, i, "width"),
        .height = (guint32) whole (reference, i, "height"),
        .n_empty = whole (reference, i, "empty"),
        .n_opaque = whole (reference, i, "opaque"),
        .n_black = whole (reference, i, "black"),
        .n_white = whole (reference, i, "white"),
        .alpha = whole (reference, i, "alpha"),
        .black_alpha = whole (reference, i, "black_alpha"),
        .white_alpha = whole (reference, i, "white_alpha"),
        .left = (guint32) whole (reference, i, "left"),
        .top = (guint32) whole (reference, i, "top"),
        .right = (guint32) whole (reference, i, "right"),
        .bottom = (guint32) whole (reference, i, "bottom"),
      };

      read_counts (bytes, name, 24, 245, &counts);
      assert_counts_equal (name, &counts, &expected);
    }
}

/* Random pictures */

typedef struct {
  GRand *rand;
  Drawing drawing;
  guint8 *rows;
  guint8 *truth;
  png_color palette[256];
  guint8 alpha[256];
  png_color_16 transparent;
} Sketch;

static guint32
below (Sketch *self,
       guint32 n)
{
  return (guint32) g_rand_int_range (self->rand, 0, (gint32) n);
}

/* Often at the limits, where a wrong comparison shows. */
static guint
random_sample (Sketch *self,
               guint   bit_depth)
{
  static const guint8 close[] = { 0, 0, 23, 24, 25, 128, 244, 245, 246, 255, 255 };
  guint value = below (self, 3) > 0 ? close[below (self, G_N_ELEMENTS (close))] : below (self, 256);

  int deep = (int) (value * 257 + below (self, 259)) - 129;

  return bit_depth == 16 ? (guint) CLAMP (deep, 0, 65535) : value >> (8 - bit_depth);
}

static void
put_sample (Sketch *self,
            guint8 *row,
            gsize   index,
            guint   sample)
{
  guint bits = (guint) self->drawing.bit_depth;

  if (bits == 16)
    {
      row[2 * index] = (guint8) (sample >> 8);
      row[2 * index + 1] = (guint8) sample;
    }
  else
    row[index * bits / 8] |= (guint8) (sample << (8 - bits - index * bits % 8));
}

/* What a sample means of 255: the nearest whole number. */
static guint8
meaning (const Sketch *self,
         guint         sample)
{
  return (guint8) floor ((double) sample * 255.0 / ((1 << self->drawing.bit_depth) - 1) + 0.5);
}

static guint
get_channels (const Sketch *self)
{
  switch (self->drawing.colour_type)
    {
    case PNG_COLOR_TYPE_GRAY_ALPHA:
      return 2;
    case PNG_COLOR_TYPE_RGB:
      return 3;
    case PNG_COLOR_TYPE_RGBA:
      return 4;
    default:
      return 1;
    }
}

static void
set_truth (Sketch      *self,
           guint8      *pixel,
           const guint *samples)
{
  int type = self->drawing.colour_type;
  gboolean grey = (type & PNG_COLOR_MASK_COLOR) == 0;
  const png_color_16 *clear = self->drawing.transparent;

  if (type == PNG_COLOR_TYPE_PALETTE)
    {
      pixel[0] = self->palette[samples[0]].red;
      pixel[1] = self->palette[samples[0]].green;
      pixel[2] = self->palette[samples[0]].blue;
      pixel[3] = samples[0] < (guint) self->drawing.n_alpha ? self->alpha[samples[0]] : 255;
      return;
    }

  for (guint c = 0; c < 3; c++)
    pixel[c] = meaning (self, samples[grey ? 0 : c]);
  pixel[3] = (type & PNG_COLOR_MASK_ALPHA) != 0 ? meaning (self, samples[get_channels (self) - 1]) : 255;
  if (clear != NULL && (grey ? samples[0] == clear->gray : samples[0] == clear->red && samples[1] == clear->green &&
                                                             samples[2] == clear->blue))
    pixel[3] = 0;
}

static void
choose_samples (Sketch *self,
                guint  *samples)
{
  guint channels = get_channels (self);

  for (guint c = 0; c < channels; c++)
    samples[c] = random_sample (self, (guint) self->drawing.bit_depth);
  if (self->drawing.colour_type == PNG_COLOR_TYPE_PALETTE)
    samples[0] = below (self, (guint32) self->drawing.n_palette);
  else if (below (self, 3) == 0)
    samples[1] = samples[2] = samples[0];
}

/* In runs, some longer than a row, so that whole blocks of pixels are alike, and others are not. */
static void
draw_pixels (Sketch *self)
{
  guint channels = get_channels (self);
  guint samples[4] = { 0 };
  guint32 left = 0;

  for (guint32 y = 0; y < self->drawing.height; y++)
    for (guint32 x = 0; x < self->drawing.width; x++)
      {
        guint8 *row = self->rows + y * self->drawing.row_bytes;

        if (left == 0)
          {
            choose_samples (self, samples);
            left = below (self, 2) > 0 ? 1 : 1 + below (self, 700);
          }
        left--;
        for (guint c = 0; c < channels; c++)
          put_sample (self, row, (gsize) x * channels + c, samples[c]);
        set_truth (self, self->truth + 4 * ((gsize) y * self->drawing.width + x), samples);
      }
}

static void
choose_palette (Sketch *self)
{
  int n = 1 << self->drawing.bit_depth;

  for (int i = 0; i < 256; i++)
    {
      self->palette[i] = (png_color) { (png_byte) random_sample (self, 8), (png_byte) random_sample (self, 8),
                                       (png_byte) random_sample (self, 8) };
      self->alpha[i] = (guint8) random_sample (self, 8);
    }
  self->drawing.palette = self->palette;
  self->drawing.n_palette = 1 + (int) below (self, (guint32) n);
  self->drawing.alpha = self->alpha;
  self->drawing.n_alpha = (int) below (self, (guint32) self->drawing.n_palette + 1);
  if (self->drawing.n_alpha == 0)
    self->drawing.alpha = NULL;
}

static void
choose_transparent (Sketch *self)
{
  guint bits = (guint) self->drawing.bit_depth;

  self->transparent.gray = self->transparent.red = self->transparent.green = self->transparent.blue =
    (png_uint_16) random_sample (self, bits);
  self->drawing.transparent = &self->transparent;
}

static const struct {
  int colour_type;
  int bit_depth;
} kinds[] = {
  { PNG_COLOR_TYPE_GRAY, 1 },        { PNG_COLOR_TYPE_GRAY, 2 },    { PNG_COLOR_TYPE_GRAY, 4 },
  { PNG_COLOR_TYPE_GRAY, 8 },        { PNG_COLOR_TYPE_GRAY, 16 },   { PNG_COLOR_TYPE_RGB, 8 },
  { PNG_COLOR_TYPE_RGB, 16 },        { PNG_COLOR_TYPE_PALETTE, 1 }, { PNG_COLOR_TYPE_PALETTE, 2 },
  { PNG_COLOR_TYPE_PALETTE, 4 },     { PNG_COLOR_TYPE_PALETTE, 8 }, { PNG_COLOR_TYPE_GRAY_ALPHA, 8 },
  { PNG_COLOR_TYPE_GRAY_ALPHA, 16 }, { PNG_COLOR_TYPE_RGBA, 8 },    { PNG_COLOR_TYPE_RGBA, 16 },
};

static void
sketch_init (Sketch *self,
             GRand  *rand,
             guint   kind)
{
  *self = (Sketch) { .rand = rand };
  self->drawing.colour_type = kinds[kind].colour_type;
  self->drawing.bit_depth = kinds[kind].bit_depth;
  self->drawing.width = 1 + below (self, below (self, 2) > 0 ? 40 : WIDEST);
  self->drawing.height = 1 + below (self, 40);
  self->drawing.interlaced = below (self, 2) > 0;
  self->drawing.row_bytes = ((gsize) self->drawing.width * get_channels (self) * (guint) kinds[kind].bit_depth + 7) / 8;
  self->rows = g_malloc0 (self->drawing.row_bytes * self->drawing.height);
  self->truth = g_malloc0 ((gsize) self->drawing.width * self->drawing.height * 4);
  self->drawing.rows = self->rows;
  if (self->drawing.colour_type == PNG_COLOR_TYPE_PALETTE)
    choose_palette (self);
  else if ((self->drawing.colour_type & PNG_COLOR_MASK_ALPHA) == 0 && below (self, 2) > 0)
    choose_transparent (self);
  draw_pixels (self);
}

static void
sketch_clear (Sketch *self)
{
  g_free (self->rows);
  g_free (self->truth);
}

static void
grow (BbCounts *counts,
      guint32   x,
      guint32   y)
{
  gboolean first = counts->right == 0;

  counts->left = first ? x : MIN (counts->left, x);
  counts->top = first ? y : MIN (counts->top, y);
  counts->right = MAX (counts->right, x + 1);
  counts->bottom = MAX (counts->bottom, y + 1);
}

static BbCounts
count_truth (const Sketch *self,
             guint8        black_at,
             guint8        white_at)
{
  BbCounts counts = { .width = self->drawing.width, .height = self->drawing.height };

  for (guint32 y = 0; y < counts.height; y++)
    for (guint32 x = 0; x < counts.width; x++)
      {
        const guint8 *pixel = self->truth + 4 * ((gsize) y * counts.width + x);
        guint8 highest = MAX (pixel[0], MAX (pixel[1], pixel[2]));
        guint8 lowest = MIN (pixel[0], MIN (pixel[1], pixel[2]));
        guint8 alpha = pixel[3];

        counts.alpha += alpha;
        counts.n_opaque += alpha == 255;
        if (alpha == 0)
          {
            counts.n_empty++;
            continue;
          }
        grow (&counts, x, y);
        if (highest <= black_at)
          {
            counts.n_black++;
            counts.black_alpha += alpha;
          }
        if (lowest >= white_at)
          {
            counts.n_white++;
            counts.white_alpha += alpha;
          }
      }

  return counts;
}

static void
test_random (void)
{
  static const guint8 limits[][2] = { { 24, 245 }, { 0, 255 }, { 0, 1 }, { 254, 255 }, { 127, 128 } };
  g_autoptr (GRand) rand = g_rand_new_with_seed (SEED);

  for (guint i = 0; i < N_RANDOM; i++)
    {
      guint kind = i % G_N_ELEMENTS (kinds);
      const guint8 *limit = limits[i / G_N_ELEMENTS (kinds) % 2 == 0 ? 0 : i % G_N_ELEMENTS (limits)];
      g_autofree char *name = g_strdup_printf ("random picture %u of type %d, %d bits", i, kinds[kind].colour_type,
                                               kinds[kind].bit_depth);
      Sketch sketch;
      g_autoptr (GBytes) bytes = NULL;
      BbCounts expected;
      BbCounts counts;

      sketch_init (&sketch, rand, kind);
      bytes = drawing_write (&sketch.drawing);
      read_counts (bytes, name, limit[0], limit[1], &counts);
      expected = count_truth (&sketch, limit[0], limit[1]);
      assert_counts_equal (name, &counts, &expected);
      sketch_clear (&sketch);
    }
}

/* An index that the palette does not have is opaque black, as in a picture that libpng has expanded. */
static void
test_index_behind_the_palette (void)
{
  static const guint8 header[] = { 0, 0, 0, 4, 0, 0, 0, 1, 8, 3, 0, 0, 0 };
  static const guint8 colours[] = { 255, 255, 255, 9, 99, 9 };
  static const guint8 clear[] = { 0 };
  /* zlib's header, one stored block with the row behind its filter, and its checksum. */
  static const guint8 data[] = { 0x78, 0x01, 0x01, 5, 0, 0xfa, 0xff, 0, 0, 1, 2, 255, 0x01, 0x0b, 0x01, 0x03 };
  g_autoptr (GBytes) bytes = chunks_write ("IHDR", header, sizeof header, "PLTE", colours, sizeof colours,
                                           "tRNS", clear, sizeof clear, "IDAT", data, sizeof data,
                                           "IEND", NULL, (gsize) 0, NULL);
  BbCounts counts;

  read_counts (bytes, "behind the palette", 24, 245, &counts);
  g_assert_cmpuint (counts.n_empty, ==, 1);
  g_assert_cmpuint (counts.n_black, ==, 2);
  g_assert_cmpuint (counts.n_white, ==, 0);
  g_assert_cmpuint (counts.n_opaque, ==, 3);
}

/* Wider than the loops' vectors and stretches by far, at the width that is the most. */
static void
test_widest (void)
{
  gsize row_bytes = (gsize) BB_PNG_MAX_WIDTH * 4;
  g_autofree guint8 *row = g_malloc (row_bytes);
  Drawing drawing = { .width = BB_PNG_MAX_WIDTH, .height = 1, .colour_type = PNG_COLOR_TYPE_RGBA, .bit_depth = 8,
                      .rows = row, .row_bytes = row_bytes };
  g_autoptr (GBytes) bytes = NULL;
  BbCounts counts;

  memset (row, 255, row_bytes);
  bytes = drawing_write (&drawing);
  read_counts (bytes, "widest", 24, 245, &counts);
  g_assert_cmpuint (counts.n_white, ==, BB_PNG_MAX_WIDTH);
  g_assert_cmpuint (counts.white_alpha, ==, 255 * (guint64) BB_PNG_MAX_WIDTH);
  g_assert_cmpuint (counts.right, ==, BB_PNG_MAX_WIDTH);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/counts/imagemagick", test_imagemagick);
  g_test_add_func ("/counts/random", test_random);
  g_test_add_func ("/counts/index-behind-the-palette", test_index_behind_the_palette);
  g_test_add_func ("/counts/widest", test_widest);

  return g_test_run ();
}
