/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-image"

#include "bb-print-view.h"

#include "bb-light-private.h"

static float
see (float       garment,
     float       colour,
     float       alpha,
     BbPrintMode mode)
{
  float ground = mode == BB_PRINT_COLOUR_ONLY ? garment : garment * (1.0f - alpha) + alpha;

  return ground * (1.0f - alpha + alpha * colour);
}

static gboolean
is_black (const guint8 *pixel,
          guint8        black_at)
{
  return pixel[0] <= black_at && pixel[1] <= black_at && pixel[2] <= black_at;
}

/**
 * bb_print_view_new:
 * @art: a preview of the artwork
 * @garment: (array fixed-size=3): the garment's red, green and blue of sRGB
 * @mode: which inks are printed
 * @black_at: the most that a black pixel has of red, green or blue; of use with knockout only
 *
 * Draws what a person would see; see the top of bb-print-view.h. It takes a few ms for half a million pixels.
 *
 * Returns: (transfer full): a preview of the same size, wholly opaque: the garment where nothing is printed
 */
BbPreview *
bb_print_view_new (const BbPreview *art,
                   const guint8     garment[3],
                   BbPrintMode      mode,
                   guint8           black_at)
{
  g_autofree BbLight *tables = _bb_light_new ();
  gsize length = 0;
  const guint8 *pixels = g_bytes_get_data (art->pixels, &length);
  guint8 *seen = g_malloc (length);
  g_autoptr (GBytes) bytes = g_bytes_new_take (seen, length);
  BbPreview *self = bb_preview_new (art->width, art->height, bytes);

  for (gsize i = 0; i + 4 <= length; i += 4)
    {
      const guint8 *pixel = pixels + i;
      gboolean bare = pixel[3] == 0 || (mode == BB_PRINT_UNDERBASE_KNOCKOUT && is_black (pixel, black_at));
      float alpha = pixel[3] / 255.0f;

      for (guint c = 0; c < 3; c++)
        {
          float light = see (tables->linear[garment[c]], tables->linear[pixel[c]], alpha, mode);

          seen[i + c] = bare ? garment[c] : _bb_light_encode (tables, light);
        }
      seen[i + 3] = 255;
    }
  self->full_width = art->full_width;
  self->full_height = art->full_height;

  return self;
}
