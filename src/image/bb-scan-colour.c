/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-image"

#include "bb-scan-colour.h"

#include "bb-colour.h"
#include "bb-error.h"

/*
 * A patch of a scan has few colours for its many pixels, and converting one takes as long as decoding ten pixels. So
 * the last colour that fell in each slot is kept.
 */
#define SLOT_BITS 15
#define N_SLOTS (1u << SLOT_BITS)

#define OPAQUE 65535

/* Sums of what each value is above the first one, so that they lose nothing where the spread is small. */
typedef struct {
  double first;
  double sum;
  double squares;
} Spread;

/* A key of 0 is that of an empty slot. */
typedef struct {
  guint64 key;
  double lab[3];
} Slot;

typedef struct {
  const BbScanColourIn *in;
  const BbPng *png;
  const BbPngInfo *info;
  BbColour *colour;
  Slot slots[N_SLOTS];
  guint64 n_counted;
  guint64 n_left_out;
  Spread spreads[3];
} Measuring;

static gboolean
check_side (const char *start_key,
            gint64      start,
            const char *length_key,
            gint64      length,
            gint64      whole,
            GError    **error)
{
  if (start >= whole)
    g_set_error (error, BB_MODEL_ERROR, BB_MODEL_ERROR_VALUE,
                 "%s: %" G_GINT64_FORMAT " is above the maximum %" G_GINT64_FORMAT ", where the picture ends",
                 start_key, start, whole - 1);
  else if (length > whole - start)
    g_set_error (error, BB_MODEL_ERROR, BB_MODEL_ERROR_VALUE,
                 "%s: %" G_GINT64_FORMAT " is above the maximum %" G_GINT64_FORMAT ", with which the picture ends",
                 length_key, length, whole - start);
  else
    return TRUE;

  return FALSE;
}

static gboolean
check_rectangle (const BbScanColourIn *in,
                 const BbPngInfo      *info,
                 GError              **error)
{
  return check_side ("x_px", in->x_px, "width_px", in->width_px, info->width, error) &&
         check_side ("y_px", in->y_px, "height_px", in->height_px, info->height, error);
}

static void
spread_add (Spread  *self,
            gboolean is_first,
            double   value)
{
  double above = 0.0;

  if (is_first)
    self->first = value;
  above = value - self->first;
  self->sum += above;
  self->squares += above * above;
}

static double
spread_get_mean (const Spread *self,
                 guint64       n)
{
  return self->first + self->sum / (double) n;
}

static double
spread_get_deviation (const Spread *self,
                      guint64       n)
{
  double variance = (self->squares - self->sum * self->sum / (double) n) / (double) (n - 1);

  return n > 1 ? sqrt (fmax (variance, 0.0)) : (double) NAN;
}

static const double *
convert (Measuring    *self,
         const guint16 rgb[3])
{
  guint64 key = G_GUINT64_CONSTANT (1) << 48 | (guint64) rgb[0] << 32 | (guint64) rgb[1] << 16 | rgb[2];
  /* Multiplying by 2^64 ÷ the golden ratio spreads keys that are close (Knuth, vol. 3, 6.4). */
  Slot *slot = &self->slots[key * G_GUINT64_CONSTANT (0x9e3779b97f4a7c15) >> (64 - SLOT_BITS)];
  const double colour[3] = { rgb[0] / (double) OPAQUE, rgb[1] / (double) OPAQUE, rgb[2] / (double) OPAQUE };

  if (slot->key != key)
    {
      bb_colour_convert (self->colour, colour, slot->lab, 1);
      slot->key = key;
    }

  return slot->lab;
}

static void
add_pixel (Measuring     *self,
           const guint16 *samples)
{
  guint channels = self->info->channels;
  gboolean has_alpha = channels % 2 == 0;
  gboolean is_grey = channels < 3;
  const guint16 rgb[3] = { samples[0], samples[is_grey ? 0 : 1], samples[is_grey ? 0 : 2] };
  const double *lab = NULL;

  if (has_alpha && samples[channels - 1] != OPAQUE)
    {
      self->n_left_out++;
      return;
    }

  lab = convert (self, rgb);
  for (guint c = 0; c < 3; c++)
    spread_add (&self->spreads[c], self->n_counted == 0, lab[c]);
  self->n_counted++;
}

static void
measure_row (const BbPngRow *row,
             gpointer        data)
{
  Measuring *self = data;
  const BbScanColourIn *in = self->in;
  const guint16 *samples = (const guint16 *) (const void *) row->pixels;

  if (row->y < in->y_px || row->y >= in->y_px + in->height_px)
    return;
  for (guint32 i = 0; i < row->n_pixels; i++)
    {
      gint64 x = (gint64) row->x + (gint64) i * row->step;

      if (x >= in->x_px && x < in->x_px + in->width_px)
        add_pixel (self, samples + (gsize) i * self->info->channels);
    }
}

