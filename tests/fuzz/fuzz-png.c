/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-test"

#include <math.h>
#include <string.h>

#include "bb-artwork.h"
#include "fuzz.h"

/*
 * A PNG file, in all forms, and counted. The forms have to agree whether it can be read, and on each pixel; the counts,
 * which are made of rows as they are stored, with those made here one pixel after the other.
 */

/* What is larger is cancelled, so that an input of a few bytes does not take seconds. */
#define MAX_PIXELS 100000.0

#define BLACK_AT 24
#define WHITE_AT 245

typedef struct {
  const BbPngInfo *info;
  BbCounts counts;
  guint32 hash;
  double fraction;
  GCancellable *cancellable;
} Look;

static guint
sample_at (const BbPngInfo *info,
           const guint8    *pixels,
           gsize            index)
{
  guint16 deep = 0;
  guint bits = info->sample_bits;

  if (bits == 16)
    {
      memcpy (&deep, pixels + 2 * index, 2);
      return (deep + 128u) / 257;
    }

  return (guint) (pixels[index * bits / 8] >> (8 - bits - index * bits % 8)) & ((1u << bits) - 1);
}

static void
get_rgba (const BbPngInfo *info,
          const guint8    *pixels,
          guint32          index,
          guint8           rgba[4])
{
  guint value[4] = { 0, 0, 0, 255 };

  for (guint c = 0; c < info->channels; c++)
    value[info->channels == 2 && c == 1 ? 3 : c] = sample_at (info, pixels, (gsize) index * info->channels + c);
  if (info->channels <= 2)
    value[1] = value[2] = value[0];
  for (guint c = 0; c < 4; c++)
    rgba[c] = info->table != NULL ? info->table[value[0]][c] : (guint8) value[c];
}

static void
count_pixel (BbCounts    *self,
             guint32      x,
             guint32      y,
             const guint8 rgba[4])
{
  gboolean visible = rgba[3] > 0;
  gboolean first = self->left == self->right;

  self->n_pixels++;
  self->n_empty += !visible;
  self->n_opaque += rgba[3] == 255;
  self->alpha += rgba[3];
  if (!visible)
    return;

  if (MAX (MAX (rgba[0], rgba[1]), rgba[2]) <= BLACK_AT)
    {
      self->n_black++;
      self->black_alpha += rgba[3];
    }
  if (MIN (MIN (rgba[0], rgba[1]), rgba[2]) >= WHITE_AT)
    {
      self->n_white++;
      self->white_alpha += rgba[3];
    }
  self->left = first ? x : MIN (self->left, x);
  self->top = first ? y : MIN (self->top, y);
  self->right = MAX (self->right, x + 1);
  self->bottom = MAX (self->bottom, y + 1);
}

static void
take_row (const BbPngRow *row,
          gpointer        data)
{
  Look *self = data;

  g_assert_cmpuint (row->n_pixels, >, 0);
  g_assert_cmpuint (row->y, <, self->info->height);
  g_assert_cmpuint ((guint64) row->x + (guint64) (row->n_pixels - 1) * row->step, <, self->info->width);
  for (guint32 i = 0; i < row->n_pixels; i++)
    {
      guint8 rgba[4];

      get_rgba (self->info, row->pixels, i, rgba);
      count_pixel (&self->counts, row->x + i * row->step, row->y, rgba);
      /* FNV-1a. */
      for (guint c = 0; c < 4; c++)
        self->hash = (self->hash ^ rgba[c]) * 16777619u;
    }
}

static void
watch (double   fraction,
       gpointer data)
{
  Look *self = data;

  g_assert_cmpfloat (fraction, >=, self->fraction);
  g_assert_cmpfloat (fraction, <=, 1);
  self->fraction = fraction;
  if (fraction * self->info->width * self->info->height > MAX_PIXELS)
    g_cancellable_cancel (self->cancellable);
}

static void
check_info (const BbPngInfo *info)
{
  g_assert_cmpuint (info->width, >, 0);
  g_assert_cmpuint (info->width, <=, BB_PNG_MAX_WIDTH);
  g_assert_cmpuint ((guint64) info->width * info->height, <=, BB_PNG_MAX_PIXELS);
  g_assert_cmpuint (info->profile_length, <=, BB_PNG_MAX_PROFILE);
  g_assert_true (info->profile == NULL || !info->profile_bad);
}

