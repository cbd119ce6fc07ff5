/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-weigh-scale"

#include "bb-weigh-scale.h"

#include "bb-compat.h"

#define HEIGHT 26
#define POINTER 7.0f

/* The scale ends where the deviation is this many tolerances. */
#define SPAN 3.0f

struct _BbWeighScale
{
  GtkWidget parent_instance;

  /* In tolerances from the target. */
  float place;
};

G_DEFINE_FINAL_TYPE (BbWeighScale, bb_weigh_scale, GTK_TYPE_WIDGET)

static void
draw_pointer (GtkSnapshot   *snapshot,
              const GdkRGBA *colour,
              float          x,
              float          height)
{
  cairo_t *cr = gtk_snapshot_append_cairo (snapshot,
                                           &GRAPHENE_RECT_INIT (x - POINTER, 0, 2 * POINTER, height));

  gdk_cairo_set_source_rgba (cr, colour);
  cairo_move_to (cr, (double) (x - POINTER), 0);
  cairo_line_to (cr, (double) (x + POINTER), 0);
  cairo_line_to (cr, (double) x, (double) (height * 0.55f));
  cairo_fill (cr);
  cairo_destroy (cr);
}

static void
bb_weigh_scale_snapshot (GtkWidget   *widget,
                         GtkSnapshot *snapshot)
{
  BbWeighScale *self = BB_WEIGH_SCALE (widget);
  const float width = (float) gtk_widget_get_width (widget);
  const float height = (float) gtk_widget_get_height (widget);
  const float half = width / 2 - POINTER;
  const float ok = half / SPAN;
  const float place = CLAMP (self->place, -SPAN, SPAN);
  GdkRGBA colour;
  GdkRGBA faint;

  bb_compat_get_color (widget, &colour);
  faint = colour;
  faint.alpha = 0.3f;
  gtk_snapshot_append_color (snapshot, &faint,
                             &GRAPHENE_RECT_INIT (POINTER, height * 0.78f - 1, width - 2 * POINTER, 2));
  faint.alpha = 0.6f;
  gtk_snapshot_append_color (snapshot, &faint,
                             &GRAPHENE_RECT_INIT (width / 2 - ok, height * 0.78f - 4, 2 * ok, 8));
  draw_pointer (snapshot, &colour, width / 2 + place / SPAN * half, height);
}

static void
bb_weigh_scale_class_init (BbWeighScaleClass *klass)
{
  GTK_WIDGET_CLASS (klass)->snapshot = bb_weigh_scale_snapshot;
  gtk_widget_class_set_accessible_role (GTK_WIDGET_CLASS (klass), GTK_ACCESSIBLE_ROLE_PRESENTATION);
}

static void
bb_weigh_scale_init (BbWeighScale *self)
{
  gtk_widget_set_size_request (GTK_WIDGET (self), 160, HEIGHT);
}

/**
 * bb_weigh_scale_set:
 * @self: a scale
 * @deviation: how far from the target, as a share of it
 * @tolerance: how far is still good, as a share of it
 */
void
bb_weigh_scale_set (BbWeighScale *self,
                    double        deviation,
                    double        tolerance)
{
  g_return_if_fail (BB_IS_WEIGH_SCALE (self));

  if (tolerance > 0)
    self->place = (float) (deviation / tolerance);
  else
    self->place = deviation > 0 ? SPAN : deviation < 0 ? -SPAN : 0;
  gtk_widget_queue_draw (GTK_WIDGET (self));
}
