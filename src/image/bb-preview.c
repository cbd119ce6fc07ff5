/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-image"

#include "bb-preview.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "bb-colour.h"
#include "bb-light-private.h"

/* Light times alpha, and alpha: fine enough for as many pixels as fall into one, at 24 bits for 65,000 and more. */
typedef struct {
  float light[3];
  float alpha;
} Sum;

typedef struct {
  guint32 full_width;
  guint32 full_height;
  guint width;
  guint height;
  Sum *sums;
  guint32 *places; /* which of the preview's columns each of the picture's falls into */
  BbLight *tables;
} Shrinking;

/* Shrinking */

static guint
scale_side (guint32 side,
            guint32 longer_side,
            guint   longest_side)
{
  guint shown = MIN (longest_side, longer_side);

  return MAX (1, (guint) (((guint64) side * shown + longer_side / 2) / longer_side));
}

static void
clear_shrinking (Shrinking *self)
{
  g_free (self->sums);
  g_free (self->places);
  g_free (self->tables);
}

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Shrinking, clear_shrinking)

static gboolean
init_shrinking (Shrinking       *self,
                const BbPngInfo *info,
                guint            longest_side)
{
  guint32 longer_side = MAX (info->width, info->height);

  self->full_width = info->width;
  self->full_height = info->height;
  self->width = scale_side (info->width, longer_side, longest_side);
  self->height = scale_side (info->height, longer_side, longest_side);
  self->sums = g_try_new0 (Sum, (gsize) self->width * self->height);
  self->places = g_try_new (guint32, info->width);
  self->tables = _bb_light_new ();
  if (self->sums == NULL || self->places == NULL)
    return FALSE;

  for (guint32 x = 0; x < info->width; x++)
    self->places[x] = (guint32) ((guint64) x * self->width / info->width);

  return TRUE;
}

static void
add_row (const BbPngRow *row,
         gpointer        data)
{
  Shrinking *self = data;
  const float *linear = self->tables->linear;
  guint32 y = (guint32) ((guint64) row->y * self->height / self->full_height);
  Sum *sums = self->sums + (gsize) y * self->width;

  for (guint32 i = 0; i < row->n_pixels; i++)
    {
      const guint8 *pixel = row->pixels + 4 * (gsize) i;
      Sum *sum = &sums[self->places[row->x + i * row->step]];
      float alpha = pixel[3];

      for (guint c = 0; c < 3; c++)
        sum->light[c] += alpha * linear[pixel[c]];
      sum->alpha += alpha;
    }
}

/* How many of the picture's columns, or rows, fall into one of the preview's: those x with x·shown ÷ full = place. */
static guint32
count_in (guint   place,
          guint   shown,
          guint32 full)
{
  guint64 start = ((guint64) place * full + shown - 1) / shown;
  guint64 end = ((guint64) (place + 1) * full + shown - 1) / shown;

  return (guint32) (end - start);
}

/* What Little CMS takes and gives is one row. */
static void
convert_row (const BbColour *colour,
             guint8         *pixels,
             guint           n_pixels,
             double         *in,
             double         *out)
{
  for (gsize i = 0; i < 3 * (gsize) n_pixels; i++)
    in[i] = pixels[i / 3 * 4 + i % 3] / 255.0;
  bb_colour_convert (colour, in, out, n_pixels);
  for (gsize i = 0; i < 3 * (gsize) n_pixels; i++)
    pixels[i / 3 * 4 + i % 3] = (guint8) lround (255.0 * CLAMP (out[i], 0.0, 1.0));
}

static void
convert_colours (const Shrinking *self,
                 const BbColour  *colour,
                 guint8          *pixels)
{
  g_autofree double *in = NULL;
  g_autofree double *out = NULL;

  if (bb_colour_get_source (colour) != BB_COLOUR_BY_PROFILE)
    return;

  in = g_new (double, 3 * (gsize) self->width);
  out = g_new (double, 3 * (gsize) self->width);
  for (guint y = 0; y < self->height; y++)
    convert_row (colour, pixels + 4 * (gsize) y * self->width, self->width, in, out);
}

static guint8 *
make_pixels (const Shrinking *self)
{
  guint8 *pixels = g_malloc0 (4 * (gsize) self->width * self->height);

  for (guint y = 0; y < self->height; y++)
    for (guint x = 0; x < self->width; x++)
      {
        gsize place = (gsize) y * self->width + x;
        const Sum *sum = &self->sums[place];
        guint64 n = (guint64) count_in (x, self->width, self->full_width) *
                    count_in (y, self->height, self->full_height);

        for (guint c = 0; c < 3 && sum->alpha > 0.0f; c++)
          pixels[4 * place + c] = _bb_light_encode (self->tables, sum->light[c] / sum->alpha);
        pixels[4 * place + 3] = (guint8) CLAMP (lroundf (sum->alpha / (float) n), 0, 255);
      }

  return pixels;
}

/**
 * bb_preview_read:
 * @png: a reader of %BB_PNG_FORM_RGBA whose rows were not read yet
 * @longest_side: how many pixels the longer side of the preview may have, at most %BB_PREVIEW_LONGEST
 * @work: (nullable): how the work is watched and stopped
 * @error: return location for a #GError in the domain %BB_IMAGE_ERROR, or %G_IO_ERROR_CANCELLED
 *
 * Makes a picture small while it is read.
 *
 * Returns: (transfer full): the preview, or %NULL
 */
