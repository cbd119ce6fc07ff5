/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-report"

#include <cairo-pdf.h>
#include <glib/gi18n-lib.h>

#include "bb-error.h"
#include "bb-label.h"

#define POINTS_PER_MM (72.0 / 25.4)

/* Common practice, no source: 24 and 21 labels with a border that most printers can reach. Paper as in ISO 216 and in
 * ANSI/ASME Y14.1. */
const BbLabelLayout bb_label_layout_a4 = { 210.0, 297.0, 10.0, 3.0, 3, 8 };
const BbLabelLayout bb_label_layout_letter = { 215.9, 279.4, 10.0, 3.0, 3, 7 };

static guint
count_per_page (const BbLabelLayout *self)
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
  const guint per_page = count_per_page (self);

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
  const guint per_page = count_per_page (self);
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
 * bb_label_layout_save_pdf:
 * @self: a layout
 * @labels: (element-type BbLabel): the labels, at least one
 * @skip: how many places of the first sheet are used up already
 * @path: where to write
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
  const guint n_pages = bb_label_layout_count_pages (self, labels->len, skip);
  cairo_surface_t *surface = NULL;
  cairo_t *cr = NULL;
  cairo_status_t status = CAIRO_STATUS_SUCCESS;
  gboolean drawn = TRUE;

  g_return_val_if_fail (labels->len > 0 && path != NULL, FALSE);

  surface = cairo_pdf_surface_create (path,
                                      self->page_width_mm * POINTS_PER_MM,
                                      self->page_height_mm * POINTS_PER_MM);
  cr = cairo_create (surface);
  for (guint page = 0; drawn && page < n_pages; page++)
    {
      drawn = bb_label_layout_draw_page (self, labels, skip, page, cr, error);
      cairo_show_page (cr);
    }
  cairo_destroy (cr);
  cairo_surface_finish (surface);
  status = cairo_surface_status (surface);
  cairo_surface_destroy (surface);

  if (drawn && status != CAIRO_STATUS_SUCCESS)
    {
      g_set_error (error, G_FILE_ERROR, G_FILE_ERROR_FAILED, _("“%s” could not be written: %s."), path,
                   cairo_status_to_string (status));
      return FALSE;
    }

  return drawn;
}
