/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-report"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "bb-label.h"
#include "bb-paper.h"

#define POINTS_PER_MM (72.0 / 25.4)

/* Common practice, no source: 24 and 21 labels with a border that most printers can reach. Paper as in ISO 216 and in
 * ANSI/ASME Y14.1. */
const BbLabelLayout bb_label_layout_a4 = { 210.0, 297.0, 10.0, 3.0, 3, 8 };
const BbLabelLayout bb_label_layout_letter = { 215.9, 279.4, 10.0, 3.0, 3, 7 };

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

/* In points, as all that follows. */
static double
share (double page,
       double margin,
       double gap,
       guint  n)
{
  return (page - 2 * margin - (n - 1) * gap) / n * POINTS_PER_MM;
}

/**
 * bb_label_layout_count_pages:
 * @self: a layout
 * @n_labels: how many labels
 * @skip: how many places of the first sheet are used up already
 *
 * Returns: how many sheets that takes
 */
guint
bb_label_layout_count_pages (const BbLabelLayout *self,
                             guint                n_labels,
                             guint                skip)
{
  const guint per_page = bb_label_layout_count_places (self);

  g_return_val_if_fail (per_page > 0, 0);

  return n_labels == 0 ? 0 : (n_labels + skip % per_page + per_page - 1) / per_page;
}

/**
 * bb_label_layout_draw_page:
 * @self: a layout
 * @labels: (element-type BbLabel): the labels
 * @skip: how many places of the first sheet are used up already
 * @page: which sheet, from 0
 * @cr: where to draw, in points, with the paper's corner at its origin
 * @error: return location for an error
 *
 * Returns: whether the sheet could be drawn
 */
gboolean
bb_label_layout_draw_page (const BbLabelLayout *self,
                           GPtrArray           *labels,
                           guint                skip,
                           guint                page,
                           cairo_t             *cr,
                           GError             **error)
{
  const guint per_page = bb_label_layout_count_places (self);
  const double margin = self->margin_mm * POINTS_PER_MM;
  const double gap = self->gap_mm * POINTS_PER_MM;
  const double width = share (self->page_width_mm, self->margin_mm, self->gap_mm, self->columns);
  const double height = share (self->page_height_mm, self->margin_mm, self->gap_mm, self->rows);

  g_return_val_if_fail (per_page > 0, FALSE);

  skip %= per_page;
  for (guint place = page == 0 ? skip : 0; place < per_page; place++)
    {
      const guint i = page * per_page + place - skip;
      gboolean drawn = FALSE;

      if (i >= labels->len)
        break;
      cairo_save (cr);
      cairo_translate (cr, margin + (place % self->columns) * (width + gap),
                       margin + (place / self->columns) * (height + gap));
      drawn = bb_label_draw (g_ptr_array_index (labels, i), cr, width, height, error);
      cairo_restore (cr);
      if (!drawn)
        return FALSE;
    }

  return TRUE;
}

/**
 * bb_label_layout_draw_fitted:
 * @self: a layout
 * @labels: (element-type BbLabel): the labels
 * @skip: how many places of the first sheet are used up already
 * @cr: where to draw
 * @width: how wide there is room, in units of @cr
 * @height: how high
 *
 * Draws the first sheet as large as there is room for, with the edges of its places. A label that can't be drawn is
 * left out: bb_label_layout_to_pdf() says why.
 */
void
bb_label_layout_draw_fitted (const BbLabelLayout *self,
                             GPtrArray           *labels,
                             guint                skip,
                             cairo_t             *cr,
                             double               width,
                             double               height)
{
  const double page_width = self->page_width_mm * POINTS_PER_MM;
  const double page_height = self->page_height_mm * POINTS_PER_MM;
  const double scale = fmin (width / page_width, height / page_height);
  const double margin = self->margin_mm * POINTS_PER_MM;
  const double gap = self->gap_mm * POINTS_PER_MM;
  const double label_width = share (self->page_width_mm, self->margin_mm, self->gap_mm, self->columns);
  const double label_height = share (self->page_height_mm, self->margin_mm, self->gap_mm, self->rows);

  cairo_save (cr);
  cairo_translate (cr, (width - scale * page_width) / 2.0, (height - scale * page_height) / 2.0);
  cairo_scale (cr, scale, scale);
  cairo_rectangle (cr, 0, 0, page_width, page_height);
  cairo_set_source_rgb (cr, 1, 1, 1);
  cairo_fill (cr);
  bb_label_layout_draw_page (self, labels, skip, 0, cr, NULL);
  cairo_set_source_rgb (cr, 0.7, 0.7, 0.7);
  cairo_set_line_width (cr, 0.75);
  for (guint place = 0; place < bb_label_layout_count_places (self); place++)
    cairo_rectangle (cr, margin + (place % self->columns) * (label_width + gap),
                     margin + (place / self->columns) * (label_height + gap), label_width, label_height);
  cairo_stroke (cr);
  cairo_restore (cr);
}

/**
 * bb_label_layout_to_pdf:
 * @self: a layout
 * @labels: (element-type BbLabel): the labels, at least one
 * @skip: how many places of the first sheet are used up already
 * @error: return location for an error
 *
 * Returns: (transfer full) (nullable): the sheets as a PDF file; %NULL with @error, of %BB_MODEL_ERROR where a code is
 *   too long, or where drawing failed
 */
GBytes *
bb_label_layout_to_pdf (const BbLabelLayout *self,
                        GPtrArray           *labels,
                        guint                skip,
                        GError             **error)
{
  const guint n_pages = bb_label_layout_count_pages (self, labels->len, skip);
  GByteArray *bytes = g_byte_array_new ();
  cairo_surface_t *surface = bb_paper_new_pdf (bytes, self->page_width_mm * POINTS_PER_MM,
                                               self->page_height_mm * POINTS_PER_MM, _("Labels"));
  cairo_t *cr = cairo_create (surface);
  g_autoptr (GBytes) file = NULL;
  gboolean drawn = labels->len > 0;

  for (guint page = 0; drawn && page < n_pages; page++)
    {
      drawn = bb_label_layout_draw_page (self, labels, skip, page, cr, error);
      cairo_show_page (cr);
    }
  cairo_destroy (cr);
  file = bb_paper_take_pdf (surface, bytes, drawn ? error : NULL);

  return drawn ? g_steal_pointer (&file) : NULL;
}

/**
 * bb_label_layout_save_pdf:
 * @self: a layout
 * @labels: (element-type BbLabel): the labels, at least one
 * @skip: how many places of the first sheet are used up already
 * @path: where to write; a file that is there is replaced by a whole one, or stays
 * @error: return location for an error
 *
 * Returns: whether the file was written; %FALSE with @error, of %BB_MODEL_ERROR or %G_FILE_ERROR
 */
gboolean
bb_label_layout_save_pdf (const BbLabelLayout *self,
                          GPtrArray           *labels,
                          guint                skip,
                          const char          *path,
                          GError             **error)
{
  g_autoptr (GBytes) file = NULL;

  g_return_val_if_fail (labels->len > 0 && path != NULL, FALSE);

  file = bb_label_layout_to_pdf (self, labels, skip, error);

  return file != NULL && g_file_set_contents (path, g_bytes_get_data (file, NULL), (gssize) g_bytes_get_size (file),
                                              error);
}
