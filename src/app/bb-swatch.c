/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-swatch"

#include "bb-swatch.h"

#include "bb-compat.h"

struct _BbSwatch
{
  GtkWidget parent_instance;

  /* The second is below the diagonal; without a colour the patch is an empty frame. */
  GdkRGBA colours[2];
  gboolean has_colour;
};

G_DEFINE_FINAL_TYPE (BbSwatch, bb_swatch, GTK_TYPE_WIDGET)

/* What stands for several colours: two of those that are meant. */
static const char * const shades[][2] = {
  [BB_SHADE_ANY] = { "#f1f1ef", "#26282c" },
  [BB_SHADE_WHITE] = { "#fbfbfa", "#fbfbfa" },
  [BB_SHADE_LIGHT] = { "#f1f1ef", "#cdd2d6" },
  [BB_SHADE_DARK] = { "#4d5560", "#26282c" },
  [BB_SHADE_BLACK] = { "#161618", "#161618" },
};

static void
draw_diagonal (BbSwatch    *self,
               GtkSnapshot *snapshot,
               float        width,
               float        height)
{
  cairo_t *cr = gtk_snapshot_append_cairo (snapshot, &GRAPHENE_RECT_INIT (0, 0, width, height));

  gdk_cairo_set_source_rgba (cr, &self->colours[1]);
  cairo_move_to (cr, (double) width, 0);
  cairo_line_to (cr, (double) width, (double) height);
  cairo_line_to (cr, 0, (double) height);
  cairo_fill (cr);
  cairo_destroy (cr);
}

static void
bb_swatch_snapshot (GtkWidget   *widget,
                    GtkSnapshot *snapshot)
{
  BbSwatch *self = BB_SWATCH (widget);
  const float width = (float) gtk_widget_get_width (widget);
  const float height = (float) gtk_widget_get_height (widget);
  const float edge[4] = { 1, 1, 1, 1 };
  GdkRGBA line;
  GskRoundedRect outline;

  bb_compat_get_color (widget, &line);
  line.alpha = self->has_colour ? 0.35f : 0.2f;
  gsk_rounded_rect_init_from_rect (&outline, &GRAPHENE_RECT_INIT (0, 0, width, height), 4);

  if (self->has_colour)
    {
      gtk_snapshot_push_rounded_clip (snapshot, &outline);
      gtk_snapshot_append_color (snapshot, &self->colours[0], &outline.bounds);
      if (!gdk_rgba_equal (&self->colours[0], &self->colours[1]))
        draw_diagonal (self, snapshot, width, height);
      gtk_snapshot_pop (snapshot);
    }
  gtk_snapshot_append_border (snapshot, &outline, edge, (GdkRGBA[4]) { line, line, line, line });
}

static void
bb_swatch_class_init (BbSwatchClass *klass)
{
  GTK_WIDGET_CLASS (klass)->snapshot = bb_swatch_snapshot;
  gtk_widget_class_set_accessible_role (GTK_WIDGET_CLASS (klass), GTK_ACCESSIBLE_ROLE_PRESENTATION);
}

static void
bb_swatch_init (BbSwatch *self)
{
  gtk_widget_set_valign (GTK_WIDGET (self), GTK_ALIGN_CENTER);
}

/**
 * bb_swatch_new:
 * @size: width and height
 *
 * Returns: (transfer floating): a patch without a colour
 */
GtkWidget *
bb_swatch_new (int size)
{
  GtkWidget *self = g_object_new (BB_TYPE_SWATCH, NULL);

  gtk_widget_set_size_request (self, size, size);

  return self;
}

static void
set_colours (BbSwatch   *self,
             const char *first,
             const char *second)
{
  self->has_colour = first != NULL && gdk_rgba_parse (&self->colours[0], first) &&
                     gdk_rgba_parse (&self->colours[1], second);
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

/**
 * bb_swatch_set_srgb:
 * @self: a swatch
 * @srgb: (nullable): a colour as `#rrggbb`; anything else shows an empty patch
 */
void
bb_swatch_set_srgb (BbSwatch   *self,
                    const char *srgb)
{
  g_return_if_fail (BB_IS_SWATCH (self));

  set_colours (self, srgb, srgb);
}

/**
 * bb_swatch_set_garment:
 * @self: a swatch
 * @srgb: (nullable): the one colour that is meant, as `#rrggbb`; %NULL or an empty text where it is several
 * @shade: which colours are meant
 */
void
bb_swatch_set_garment (BbSwatch   *self,
                       const char *srgb,
                       BbShade     shade)
{
  g_return_if_fail (BB_IS_SWATCH (self));

  if (srgb != NULL && *srgb != '\0')
    set_colours (self, srgb, srgb);
  else if ((guint) shade < G_N_ELEMENTS (shades))
    set_colours (self, shades[shade][0], shades[shade][1]);
  else
    set_colours (self, NULL, NULL);
}