BbPreview *
bb_preview_read (BbPng             *png,
                 guint              longest_side,
                 const BbImageWork *work,
                 GError           **error)
{
  const BbPngInfo *info = bb_png_get_info (png);
  g_auto (Shrinking) shrinking = { 0 };
  g_autoptr (BbColour) colour = NULL;
  g_autoptr (GBytes) bytes = NULL;
  guint8 *pixels = NULL;
  BbPreview *self = NULL;

  g_return_val_if_fail (longest_side > 0 && longest_side <= BB_PREVIEW_LONGEST, NULL);

  if (!init_shrinking (&shrinking, info, longest_side))
    {
      g_set_error (error, BB_IMAGE_ERROR, BB_IMAGE_ERROR_LIMIT, _("%s: there is not enough memory for a preview"),
                   bb_png_get_name (png));
      return NULL;
    }
  colour = bb_colour_new (info, BB_COLOUR_SRGB);
  if (!bb_png_read (png, add_row, &shrinking, work, error))
    return NULL;

  pixels = make_pixels (&shrinking);
  convert_colours (&shrinking, colour, pixels);
  bytes = g_bytes_new_take (pixels, 4 * (gsize) shrinking.width * shrinking.height);
  self = bb_preview_new (shrinking.width, shrinking.height, bytes);
  self->full_width = info->width;
  self->full_height = info->height;

  return self;
}

/* Off the main loop */

typedef struct {
  char *path;
  GBytes *bytes;
  char *name;
  guint longest_side;
} Load;

static void
load_free (gpointer data)
{
  Load *self = data;

  g_free (self->path);
  g_free (self->name);
  g_clear_pointer (&self->bytes, g_bytes_unref);
  g_free (self);
}

static void
load_in_thread (GTask                  *task,
                G_GNUC_UNUSED gpointer  source,
                gpointer                data,
                GCancellable           *cancellable)
{
  const Load *self = data;
  const BbImageWork work = { .cancellable = cancellable };
  g_autoptr (GError) error = NULL;
  g_autoptr (BbPng) png = self->path != NULL
                            ? bb_png_new_for_file (self->path, BB_PNG_FORM_RGBA, &error)
                            : bb_png_new_for_bytes (self->bytes, self->name, BB_PNG_FORM_RGBA, &error);
  BbPreview *preview = png != NULL ? bb_preview_read (png, self->longest_side, &work, &error) : NULL;

  if (preview != NULL)
    g_task_return_pointer (task, preview, (GDestroyNotify) bb_preview_free);
  else
    g_task_return_error (task, g_steal_pointer (&error));
}

static void
start_load (Load                *self,
            GCancellable        *cancellable,
            GAsyncReadyCallback  callback,
            gpointer             data)
{
  g_autoptr (GTask) task = g_task_new (NULL, cancellable, callback, data);

  g_task_set_task_data (task, self, load_free);
  g_task_run_in_thread (task, load_in_thread);
}

/**
 * bb_preview_load_async:
 * @path: a file's name
 * @longest_side: how many pixels the longer side of the preview may have, at most %BB_PREVIEW_LONGEST
 * @cancellable: (nullable): stops it within a block of rows
 * @callback: (scope async): called in the caller's main context when it is done
 * @data: for @callback
 *
 * Makes a preview of a file in a thread of its own.
 */
void
bb_preview_load_async (const char          *path,
                       guint                longest_side,
                       GCancellable        *cancellable,
                       GAsyncReadyCallback  callback,
                       gpointer             data)
{
  Load *self = g_new0 (Load, 1);

  self->path = g_strdup (path);
  self->longest_side = longest_side;
  start_load (self, cancellable, callback, data);
}

/**
 * bb_preview_load_bytes_async:
 * @bytes: a whole PNG file
 * @name: what messages call it
 * @longest_side: how many pixels the longer side of the preview may have, at most %BB_PREVIEW_LONGEST
 * @cancellable: (nullable): stops it within a block of rows
 * @callback: (scope async): called in the caller's main context when it is done
 * @data: for @callback
 *
 * Makes a preview of a file that lies in memory in a thread of its own.
 */
void
bb_preview_load_bytes_async (GBytes              *bytes,
                             const char          *name,
                             guint                longest_side,
                             GCancellable        *cancellable,
                             GAsyncReadyCallback  callback,
                             gpointer             data)
{
  Load *self = g_new0 (Load, 1);

  self->bytes = g_bytes_ref (bytes);
  self->name = g_strdup (name);
  self->longest_side = longest_side;
  start_load (self, cancellable, callback, data);
}

/**
 * bb_preview_load_finish:
 * @result: what the callback was given
 * @error: return location for a #GError in the domain %BB_IMAGE_ERROR, or %G_IO_ERROR_CANCELLED
 *
 * Returns: (transfer full): the preview, or %NULL
 */
BbPreview *
bb_preview_load_finish (GAsyncResult *result,
                        GError      **error)
{
  return g_task_propagate_pointer (G_TASK (result), error);
}

/**
 * bb_preview_new:
 * @width: columns
 * @height: rows
 * @pixels: RGBA of 8 bits, row by row without gaps; sRGB, alpha not multiplied in
 *
 * Returns: (transfer full): a preview of a picture that is no larger
 */
BbPreview *
bb_preview_new (guint   width,
                guint   height,
                GBytes *pixels)
{
  BbPreview *self = g_new0 (BbPreview, 1);

  self->width = self->full_width = width;
  self->height = self->full_height = height;
  self->pixels = g_bytes_ref (pixels);

  return self;
}

/**
 * bb_preview_free:
 * @self: (nullable): a preview
 */
void
bb_preview_free (BbPreview *self)
{
  if (self == NULL)
    return;

  g_bytes_unref (self->pixels);
  g_free (self);
}
