/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-split-bar"

#include "bb-split-bar.h"

#include "bb-compat.h"

#define HEIGHT 12

struct _BbSplitBar
{
  GtkWidget parent_instance;

  float fraction;
};

G_DEFINE_FINAL_TYPE (BbSplitBar, bb_split_bar, GTK_TYPE_WIDGET)

static void
bb_split_bar_snapshot (GtkWidget   *widget,
                       GtkSnapshot *snapshot)
{
  BbSplitBar *self = BB_SPLIT_BAR (widget);
  const float width = (float) gtk_widget_get_width (widget);
  const float height = (float) gtk_widget_get_height (widget);
  GskRoundedRect outline;
  GdkRGBA colour;
  GdkRGBA faint;

  bb_compat_get_color (widget, &colour);
  faint = colour;
  faint.alpha = 0.16f;
  gsk_rounded_rect_init_from_rect (&outline, &GRAPHENE_RECT_INIT (0, 0, width, height), height / 2);
  gtk_snapshot_push_rounded_clip (snapshot, &outline);
  gtk_snapshot_append_color (snapshot, &faint, &outline.bounds);
  gtk_snapshot_append_color (snapshot, &colour, &GRAPHENE_RECT_INIT (0, 0, width * self->fraction, height));
  gtk_snapshot_pop (snapshot);
}

static void
bb_split_bar_class_init (BbSplitBarClass *klass)
{
  GTK_WIDGET_CLASS (klass)->snapshot = bb_split_bar_snapshot;
  gtk_widget_class_set_css_name (GTK_WIDGET_CLASS (klass), "splitbar");
  gtk_widget_class_set_accessible_role (GTK_WIDGET_CLASS (klass), GTK_ACCESSIBLE_ROLE_PRESENTATION);
}

static void
bb_split_bar_init (BbSplitBar *self)
{
  gtk_widget_set_size_request (GTK_WIDGET (self), 80, HEIGHT);
}

/**
 * bb_split_bar_set_fraction:
 * @self: a bar
 * @fraction: concentrate's share of the mass, 0 to 1
 */
void
bb_split_bar_set_fraction (BbSplitBar *self,
                           double      fraction)
{
  g_return_if_fail (BB_IS_SPLIT_BAR (self));

  self->fraction = (float) fraction;
  gtk_widget_queue_draw (GTK_WIDGET (self));
}
