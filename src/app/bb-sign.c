/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-sign"

#include "bb-sign.h"

#include "bb-compat.h"

struct _BbSign
{
  GtkWidget parent_instance;

  BbSignShape shape;
};

G_DEFINE_FINAL_TYPE (BbSign, bb_sign, GTK_TYPE_WIDGET)

/* Cuts a line out of what is drawn: points are in radii from the centre. */
static void
cut (cairo_t      *cr,
     const double *points,
     guint         n_points)
{
  cairo_set_operator (cr, CAIRO_OPERATOR_CLEAR);
  for (guint i = 0; i < n_points; i++)
    cairo_line_to (cr, points[2 * i], points[2 * i + 1]);
  cairo_stroke (cr);
}

/* In a circle of radius 1 around the origin. */
static void
draw (cairo_t     *cr,
      BbSignShape  shape)
{
  static const double tick[] = { -0.5, 0.02, -0.14, 0.4, 0.54, -0.4 };
  static const double falling[] = { -0.4, -0.4, 0.4, 0.4 };
  static const double rising[] = { -0.4, 0.4, 0.4, -0.4 };

  cairo_set_line_width (cr, 0.28);
  cairo_arc (cr, 0, 0, shape == BB_SIGN_TICK || shape == BB_SIGN_CROSS ? 1.0 : 0.86, 0, 2 * G_PI);
  switch (shape)
    {
    case BB_SIGN_TICK:
      cairo_fill (cr);
      cut (cr, tick, 3);
      break;
    case BB_SIGN_CROSS:
      cairo_fill (cr);
      cut (cr, falling, 2);
      cut (cr, rising, 2);
      break;
    case BB_SIGN_HALF:
      cairo_stroke (cr);
      cairo_arc (cr, 0, 0, 0.86, G_PI / 2, 3 * G_PI / 2);
      cairo_fill (cr);
      break;
    case BB_SIGN_SLASH:
      cairo_stroke (cr);
      cairo_move_to (cr, -0.6, 0.6);
      cairo_line_to (cr, 0.6, -0.6);
      cairo_stroke (cr);
      break;
    case BB_SIGN_RING:
    default:
      cairo_stroke (cr);
      break;
    }
}

static void
bb_sign_snapshot (GtkWidget   *widget,
                  GtkSnapshot *snapshot)
{
  const float width = (float) gtk_widget_get_width (widget);
  const float height = (float) gtk_widget_get_height (widget);
  const double radius = (double) MIN (width, height) / 2;
  cairo_t *cr = gtk_snapshot_append_cairo (snapshot, &GRAPHENE_RECT_INIT (0, 0, width, height));
  GdkRGBA colour;

  bb_compat_get_color (widget, &colour);
  gdk_cairo_set_source_rgba (cr, &colour);
  cairo_translate (cr, (double) width / 2, (double) height / 2);
  cairo_scale (cr, radius, radius);
  draw (cr, BB_SIGN (widget)->shape);
  cairo_destroy (cr);
}

static void
bb_sign_class_init (BbSignClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  widget_class->snapshot = bb_sign_snapshot;
  gtk_widget_class_set_css_name (widget_class, "sign");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_PRESENTATION);
}

static void
bb_sign_init (BbSign *self)
{
  gtk_widget_set_valign (GTK_WIDGET (self), GTK_ALIGN_CENTER);
}

/**
 * bb_sign_new:
 *
 * Returns: (transfer floating): a ring
 */
GtkWidget *
bb_sign_new (void)
{
  return g_object_new (BB_TYPE_SIGN, NULL);
}

/**
 * bb_sign_set_shape:
 * @self: a sign
 * @shape: what it shows
 */
void
bb_sign_set_shape (BbSign      *self,
                   BbSignShape  shape)
{
  g_return_if_fail (BB_IS_SIGN (self));

  self->shape = shape;
  gtk_widget_queue_draw (GTK_WIDGET (self));
}
