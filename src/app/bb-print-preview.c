/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-print-preview"

#include "bb-print-preview.h"

#include <glib/gi18n-lib.h>

#include "bb-box-key.h"
#include "bb-compat.h"

/* Garment that is seen around the boxes. */
#define EDGE 18
#define LEAST_WIDTH 200
#define WIDTH 340
#define LEAST_HEIGHT 170
#define MOST_HEIGHT 336

/* From here on a pixel is large enough to be seen as the square that it is printed as. */
#define SQUARES_FROM 3.0

struct _BbPrintPreview
{
  GtkWidget parent_instance;

  /* owned */
  cairo_surface_t *print;

  GdkRGBA garment;
  BbPlacement placement;
  gboolean is_placed;
  gboolean has_art;
  gboolean has_box;
};

G_DEFINE_FINAL_TYPE (BbPrintPreview, bb_print_preview, GTK_TYPE_WIDGET)

static void
draw_print (BbPrintPreview *self,
            cairo_t        *cr,
            double          scale)
{
  const BbRectangle *picture = &self->placement.picture;
  const double across = picture->width_mm * scale / cairo_image_surface_get_width (self->print);
  const double along = picture->height_mm * scale / cairo_image_surface_get_height (self->print);

  cairo_save (cr);
  cairo_translate (cr, picture->x_mm * scale, picture->y_mm * scale);
  cairo_scale (cr, across, along);
  cairo_set_source_surface (cr, self->print, 0, 0);
  cairo_pattern_set_extend (cairo_get_source (cr), CAIRO_EXTEND_PAD);
  cairo_pattern_set_filter (cairo_get_source (cr), across >= SQUARES_FROM ? CAIRO_FILTER_NEAREST : CAIRO_FILTER_GOOD);
  cairo_rectangle (cr, 0, 0, cairo_image_surface_get_width (self->print), cairo_image_surface_get_height (self->print));
  cairo_fill (cr);
  cairo_restore (cr);
}

/* Both seams lie under both lines: the boxes may be the same. */
static void
draw_boxes (BbPrintPreview *self,
            cairo_t        *cr,
            double          scale)
{
  const BbRectangle *boxes[] = { [BB_BOX_LINE_ART] = &self->placement.art, [BB_BOX_LINE_SPRAY] = &self->placement.box };
  const gboolean shown[] = { [BB_BOX_LINE_ART] = self->has_art, [BB_BOX_LINE_SPRAY] = self->has_box };

  for (int pass = 0; pass < 2; pass++)
    for (int line = BB_BOX_LINE_SPRAY; line >= BB_BOX_LINE_ART; line--)
      {
        if (!shown[line])
          continue;
        cairo_rectangle (cr, boxes[line]->x_mm * scale, boxes[line]->y_mm * scale, boxes[line]->width_mm * scale,
                         boxes[line]->height_mm * scale);
        if (pass == 0)
          bb_box_key_stroke_seam (cr, (BbBoxLine) line, &self->garment);
        else
          bb_box_key_stroke (cr, (BbBoxLine) line, &self->garment);
        cairo_new_path (cr);
      }
}

static void
draw (BbPrintPreview *self,
      cairo_t        *cr,
      double          width,
      double          height)
{
  const BbRectangle *view = &self->placement.view;
  const double scale = fmin ((width - 2 * EDGE) / view->width_mm, (height - 2 * EDGE) / view->height_mm);

  cairo_translate (cr, (width - view->width_mm * scale) / 2 - view->x_mm * scale,
                   (height - view->height_mm * scale) / 2 - view->y_mm * scale);
  if (self->print != NULL)
    draw_print (self, cr, scale);
  draw_boxes (self, cr, scale);
}

static void
bb_print_preview_snapshot (GtkWidget   *widget,
                           GtkSnapshot *snapshot)
{
  BbPrintPreview *self = BB_PRINT_PREVIEW (widget);
  const float width = (float) gtk_widget_get_width (widget);
  const float height = (float) gtk_widget_get_height (widget);
  const float edge[4] = { 1, 1, 1, 1 };
  GskRoundedRect outline;
  GdkRGBA faint;

  bb_compat_get_color (widget, &faint);
  faint.alpha = 0.25f;
  gsk_rounded_rect_init_from_rect (&outline, &GRAPHENE_RECT_INIT (0, 0, width, height), 8);
  gtk_snapshot_push_rounded_clip (snapshot, &outline);
  gtk_snapshot_append_color (snapshot, &self->garment, &outline.bounds);
  if (self->is_placed && width > 2 * EDGE && height > 2 * EDGE)
    {
      cairo_t *cr = gtk_snapshot_append_cairo (snapshot, &outline.bounds);

      draw (self, cr, (double) width, (double) height);
      cairo_destroy (cr);
    }
  gtk_snapshot_pop (snapshot);
  gtk_snapshot_append_border (snapshot, &outline, edge, (GdkRGBA[4]) { faint, faint, faint, faint });
}

