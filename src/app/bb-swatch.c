/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-swatch"

#include "bb-swatch.h"

#include "bb-compat.h"

struct _BbSwatch
{
  GtkWidget parent_instance;

  GdkRGBA colour;
  gboolean has_colour;
};

G_DEFINE_FINAL_TYPE (BbSwatch, bb_swatch, GTK_TYPE_WIDGET)

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
      gtk_snapshot_append_color (snapshot, &self->colour, &outline.bounds);
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

  self->has_colour = srgb != NULL && gdk_rgba_parse (&self->colour, srgb);
  gtk_widget_queue_draw (GTK_WIDGET (self));
}
