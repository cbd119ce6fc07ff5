/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-box-key"

#include "bb-box-key.h"

#include "bb-compat.h"
#include "bb-contrast.h"

#define WIDTH 38
#define HEIGHT 20

/* On a light garment, and on a dark one. */
static const struct {
  double width;
  double dashes[2];
  int n_dashes;
  GdkRGBA colours[2];
} lines[] = {
  [BB_BOX_LINE_ART] = { 1.5, { 6, 4 }, 2, { { 0.55f, 0.24f, 0.02f, 1 }, { 1.0f, 0.74f, 0.36f, 1 } } },
  [BB_BOX_LINE_SPRAY] = { 2.5, { 0 }, 0, { { 0.07f, 0.38f, 0.40f, 1 }, { 0.45f, 0.85f, 0.84f, 1 } } },
};

struct _BbBoxKey
{
  GtkWidget parent_instance;

  BbBoxLine line;
  GdkRGBA ground;
};

G_DEFINE_FINAL_TYPE (BbBoxKey, bb_box_key, GTK_TYPE_WIDGET)

static void
bb_box_key_snapshot (GtkWidget   *widget,
                     GtkSnapshot *snapshot)
{
  BbBoxKey *self = BB_BOX_KEY (widget);
  const float width = (float) gtk_widget_get_width (widget);
  const float height = (float) gtk_widget_get_height (widget);
  const float edge[4] = { 1, 1, 1, 1 };
  GskRoundedRect outline;
  GdkRGBA faint;
  cairo_t *cr = NULL;

  bb_compat_get_color (widget, &faint);
  faint.alpha = 0.35f;
  gsk_rounded_rect_init_from_rect (&outline, &GRAPHENE_RECT_INIT (0, 0, width, height), 3);
  gtk_snapshot_push_rounded_clip (snapshot, &outline);
  gtk_snapshot_append_color (snapshot, &self->ground, &outline.bounds);
  cr = gtk_snapshot_append_cairo (snapshot, &outline.bounds);
  cairo_move_to (cr, 4, (double) height / 2);
  cairo_line_to (cr, (double) width - 4, (double) height / 2);
  bb_box_key_stroke (cr, self->line, &self->ground);
  cairo_destroy (cr);
  gtk_snapshot_pop (snapshot);
  gtk_snapshot_append_border (snapshot, &outline, edge, (GdkRGBA[4]) { faint, faint, faint, faint });
}

static void
bb_box_key_class_init (BbBoxKeyClass *klass)
{
  GTK_WIDGET_CLASS (klass)->snapshot = bb_box_key_snapshot;
  gtk_widget_class_set_accessible_role (GTK_WIDGET_CLASS (klass), GTK_ACCESSIBLE_ROLE_PRESENTATION);
}

static void
bb_box_key_init (BbBoxKey *self)
{
  gtk_widget_set_size_request (GTK_WIDGET (self), WIDTH, HEIGHT);
  gtk_widget_set_valign (GTK_WIDGET (self), GTK_ALIGN_CENTER);
}

/**
 * bb_box_key_set:
 * @self: a key
 * @line: the line that is explained
 * @ground: the garment's colour
 */
void
bb_box_key_set (BbBoxKey      *self,
                BbBoxLine      line,
                const GdkRGBA *ground)
{
  g_return_if_fail (BB_IS_BOX_KEY (self) && ground != NULL);

  self->line = line;
  self->ground = *ground;
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

/**
 * bb_box_key_stroke_seam:
 * @cr: where to draw, with a path in pixels, which is kept
 * @line: the line that will be drawn along the path
 * @ground: the garment's colour
 *
 * Draws a seam of the garment's colour, which keeps a line apart from what is printed.
 */
void
bb_box_key_stroke_seam (cairo_t       *cr,
                        BbBoxLine      line,
                        const GdkRGBA *ground)
{
  const GdkRGBA seam = { ground->red, ground->green, ground->blue, 0.65f };

  gdk_cairo_set_source_rgba (cr, &seam);
  cairo_set_line_width (cr, lines[line].width + 2);
  cairo_stroke_preserve (cr);
}

/**
 * bb_box_key_stroke:
 * @cr: where to draw, with a path in pixels
 * @line: which line
 * @ground: the garment's colour
 *
 * Draws a line along the path.
 */
void
bb_box_key_stroke (cairo_t       *cr,
                   BbBoxLine      line,
                   const GdkRGBA *ground)
{
  const gboolean on_dark = bb_contrast_wants_white_text ((double) ground->red, (double) ground->green,
                                                         (double) ground->blue);

  cairo_set_dash (cr, lines[line].dashes, lines[line].n_dashes, 0);
  gdk_cairo_set_source_rgba (cr, &lines[line].colours[on_dark ? 1 : 0]);
  cairo_set_line_width (cr, lines[line].width);
  cairo_stroke (cr);
  cairo_set_dash (cr, NULL, 0, 0);
}