static GtkSizeRequestMode
bb_print_preview_get_request_mode (GtkWidget *widget)
{
  (void) widget;

  return GTK_SIZE_REQUEST_HEIGHT_FOR_WIDTH;
}

static void
bb_print_preview_measure (GtkWidget      *widget,
                          GtkOrientation  orientation,
                          int             for_size,
                          int            *minimum,
                          int            *natural,
                          int            *minimum_baseline,
                          int            *natural_baseline)
{
  BbPrintPreview *self = BB_PRINT_PREVIEW (widget);
  const BbRectangle *view = &self->placement.view;
  const double width = for_size > 0 ? for_size : WIDTH;
  double height = LEAST_HEIGHT;

  *minimum_baseline = -1;
  *natural_baseline = -1;
  if (orientation == GTK_ORIENTATION_HORIZONTAL)
    {
      *minimum = LEAST_WIDTH;
      *natural = WIDTH;
      return;
    }

  if (self->is_placed)
    height = (width - 2 * EDGE) * view->height_mm / view->width_mm + 2 * EDGE;
  *minimum = (int) CLAMP (height, LEAST_HEIGHT, MOST_HEIGHT);
  *natural = *minimum;
}

static void
bb_print_preview_finalize (GObject *object)
{
  BbPrintPreview *self = BB_PRINT_PREVIEW (object);

  g_clear_pointer (&self->print, cairo_surface_destroy);

  G_OBJECT_CLASS (bb_print_preview_parent_class)->finalize (object);
}

static void
bb_print_preview_class_init (BbPrintPreviewClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->finalize = bb_print_preview_finalize;
  widget_class->snapshot = bb_print_preview_snapshot;
  widget_class->measure = bb_print_preview_measure;
  widget_class->get_request_mode = bb_print_preview_get_request_mode;
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_IMG);
}

static void
bb_print_preview_init (BbPrintPreview *self)
{
  self->garment = (GdkRGBA) { 1, 1, 1, 1 };
  bb_compat_set_name (GTK_WIDGET (self), _("The print on the garment"));
}

/**
 * bb_print_preview_set_garment:
 * @self: a preview
 * @garment: the garment's colour
 */
void
bb_print_preview_set_garment (BbPrintPreview *self,
                              const GdkRGBA  *garment)
{
  g_return_if_fail (BB_IS_PRINT_PREVIEW (self) && garment != NULL);

  self->garment = *garment;
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

/**
 * bb_print_preview_set_print:
 * @self: a preview
 * @print: (nullable): the whole picture as it would look printed, of any size
 */
void
bb_print_preview_set_print (BbPrintPreview  *self,
                            const BbPreview *print)
{
  g_autoptr (GdkTexture) texture = NULL;

  g_return_if_fail (BB_IS_PRINT_PREVIEW (self));

  gtk_widget_queue_draw (GTK_WIDGET (self));
  g_clear_pointer (&self->print, cairo_surface_destroy);
  if (print == NULL)
    return;

  texture = gdk_memory_texture_new ((int) print->width, (int) print->height, GDK_MEMORY_R8G8B8A8, print->pixels,
                                    4 * (gsize) print->width);
  self->print = cairo_image_surface_create (CAIRO_FORMAT_ARGB32, (int) print->width, (int) print->height);
  gdk_texture_download (texture, cairo_image_surface_get_data (self->print),
                        (gsize) cairo_image_surface_get_stride (self->print));
  cairo_surface_mark_dirty (self->print);
}

/**
 * bb_print_preview_set_placement:
 * @self: a preview
 * @placement: (nullable): where the picture and its boxes lie
 * @has_art: whether anything of the picture is visible
 * @has_box: whether the box that is sprayed is known
 */
void
bb_print_preview_set_placement (BbPrintPreview    *self,
                                const BbPlacement *placement,
                                gboolean           has_art,
                                gboolean           has_box)
{
  g_return_if_fail (BB_IS_PRINT_PREVIEW (self));

  self->is_placed = placement != NULL;
  self->has_art = has_art;
  self->has_box = has_box;
  if (placement != NULL)
    self->placement = *placement;
  gtk_widget_queue_resize (GTK_WIDGET (self));
}

/**
 * bb_print_preview_describe:
 * @self: a preview
 * @text: what it shows, in words for those who don't see it
 */
void
bb_print_preview_describe (BbPrintPreview *self,
                           const char     *text)
{
  g_return_if_fail (BB_IS_PRINT_PREVIEW (self) && text != NULL);

  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, text, -1);
}
