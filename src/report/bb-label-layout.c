/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-report"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "bb-label.h"

/* Common practice, no source: 24 and 21 labels with a border that most printers can reach. */
const BbLabelLayout bb_label_layout_a4 = { BB_PAPER_A4, 10.0, 3.0, 3, 8 };
const BbLabelLayout bb_label_layout_letter = { BB_PAPER_LETTER, 10.0, 3.0, 3, 7 };

/**
 * bb_label_layout_count_places:
 * @self: a layout
 *
 * Returns: how many labels have room on one sheet
 */
guint
bb_label_layout_count_places (const BbLabelLayout *self)
{
  return self->columns * self->rows;
}

/**
 * bb_label_sheets_new:
 * @layout: (transfer none): how labels lie on a sheet; it outlives the sheets
 * @labels: (transfer full) (element-type BbLabel): the labels
 * @skip: how many places of the first sheet are used up already
 *
 * Returns: (transfer full): the sheets
 */
BbLabelSheets *
bb_label_sheets_new (const BbLabelLayout *layout,
                     GPtrArray           *labels,
                     guint                skip)
{
  BbLabelSheets *self = NULL;

  g_return_val_if_fail (layout != NULL && labels != NULL && bb_label_layout_count_places (layout) > 0, NULL);

  self = g_new0 (BbLabelSheets, 1);
  self->layout = layout;
  self->labels = labels;
  self->skip = skip % bb_label_layout_count_places (layout);

  return self;
}

/**
 * bb_label_sheets_free:
 * @self: (transfer full): sheets
 */
void
bb_label_sheets_free (BbLabelSheets *self)
{
  g_ptr_array_unref (self->labels);
  g_free (self);
}

/**
 * bb_label_sheets_count_pages:
 * @self: sheets
 *
 * Returns: how many sheets there are
 */
guint
bb_label_sheets_count_pages (const BbLabelSheets *self)
{
  const guint per_page = bb_label_layout_count_places (self->layout);

  return self->labels->len == 0 ? 0 : (self->labels->len + self->skip + per_page - 1) / per_page;
}

/* The places of a sheet, in points. */
typedef struct {
  double page_width;
  double page_height;
  double margin;
  double gap;
  double width;
  double height;
} Places;

static double
share (double page,
       double margin,
       double gap,
       guint  n)
{
  return (page - 2 * margin - (n - 1) * gap) / n;
}

static Places
get_places (const BbLabelLayout *layout)
{
  Places places = {
    .margin = layout->margin_mm * BB_POINTS_PER_MM, .gap = layout->gap_mm * BB_POINTS_PER_MM,
  };

  bb_paper_get_size (layout->paper, &places.page_width, &places.page_height);
  places.width = share (places.page_width, places.margin, places.gap, layout->columns);
  places.height = share (places.page_height, places.margin, places.gap, layout->rows);

  return places;
}

static void
get_corner (const BbLabelLayout *layout,
            const Places        *places,
            guint                place,
            double              *x,
            double              *y)
{
  *x = places->margin + (place % layout->columns) * (places->width + places->gap);
  *y = places->margin + (place / layout->columns) * (places->height + places->gap);
}

/**
 * bb_label_sheets_draw_page:
 * @self: sheets
 * @page: which of them, from 0
 * @cr: where to draw, in points, with the paper's corner at its origin
 * @error: return location for an error
 *
 * Returns: whether the sheet could be drawn; %FALSE with @error, of %BB_MODEL_ERROR where a code is too long
 */
gboolean
bb_label_sheets_draw_page (const BbLabelSheets  *self,
                           guint                 page,
                           cairo_t              *cr,
                           GError              **error)
{
  const guint per_page = bb_label_layout_count_places (self->layout);
  const Places places = get_places (self->layout);

  for (guint place = page == 0 ? self->skip : 0; place < per_page; place++)
    {
      const guint i = page * per_page + place - self->skip;
      gboolean drawn = FALSE;
      double x = 0;
      double y = 0;

      if (i >= self->labels->len)
        break;
      get_corner (self->layout, &places, place, &x, &y);
      cairo_save (cr);
      cairo_translate (cr, x, y);
      drawn = bb_label_draw (self->labels->pdata[i], cr, places.width, places.height, error);
      cairo_restore (cr);
      if (!drawn)
        return FALSE;
    }

  return TRUE;
}

/**
 * bb_label_sheets_draw_fitted:
 * @self: sheets
 * @cr: where to draw
 * @width: how wide there is room, in units of @cr
 * @height: how high
 *
 * Draws the first sheet as large as there is room for, with the edges of its places. A label that can't be drawn is
 * left out: bb_label_sheets_to_pdf() says why.
 */
void
bb_label_sheets_draw_fitted (const BbLabelSheets *self,
                             cairo_t             *cr,
                             double               width,
                             double               height)
{
  const Places places = get_places (self->layout);
  const double scale = fmin (width / places.page_width, height / places.page_height);

  cairo_save (cr);
  cairo_translate (cr, (width - scale * places.page_width) / 2.0, (height - scale * places.page_height) / 2.0);
  cairo_scale (cr, scale, scale);
  cairo_rectangle (cr, 0, 0, places.page_width, places.page_height);
  cairo_set_source_rgb (cr, 1, 1, 1);
  cairo_fill (cr);
  bb_label_sheets_draw_page (self, 0, cr, NULL);
  cairo_set_source_rgb (cr, 0.7, 0.7, 0.7);
  cairo_set_line_width (cr, 0.75);
  for (guint place = 0; place < bb_label_layout_count_places (self->layout); place++)
    {
      double x = 0;
      double y = 0;

      get_corner (self->layout, &places, place, &x, &y);
      cairo_rectangle (cr, x, y, places.width, places.height);
    }
  cairo_stroke (cr);
  cairo_restore (cr);
}

/**
 * bb_label_sheets_to_pdf:
 * @self: sheets, with at least one label
 * @error: return location for an error
 *
 * Returns: (transfer full) (nullable): the sheets as a PDF file; %NULL with @error, of %BB_MODEL_ERROR where a code is
 *   too long, or where drawing failed
 */
GBytes *
bb_label_sheets_to_pdf (const BbLabelSheets  *self,
                        GError              **error)
{
  const guint n_pages = bb_label_sheets_count_pages (self);
  const Places places = get_places (self->layout);
  GByteArray *bytes = g_byte_array_new ();
  cairo_surface_t *surface = bb_paper_new_pdf (bytes, places.page_width, places.page_height, _("Labels"));
  cairo_t *cr = cairo_create (surface);
  g_autoptr (GBytes) file = NULL;
  gboolean drawn = n_pages > 0;

  for (guint page = 0; drawn && page < n_pages; page++)
    {
      drawn = bb_label_sheets_draw_page (self, page, cr, error);
      cairo_show_page (cr);
    }
  cairo_destroy (cr);
  file = bb_paper_take_pdf (surface, bytes, drawn ? error : NULL);

  return drawn ? g_steal_pointer (&file) : NULL;
}
