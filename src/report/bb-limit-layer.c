/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-report"

#include "bb-layer.h"

#include "bb-lettering.h"

#define LETTERS_SHARE 0.88
#define GAP_SHARE 0.25

typedef struct {
  BbLayer parent;
  double value;
  gboolean upright;
  char *label;
} LimitLayer;

static void
draw_label (const LimitLayer *self,
            cairo_t          *cr,
            const BbPlot     *plot)
{
  double gap = plot->style->size * GAP_SHARE;
  g_autoptr (PangoLayout) label = bb_lettering_new (plot->letters, self->label, plot->style->font,
                                                    plot->style->size * LETTERS_SHARE, FALSE, -1);
  double height = bb_lettering_get_height (label);
  double x = plot->x + 2.0 * gap;
  double y = plot->y + plot->height - height - gap;

  /* At the foot of an upright line, on its left; above one that lies, where the axis is: but inside the plot. */
  if (self->upright)
    x = MAX (bb_plot_get_x (plot, self->value) - bb_lettering_get_width (label) - gap, x);
  else
    {
      y = bb_plot_get_y (plot, self->value) - height - gap / 2.0;
      if (y < plot->y)
        y = bb_plot_get_y (plot, self->value) + gap / 2.0;
    }
  bb_lettering_show (label, cr, x, y);
}

static void
draw_limit (BbLayer      *layer,
            cairo_t      *cr,
            const BbPlot *plot)
{
  const LimitLayer *self = (const LimitLayer *) layer;

  bb_ink_set (&plot->style->text, 0.75, cr);
  bb_stroke_set (BB_STROKE_DASHED, plot->style->line, cr);
  if (self->upright)
    {
      cairo_move_to (cr, bb_plot_get_x (plot, self->value), plot->y);
      cairo_line_to (cr, bb_plot_get_x (plot, self->value), plot->y + plot->height);
    }
  else
    {
      cairo_move_to (cr, plot->x, bb_plot_get_y (plot, self->value));
      cairo_line_to (cr, plot->x + plot->width, bb_plot_get_y (plot, self->value));
    }
  cairo_stroke (cr);
  if (self->label != NULL)
    draw_label (self, cr, plot);
}

static void
free_limit (BbLayer *layer)
{
  g_free (((LimitLayer *) layer)->label);
}

/**
 * bb_limit_layer_new:
 * @value: where the limit is
 * @upright: %TRUE for a value of the axis below, %FALSE for one of the axis beside
 * @label: (nullable): what is written at the line
 *
 * Returns: (transfer full): a layer with a broken line right across
 */
BbLayer *
bb_limit_layer_new (double      value,
                    gboolean    upright,
                    const char *label)
{
  LimitLayer *self = g_new0 (LimitLayer, 1);

  self->parent.draw = draw_limit;
  self->parent.free = free_limit;
  self->value = value;
  self->upright = upright;
  self->label = g_strdup (label);

  return &self->parent;
}
