/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-image"

#include "bb-artwork.h"

#include "bb-error.h"

#define MM_PER_INCH 25.4
#define MM_PER_M 1000.0
#define OPAQUE 255.0

/**
 * bb_artwork_count:
 * @in: the file, and what counts as black and white; valid by its table
 * @counts: (out caller-allocates): the counts
 * @work: (nullable): how the work is watched and stopped
 * @error: return location for a #GError in the domain %BB_IMAGE_ERROR, or %G_IO_ERROR_CANCELLED
 *
 * Reads the picture: the part that takes time, and that does not depend on how the picture is placed.
 *
 * Returns: %TRUE if @counts holds the counts
 */
gboolean
bb_artwork_count (const BbArtworkIn *in,
                  BbCounts          *counts,
                  const BbImageWork *work,
                  GError           **error)
{
  g_autoptr (BbPng) png = bb_png_new_for_file (in->file, BB_PNG_FORM_COUNTABLE, error);

  return png != NULL && bb_counts_read (counts, png, (guint8) in->black_at, (guint8) in->white_at, work, error);
}

static void
fill_fractions (const BbCounts *counts,
                BbArtworkOut   *out)
{
  double n = (double) counts->n_pixels;

  out->empty_fraction = (double) counts->n_empty / n;
  out->partial_fraction = (double) (counts->n_pixels - counts->n_empty - counts->n_opaque) / n;
  out->opaque_fraction = (double) counts->n_opaque / n;
  out->black_fraction = (double) counts->n_black / n;
  out->white_fraction = (double) counts->n_white / n;
  out->alpha_mean = (double) counts->alpha / OPAQUE / n;
}

/* Sums of alpha are exact in double: they are whole numbers below 2^53. */
static void
fill_areas (const BbArtworkIn *in,
            const BbCounts    *counts,
            BbArtworkOut      *out)
{
  double pixel_mm = in->print_width_mm / counts->width;
  double per_alpha = pixel_mm * pixel_mm / OPAQUE;
  gboolean underbase = in->mode != BB_PRINT_COLOUR_ONLY;
  guint64 knockout = in->mode == BB_PRINT_UNDERBASE_KNOCKOUT ? counts->black_alpha : 0;
  guint64 printed = counts->alpha - knockout;

  out->art_area_mm2 = (double) counts->alpha * per_alpha;
  out->underbase_area_mm2 = underbase ? (double) printed * per_alpha : 0.0;
  out->colour_area_mm2 = (double) (underbase ? printed - counts->white_alpha : printed) * per_alpha;
  out->knockout_area_mm2 = (double) knockout * per_alpha;
}

static void
fill_box (const BbArtworkIn *in,
          const BbCounts    *counts,
          BbArtworkOut      *out)
{
  double pixel_mm = in->print_width_mm / counts->width;
  BbPixelBox *box = NULL;

  if (counts->left == counts->right)
    return;

  box = bb_pixel_box_new ();
  box->x_px = counts->left;
  box->y_px = counts->top;
  box->width_px = counts->right - counts->left;
  box->height_px = counts->bottom - counts->top;
  out->art_box = box;
  out->box_width_mm = (double) box->width_px * pixel_mm + 2.0 * in->margin_mm;
  out->box_height_mm = (double) box->height_px * pixel_mm + 2.0 * in->margin_mm;
}

/* The file's pixels per metre may have been rounded down by half of one. */
static gboolean
is_enlarged (const BbArtworkIn *in,
             const BbCounts    *counts)
{
  double largest_mm = MM_PER_M * counts->width / (counts->pixels_per_metre_x - 0.5);

  return counts->pixels_per_metre_x > 0 && in->print_width_mm > largest_mm;
}

static void
fill_warnings (const BbArtworkIn *in,
               const BbCounts    *counts,
               BbArtworkOut      *out)
{
  g_autoptr (GStrvBuilder) warnings = g_strv_builder_new ();
  const gboolean found[] = {
    [BB_ARTWORK_LOW_RESOLUTION] = out->ppi < in->minimum_ppi,
    [BB_ARTWORK_ENLARGED] = is_enlarged (in, counts),
    [BB_ARTWORK_PARTIAL_ALPHA] = counts->n_empty + counts->n_opaque < counts->n_pixels,
    [BB_ARTWORK_OPAQUE_BACKGROUND] = counts->n_opaque == counts->n_pixels,
    [BB_ARTWORK_EMPTY] = counts->n_empty == counts->n_pixels,
    [BB_ARTWORK_NO_SIZE] = counts->pixels_per_metre_x == 0,
  };

  for (int warning = 0; warning < (int) G_N_ELEMENTS (found); warning++)
    if (found[warning])
      g_strv_builder_add (warnings, bb_choices_get_key (&bb_artwork_warning_choices, warning));
  out->warnings = g_strv_builder_end (warnings);
}

/**
 * bb_artwork_fill:
 * @in: how the picture is placed; valid by its table
 * @counts: what was counted of it
 * @out: a record that holds nothing yet
 *
 * Works out what the counts mean for the print: the part that takes no time, whatever changes in @in except the file
 * and what counts as black and white. See the top of bb-artwork.h.
 */
void
bb_artwork_fill (const BbArtworkIn *in,
                 const BbCounts    *counts,
                 BbArtworkOut      *out)
{
  out->width_px = counts->width;
  out->height_px = counts->height;
  out->print_height_mm = in->print_width_mm * counts->height / counts->width;
  out->ppi = counts->width / (in->print_width_mm / MM_PER_INCH);
  if (counts->pixels_per_metre_x > 0)
    out->enlargement = in->print_width_mm / (MM_PER_M * counts->width / counts->pixels_per_metre_x);
  fill_fractions (counts, out);
  fill_areas (in, counts, out);
  fill_box (in, counts, out);
  fill_warnings (in, counts, out);
}

/**
 * bb_calc_artwork:
 * @in: the file, and how it is placed
 * @out: what it says about the print
 * @error: return location for a #GError in the domain %BB_IMAGE_ERROR
 *
 * Reads the artwork and works out what it means; see the top of bb-artwork.h.
 *
 * Returns: %TRUE if @out holds the result
 */
gboolean
bb_calc_artwork (const BbArtworkIn *in,
                 BbArtworkOut      *out,
                 GError           **error)
{
  BbCounts counts;

  if (!bb_artwork_count (in, &counts, NULL, error))
    return FALSE;

  bb_artwork_fill (in, &counts, out);

  return TRUE;
}

static gboolean
check_artwork (gconstpointer record,
               GError      **error)
{
  const BbArtworkIn *in = record;

  if (in->black_at < in->white_at)
    return TRUE;

  g_set_error (error, BB_MODEL_ERROR, BB_MODEL_ERROR_VALUE,
               "black_at: %" G_GINT64_FORMAT " is not allowed, it must be less than white_at, which is "
               "%" G_GINT64_FORMAT,
               in->black_at, in->white_at);

  return FALSE;
}

BB_DEFINE_CHOICES (bb_artwork_warning, "artwork_warning", BB_ARTWORK_WARNING_CHOICES);
BB_DEFINE_TABLE (BbPixelBox, bb_pixel_box, "pixel_box", N_("Rectangle of pixels"), BB_PIXEL_BOX_FIELDS, NULL)
BB_DEFINE_TABLE (BbArtworkIn, bb_artwork_in, "artwork_in", N_("Artwork"), BB_ARTWORK_IN_FIELDS, check_artwork)
BB_DEFINE_TABLE (BbArtworkOut, bb_artwork_out, "artwork_out", N_("Artwork"), BB_ARTWORK_OUT_FIELDS, NULL)
