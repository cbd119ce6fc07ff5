/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-test"

#include <math.h>

#include "bb-error.h"
#include "bb-scan-colour.h"
#include "fuzz.h"

/* A PNG file as a scan, whose colours go through its own profile: what comes of it is a colour, or it is refused. */

/* What is larger is cancelled, so that an input of a few bytes does not take seconds. */
#define MAX_PIXELS 100000.0

typedef struct {
  const BbPngInfo *info;
  GCancellable *cancellable;
} Scan;

static void
watch (double   fraction,
       gpointer data)
{
  Scan *self = data;

  if (fraction * self->info->width * self->info->height > MAX_PIXELS)
    g_cancellable_cancel (self->cancellable);
}

static void
check_colour (const BbScanColourOut *out,
              const BbPngInfo       *info)
{
  g_assert_true (isfinite (out->l) && isfinite (out->a) && isfinite (out->b));
  g_assert_cmpint (out->pixels, >, 0);
  g_assert_cmpint (out->pixels, <=, (gint64) info->width * info->height);
  if (out->pixels > 1)
    g_assert_true (out->l_sd >= 0 && out->a_sd >= 0 && out->b_sd >= 0);
}

static gboolean
measure (BbPng   *png,
         GError **error)
{
  g_autoptr (GCancellable) cancellable = g_cancellable_new ();
  g_autoptr (BbScanColourIn) in = bb_scan_colour_in_new ();
  g_autoptr (BbScanColourOut) out = bb_scan_colour_out_new ();
  Scan scan = { bb_png_get_info (png), cancellable };
  const BbImageWork work = { cancellable, watch, &scan };

  /* All but the outermost quarter. */
  in->x_px = scan.info->width / 8;
  in->y_px = scan.info->height / 8;
  in->width_px = scan.info->width - 2 * in->x_px;
  in->height_px = scan.info->height - 2 * in->y_px;
  if (!bb_scan_colour_measure (in, png, out, &work, error))
    return FALSE;
  check_colour (out, scan.info);

  return TRUE;
}

gboolean
fuzz_one (const guint8 *data,
          gsize         length)
{
  g_autoptr (GBytes) bytes = g_bytes_new_static (data, length);
  g_autoptr (GError) error = NULL;
  g_autoptr (BbPng) png = bb_png_new_for_bytes (bytes, "a scan", BB_PNG_FORM_DEEP, &error);

  if (png != NULL && measure (png, &error))
    return TRUE;

  fuzz_check_message (error);
  if (!g_error_matches (error, G_IO_ERROR, G_IO_ERROR_CANCELLED) &&
      !g_error_matches (error, BB_MODEL_ERROR, BB_MODEL_ERROR_UNDETERMINED))
    g_assert_true (error->domain == BB_IMAGE_ERROR);

  return FALSE;
}
