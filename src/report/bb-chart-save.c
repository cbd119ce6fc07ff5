/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-report"

#include "bb-chart.h"

#include <cairo-pdf.h>

#include "bb-paper.h"

/* Left free around a chart in a file, of the style's letters. */
#define MARGIN_SHARE 1.2

static void
draw_with_margin (const BbChart *self,
                  cairo_t       *cr,
                  double         width,
                  double         height)
{
  const BbChartStyle *style = &bb_chart_style_print;
  double margin = style->size * MARGIN_SHARE;

  bb_ink_set (&style->paper, 1.0, cr);
  cairo_paint (cr);
  cairo_translate (cr, margin, margin);
  bb_chart_draw (self, cr, width - 2.0 * margin, height - 2.0 * margin, style, NULL);
}

/**
 * bb_chart_to_png:
 * @self: a chart
 * @width: its width in points
 * @height: its height in points
 * @scale: pixels for each point; 300 / 72 for what is printed
 * @error: return location for an error
 *
 * Returns: (transfer full) (nullable): the chart on white as a PNG file; %NULL with an error where there is not enough
 *   memory
 */
GBytes *
bb_chart_to_png (const BbChart *self,
                 double         width,
                 double         height,
                 double         scale,
                 GError       **error)
{
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_RGB24, (int) (width * scale),
                                                         (int) (height * scale));
  cairo_t *cr = cairo_create (surface);

  cairo_scale (cr, scale, scale);
  draw_with_margin (self, cr, width, height);
  cairo_destroy (cr);

  return bb_paper_take_png (surface, error);
}

/**
 * bb_chart_to_pdf:
 * @self: a chart
 * @width: its width in points
 * @height: its height in points
 * @error: return location for an error
 *
 * Returns: (transfer full) (nullable): the chart as a PDF file of one page of that size; %NULL with an error where
 *   there is not enough memory
 */
GBytes *
bb_chart_to_pdf (const BbChart *self,
                 double         width,
                 double         height,
                 GError       **error)
{
  g_autoptr (GByteArray) bytes = g_byte_array_new ();
  cairo_surface_t *surface = bb_paper_new_pdf (bytes, width, height, self->title);
  cairo_t *cr = cairo_create (surface);

  draw_with_margin (self, cr, width, height);
  cairo_show_page (cr);
  cairo_destroy (cr);

  return bb_paper_take_pdf (surface, g_steal_pointer (&bytes), error);
}
