/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-image"

#include "bb-counts.h"

#include "bb-pixels-private.h"

/*
 * Grey and palette pictures are counted as they are stored: how often each byte occurs. What the bytes mean is looked
 * up once, when all are counted. Below 8 bits a byte holds several samples, and the last byte of a row may hold
 * fewer.
 */

typedef struct {
  BbCounts *counts;
  const BbPngInfo *info;
  guint8 black_at;
  guint8 white_at;
  gboolean has_empty;
  guint32 bytes[256];
  guint64 samples[256];
} Counting;

/* A byte's count can't overflow: no picture has so many. */
G_STATIC_ASSERT (BB_PNG_MAX_PIXELS <= G_MAXUINT32);

static guint
sample_in (guint8 byte,
           guint  bits,
           guint  place)
{
  return (guint) byte >> (8 - bits * (place + 1)) & ((1u << bits) - 1);
}

static gboolean
is_empty (const Counting *self,
          const guint8   *pixels,
          guint32         i)
{
  guint bits = self->info->sample_bits;
  guint sample = 0;

  if (self->info->table == NULL)
    return pixels[4 * i + 3] == 0;

  sample = bits == 8 ? pixels[i] : sample_in (pixels[(gsize) i * bits / 8], bits, i % (8 / bits));

  return self->info->table[sample][3] == 0;
}

/* The first and the last places that have to be looked at one by one: what is empty beyond them can be seen at once. */
static void
skip_margins (const Counting *self,
              const BbPngRow *row,
              guint32        *start,
              guint32        *end)
{
  const guint8 *pixels = row->pixels;

  *start = 0;
  *end = row->n_pixels;
  if (self->info->table == NULL)
    {
      *start = (guint32) _bb_pixels_skip_empty (pixels, row->n_pixels);
      *end = (guint32) _bb_pixels_skip_empty_back (pixels, row->n_pixels);
    }
  else if (self->info->sample_bits == 8)
    {
      if (is_empty (self, pixels, 0))
        *start = (guint32) _bb_pixels_skip_alike (pixels, row->n_pixels);
      if (is_empty (self, pixels, row->n_pixels - 1))
        *end = (guint32) _bb_pixels_skip_alike_back (pixels, row->n_pixels);
    }
}

static void
grow_box (Counting       *self,
          const BbPngRow *row)
{
  BbCounts *counts = self->counts;
  gboolean first = counts->left == counts->right;
  guint32 i = 0;
  guint32 end = 0;

  skip_margins (self, row, &i, &end);
  while (i < end && is_empty (self, row->pixels, i))
    i++;
  if (i >= end)
    return;
  while (is_empty (self, row->pixels, end - 1))
    end--;

  counts->left = first ? row->x + i * row->step : MIN (counts->left, row->x + i * row->step);
  counts->right = MAX (counts->right, row->x + (end - 1) * row->step + 1);
  counts->top = first ? row->y : MIN (counts->top, row->y);
  counts->bottom = MAX (counts->bottom, row->y + 1);
}

static void
add_sums (BbCounts          *counts,
          const BbPixelSums *sums)
{
  counts->n_empty += sums->n_empty;
  counts->n_opaque += sums->n_opaque;
  counts->n_black += sums->n_black;
  counts->n_white += sums->n_white;
  counts->alpha += sums->alpha;
  counts->black_alpha += sums->black_alpha;
  counts->white_alpha += sums->white_alpha;
}

static void
count_rgb (const BbPngRow *row,
           gpointer        data)
{
  Counting *self = data;
  BbPixelSums sums;

  _bb_pixels_sum_rgb (row->pixels, row->n_pixels, self->black_at, self->white_at, &sums);
  add_sums (self->counts, &sums);
}

static void
count_rgba (const BbPngRow *row,
            gpointer        data)
{
  Counting *self = data;
  BbPixelSums sums;

  _bb_pixels_sum_rgba (row->pixels, row->n_pixels, self->black_at, self->white_at, &sums);
  add_sums (self->counts, &sums);
  if (sums.n_empty < row->n_pixels)
    grow_box (self, row);
}

static void
turn_bytes_into_samples (Counting *self)
{
  guint bits = self->info->sample_bits;

  for (guint byte = 0; byte < 256; byte++)
    for (guint place = 0; place < 8 / bits; place++)
      self->samples[sample_in ((guint8) byte, bits, place)] += self->bytes[byte];
}

static void
count_samples (const BbPngRow *row,
               gpointer        data)
{
  Counting *self = data;
  guint bits = self->info->sample_bits;
  gsize n_bytes = (gsize) row->n_pixels * bits / 8;
  guint n_left = row->n_pixels % (8 / bits);

  _bb_pixels_count_bytes (row->pixels, n_bytes, self->bytes);
  for (guint place = 0; place < n_left; place++)
    self->samples[sample_in (row->pixels[n_bytes], bits, place)]++;
  if (self->has_empty)
    grow_box (self, row);
}

static void
add_table (Counting *self)
{
  BbCounts *counts = self->counts;

  turn_bytes_into_samples (self);
  for (guint sample = 0; sample < 256; sample++)
    {
      guint64 n = self->samples[sample];
      BbPixelSums one;

      _bb_pixels_sum_rgba (self->info->table[sample], 1, self->black_at, self->white_at, &one);
      counts->n_empty += n * one.n_empty;
      counts->n_opaque += n * one.n_opaque;
      counts->n_black += n * one.n_black;
      counts->n_white += n * one.n_white;
      counts->alpha += n * one.alpha;
      counts->black_alpha += n * one.black_alpha;
      counts->white_alpha += n * one.white_alpha;
    }
}

static gboolean
table_has_empty (const BbPngInfo *info)
{
  for (guint sample = 0; info->table != NULL && sample < 1u << info->sample_bits; sample++)
    if (info->table[sample][3] == 0)
      return TRUE;

  return FALSE;
}

static BbPngRowFunc
choose_func (const BbPngInfo *info)
{
  if (info->table != NULL)
    return count_samples;

  return info->channels == 3 ? count_rgb : count_rgba;
}

/**
 * bb_counts_read:
 * @self: (out caller-allocates): where to put the counts
 * @png: a reader of %BB_PNG_FORM_COUNTABLE whose rows were not read yet
 * @black_at: the most that a black pixel has of red, green or blue
 * @white_at: the least that a white pixel has of each
 * @work: (nullable): how the work is watched and stopped
 * @error: return location for a #GError in the domain %BB_IMAGE_ERROR, or %G_IO_ERROR_CANCELLED
 *
 * Counts the pixels of a picture, whole and exactly. An interlaced one is counted pass by pass.
 *
 * Returns: %TRUE if @self holds the counts
 */
gboolean
bb_counts_read (BbCounts          *self,
                BbPng             *png,
                guint8             black_at,
                guint8             white_at,
                const BbImageWork *work,
                GError           **error)
{
  const BbPngInfo *info = bb_png_get_info (png);
  Counting counting = { .counts = self, .info = info, .black_at = black_at, .white_at = white_at };

  *self = (BbCounts) {
    .width = info->width,
    .height = info->height,
    .pixels_per_metre_x = info->pixels_per_metre_x,
    .n_pixels = (guint64) info->width * info->height,
  };
  counting.has_empty = table_has_empty (info);
  if (!bb_png_read (png, choose_func (info), &counting, work, error))
    return FALSE;

  if (info->table != NULL)
    add_table (&counting);
  if (info->table != NULL ? !counting.has_empty : info->channels == 3)
    {
      self->right = info->width;
      self->bottom = info->height;
    }

  return TRUE;
}
