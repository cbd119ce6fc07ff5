/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-report"

#include "bb-paper.h"

#include <cairo-pdf.h>
#include <gio/gio.h>

#define POINTS_PER_INCH 72.0

/**
 * bb_paper_get_size:
 * @self: a size of paper
 * @width: (out): its width in points, upright
 * @height: (out): its height
 */
void
bb_paper_get_size (BbPaper  self,
                   double  *width,
                   double  *height)
{
  *width = self == BB_PAPER_LETTER ? 8.5 * POINTS_PER_INCH : 210.0 * BB_POINTS_PER_MM;
  *height = self == BB_PAPER_LETTER ? 11.0 * POINTS_PER_INCH : 297.0 * BB_POINTS_PER_MM;
}

static cairo_status_t
append (void                *closure,
        const unsigned char *data,
        unsigned int         length)
{
  g_byte_array_append (closure, data, length);

  return CAIRO_STATUS_SUCCESS;
}

static GBytes *
take_bytes (cairo_status_t  status,
            GByteArray     *bytes,
            GError        **error)
{
  if (status == CAIRO_STATUS_SUCCESS)
    return g_byte_array_free_to_bytes (bytes);

  g_byte_array_unref (bytes);
  g_set_error_literal (error, G_IO_ERROR, G_IO_ERROR_FAILED, cairo_status_to_string (status));

  return NULL;
}

/**
 * bb_paper_new_pdf:
 * @bytes: where the file grows
 * @width: width of its first page, in points
 * @height: height of that page
 * @title: (nullable): what the file is about
 *
 * Returns: (transfer full): a surface whose pages become a PDF file
 */
cairo_surface_t *
bb_paper_new_pdf (GByteArray *bytes,
                  double      width,
                  double      height,
                  const char *title)
{
  cairo_surface_t *surface = cairo_pdf_surface_create_for_stream (append, bytes, width, height);

  if (title != NULL)
    cairo_pdf_surface_set_metadata (surface, CAIRO_PDF_METADATA_TITLE, title);
  cairo_pdf_surface_set_metadata (surface, CAIRO_PDF_METADATA_CREATOR, "Blankbook");

  return surface;
}

/**
 * bb_paper_take_pdf:
 * @surface: (transfer full): what bb_paper_new_pdf() made, drawn on
 * @bytes: (transfer full): the bytes it was made with
 * @error: return location for an error
 *
 * Returns: (transfer full) (nullable): the file; %NULL with an error where drawing failed
 */
GBytes *
bb_paper_take_pdf (cairo_surface_t *surface,
                   GByteArray      *bytes,
                   GError         **error)
{
  cairo_status_t status = CAIRO_STATUS_SUCCESS;

  cairo_surface_finish (surface);
  status = cairo_surface_status (surface);
  cairo_surface_destroy (surface);

  return take_bytes (status, bytes, error);
}

/**
 * bb_paper_take_png:
 * @surface: (transfer full): an image, drawn on
 * @error: return location for an error
 *
 * Returns: (transfer full) (nullable): the image as a PNG file; %NULL with an error where drawing failed
 */
GBytes *
bb_paper_take_png (cairo_surface_t *surface,
                   GError         **error)
{
  g_autoptr (GByteArray) bytes = g_byte_array_new ();
  cairo_status_t status = CAIRO_STATUS_SUCCESS;

  cairo_surface_flush (surface);
  status = cairo_surface_write_to_png_stream (surface, append, bytes);
  cairo_surface_destroy (surface);

  return take_bytes (status, g_steal_pointer (&bytes), error);
}