static void
check_refusal (const GError *error)
{
  fuzz_check_message (error);
  if (g_error_matches (error, G_IO_ERROR, G_IO_ERROR_CANCELLED))
    return;

  g_assert_true (error->domain == BB_IMAGE_ERROR);
  g_assert_true (g_str_has_prefix (error->message, "a picture: "));
}

/* The hash of all pixels, or 0 where the file is refused. */
static guint32
look (GBytes    *bytes,
      BbPngForm  form,
      BbCounts  *counts)
{
  g_autoptr (GCancellable) cancellable = g_cancellable_new ();
  g_autoptr (GError) error = NULL;
  g_autoptr (BbPng) png = bb_png_new_for_bytes (bytes, "a picture", form, &error);
  Look self = { .info = png != NULL ? bb_png_get_info (png) : NULL, .hash = 2166136261u, .cancellable = cancellable };
  const BbImageWork work = { cancellable, watch, &self };

  if (png != NULL)
    check_info (self.info);
  if (png == NULL || !bb_png_read (png, take_row, &self, &work, &error))
    {
      check_refusal (error);
      return 0;
    }

  g_assert_no_error (error);
  g_assert_cmpuint (self.counts.n_pixels, ==, (guint64) self.info->width * self.info->height);
  *counts = self.counts;

  return MAX (self.hash, 1);
}

static void
check_artwork (const BbCounts *counts)
{
  for (int mode = 0; mode < (int) bb_print_mode_choices.n_items; mode++)
    {
      g_autoptr (BbArtworkIn) in = bb_artwork_in_new ();
      g_autoptr (BbArtworkOut) out = bb_artwork_out_new ();

      in->print_width_mm = 300;
      in->mode = mode;
      bb_artwork_fill (in, counts, out);
      for (guint i = 0; i < bb_artwork_out_table.n_fields; i++)
        {
          const BbField *field = &bb_artwork_out_table.fields[i];

          if (field->kind == BB_KIND_NUMBER && bb_field_is_set (field, out))
            g_assert_true (isfinite (bb_field_get_number (field, out)));
        }
    }
}

static void
check_counts (GBytes         *bytes,
              const BbCounts *wanted)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (BbPng) png = bb_png_new_for_bytes (bytes, "a picture", BB_PNG_FORM_COUNTABLE, &error);
  BbCounts counts;

  bb_counts_read (&counts, png, BLACK_AT, WHITE_AT, NULL, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (counts.n_pixels, ==, wanted->n_pixels);
  g_assert_cmpuint (counts.n_empty, ==, wanted->n_empty);
  g_assert_cmpuint (counts.n_opaque, ==, wanted->n_opaque);
  g_assert_cmpuint (counts.n_black, ==, wanted->n_black);
  g_assert_cmpuint (counts.n_white, ==, wanted->n_white);
  g_assert_cmpuint (counts.alpha, ==, wanted->alpha);
  g_assert_cmpuint (counts.black_alpha, ==, wanted->black_alpha);
  g_assert_cmpuint (counts.white_alpha, ==, wanted->white_alpha);
  g_assert_cmpuint (counts.left, ==, wanted->left);
  g_assert_cmpuint (counts.top, ==, wanted->top);
  g_assert_cmpuint (counts.right, ==, wanted->right);
  g_assert_cmpuint (counts.bottom, ==, wanted->bottom);
  check_artwork (&counts);
}

gboolean
fuzz_one (const guint8 *data,
          gsize         length)
{
  g_autoptr (GBytes) bytes = g_bytes_new_static (data, length);
  BbCounts counts;
  guint32 hash = look (bytes, BB_PNG_FORM_RGBA, &counts);

  g_assert_cmpuint (look (bytes, BB_PNG_FORM_COUNTABLE, &counts), ==, hash);
  g_assert_cmpuint (look (bytes, BB_PNG_FORM_DEEP, &counts), ==, hash);
  if (hash != 0)
    check_counts (bytes, &counts);

  return hash != 0;
}