static void
fill_warnings (const Measuring *self,
               BbScanColourOut *out)
{
  g_autoptr (GStrvBuilder) warnings = g_strv_builder_new ();
  BbColourSource source = bb_colour_get_source (self->colour);

  if (source == BB_COLOUR_BY_DEFAULT)
    g_strv_builder_add (warnings, bb_choices_get_key (&bb_scan_warning_choices, BB_SCAN_NO_PROFILE));
  if (source == BB_COLOUR_BY_FALLBACK)
    g_strv_builder_add (warnings, bb_choices_get_key (&bb_scan_warning_choices, BB_SCAN_BAD_PROFILE));
  if (self->n_left_out > 0)
    g_strv_builder_add (warnings, bb_choices_get_key (&bb_scan_warning_choices, BB_SCAN_TRANSPARENT));
  out->warnings = g_strv_builder_end (warnings);
}

static gboolean
fill_out (const Measuring *self,
          BbScanColourOut *out,
          GError         **error)
{
  guint64 n = self->n_counted;

  if (n == 0)
    {
      g_set_error_literal (error, BB_MODEL_ERROR, BB_MODEL_ERROR_UNDETERMINED,
                           _("file: no pixel of the rectangle is wholly opaque"));
      return FALSE;
    }

  for (guint c = 0; c < 3; c++)
    if (!isfinite (self->spreads[c].squares))
      {
        g_set_error (error, BB_IMAGE_ERROR, BB_IMAGE_ERROR_DAMAGED, _("%s: its colour profile makes no colours of it"),
                     bb_png_get_name (self->png));
        return FALSE;
      }

  out->l = spread_get_mean (&self->spreads[0], n);
  out->a = spread_get_mean (&self->spreads[1], n);
  out->b = spread_get_mean (&self->spreads[2], n);
  out->l_sd = spread_get_deviation (&self->spreads[0], n);
  out->a_sd = spread_get_deviation (&self->spreads[1], n);
  out->b_sd = spread_get_deviation (&self->spreads[2], n);
  out->pixels = (gint64) n;
  fill_warnings (self, out);

  return TRUE;
}

/**
 * bb_scan_colour_measure:
 * @in: the rectangle; valid by its table. Its file is not looked at
 * @png: a reader of %BB_PNG_FORM_DEEP whose rows were not read yet
 * @out: a record that holds nothing yet
 * @work: (nullable): how the work is watched and stopped
 * @error: return location for a #GError in the domain %BB_MODEL_ERROR or %BB_IMAGE_ERROR, or %G_IO_ERROR_CANCELLED
 *
 * Measures a rectangle of a picture, wherever its bytes come from; see the top of bb-scan-colour.h. The whole file is
 * read, so that a damaged one is refused wherever the rectangle lies.
 *
 * Returns: %TRUE if @out holds the result
 */
gboolean
bb_scan_colour_measure (const BbScanColourIn *in,
                        BbPng                *png,
                        BbScanColourOut      *out,
                        const BbImageWork    *work,
                        GError              **error)
{
  g_autofree Measuring *measuring = g_new0 (Measuring, 1);
  g_autoptr (BbColour) colour = NULL;

  measuring->in = in;
  measuring->png = png;
  measuring->info = bb_png_get_info (png);
  if (!check_rectangle (in, measuring->info, error))
    return FALSE;

  colour = bb_colour_new (measuring->info, BB_COLOUR_LAB);
  measuring->colour = colour;
  if (!bb_png_read (png, measure_row, measuring, work, error))
    return FALSE;

  return fill_out (measuring, out, error);
}

/**
 * bb_calc_scan_colour:
 * @in: the file and the rectangle
 * @out: its colour
 * @error: return location for a #GError in the domain %BB_MODEL_ERROR or %BB_IMAGE_ERROR
 *
 * Measures a rectangle of a file; see the top of bb-scan-colour.h.
 *
 * Returns: %TRUE if @out holds the result
 */
gboolean
bb_calc_scan_colour (const BbScanColourIn *in,
                     BbScanColourOut      *out,
                     GError              **error)
{
  g_autoptr (BbPng) png = bb_png_new_for_file (in->file, BB_PNG_FORM_DEEP, error);

  return png != NULL && bb_scan_colour_measure (in, png, out, NULL, error);
}

BB_DEFINE_CHOICES (bb_scan_warning, "scan_warning", BB_SCAN_WARNING_CHOICES);
BB_DEFINE_TABLE (BbScanColourIn, bb_scan_colour_in, "scan_colour_in", N_("Colour of a scan"),
                 BB_SCAN_COLOUR_IN_FIELDS, NULL)
BB_DEFINE_TABLE (BbScanColourOut, bb_scan_colour_out, "scan_colour_out", N_("Colour of a scan"),
                 BB_SCAN_COLOUR_OUT_FIELDS, NULL)
