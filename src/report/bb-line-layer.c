/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-report"

#include "bb-layer.h"

#include <math.h>

/* Of a style's letters: half the width of a marker, and of the foot of a whisker. */
#define MARKER_SHARE 0.3
#define FOOT_SHARE 0.45

/* How much heavier than a line is one that stands out, and how much larger its markers. */
#define HEAVY 2.0
#define LARGE 1.25

static const BbPoint *
get_point (const BbSeries *series,
           guint           i)
{
  return &g_array_index (series->points, BbPoint, i);
}

static const BbInk *
get_ink (const BbLayer *self,
         const BbPlot  *plot)
{
  return bb_chart_style_get_ink (plot->style, self->series->ink);
}

static double
get_line (const BbLayer *self,
          const BbPlot  *plot)
{
  return plot->style->line * (self->stands_out ? HEAVY : 1.0);
}

static double
x_of (const BbLayer *self,
      const BbPlot  *plot,
      const BbPoint *point)
{
  return bb_plot_get_x (plot, point->x) + self->shift * plot->style->line;
}

static void
draw_markers (BbLayer      *self,
              cairo_t      *cr,
              const BbPlot *plot)
{
  bb_ink_set (get_ink (self, plot), 1.0, cr);
  bb_stroke_set (BB_STROKE_SOLID, plot->style->line, cr);
  for (guint i = 0; i < self->series->points->len; i++)
    {
      const BbPoint *point = get_point (self->series, i);
      BbMarker marker = point->marker != BB_MARKER_NONE ? point->marker : self->series->marker;

      bb_marker_draw (marker, cr, x_of (self, plot, point), bb_plot_get_y (plot, point->y),
                      plot->style->size * MARKER_SHARE * (self->stands_out ? LARGE : 1.0));
    }
}

static void
draw_whiskers (BbLayer      *self,
               cairo_t      *cr,
               const BbPlot *plot)
{
  double foot = plot->style->size * FOOT_SHARE;

  bb_stroke_set (BB_STROKE_SOLID, plot->style->line, cr);
  for (guint i = 0; i < self->series->points->len; i++)
    {
      const BbPoint *point = get_point (self->series, i);
      const double ends[] = { point->low, point->high };
      double x = x_of (self, plot, point);

      if (isnan (point->low) || isnan (point->high))
        continue;
      cairo_move_to (cr, x, bb_plot_get_y (plot, point->low));
      cairo_line_to (cr, x, bb_plot_get_y (plot, point->high));
      for (guint e = 0; e < G_N_ELEMENTS (ends); e++)
        {
          cairo_move_to (cr, x - foot, bb_plot_get_y (plot, ends[e]));
          cairo_line_to (cr, x + foot, bb_plot_get_y (plot, ends[e]));
        }
      cairo_stroke (cr);
    }
}

static void
draw_line (BbLayer      *self,
           cairo_t      *cr,
           const BbPlot *plot)
{
  bb_ink_set (get_ink (self, plot), 1.0, cr);
  draw_whiskers (self, cr, plot);
  if (self->series->stroke != BB_STROKE_NONE)
    {
      bb_stroke_set (self->series->stroke, get_line (self, plot), cr);
      for (guint i = 0; i < self->series->points->len; i++)
        cairo_line_to (cr, x_of (self, plot, get_point (self->series, i)),
                       bb_plot_get_y (plot, get_point (self->series, i)->y));
      cairo_stroke (cr);
    }
  draw_markers (self, cr, plot);
}

/* From each point to below or above the next, which is reached at its place. */
static void
draw_steps_of_band (BbLayer      *self,
                    cairo_t      *cr,
                    const BbPlot *plot)
{
  bb_ink_set (get_ink (self, plot), plot->style->band_alpha, cr);
  for (guint i = 0; i + 1 < self->series->points->len; i++)
    {
      const BbPoint *point = get_point (self->series, i);
      double x = x_of (self, plot, point);
      double y = bb_plot_get_y (plot, point->high);

      if (!isnan (point->low) && !isnan (point->high))
        cairo_rectangle (cr, x, y, x_of (self, plot, get_point (self->series, i + 1)) - x,
                         bb_plot_get_y (plot, point->low) - y);
    }
  cairo_fill (cr);
}

static void
draw_steps (BbLayer      *self,
            cairo_t      *cr,
            const BbPlot *plot)
{
  draw_steps_of_band (self, cr, plot);
  bb_ink_set (get_ink (self, plot), 1.0, cr);
  bb_stroke_set (self->series->stroke, plot->style->line, cr);
  for (guint i = 0; i < self->series->points->len; i++)
    {
      double x = x_of (self, plot, get_point (self->series, i));

      if (i > 0)
        cairo_line_to (cr, x, bb_plot_get_y (plot, get_point (self->series, i - 1)->y));
      cairo_line_to (cr, x, bb_plot_get_y (plot, get_point (self->series, i)->y));
    }
  cairo_stroke (cr);
  draw_markers (self, cr, plot);
}

static BbLayer *
layer_new (BbSeries *series,
           void    (*draw) (BbLayer      *self,
                            cairo_t      *cr,
                            const BbPlot *plot))
{
  BbLayer *self = g_new0 (BbLayer, 1);

  self->series = series;
  self->in_legend = series->name != NULL;
  self->draw = draw;

  return self;
}

/**
 * bb_line_layer_new:
 * @series: (transfer full): points
 *
 * Returns: (transfer full): a layer that joins the points in their order and marks each, with a whisker where it has an
 *   interval
 */
BbLayer *
bb_line_layer_new (BbSeries *series)
{
  return layer_new (series, draw_line);
}

/**
 * bb_step_layer_new:
 * @series: (transfer full): points, by rising values across
 *
 * Returns: (transfer full): a layer whose line stays at each point until the next, with a band where the points have an
 *   interval
 */
BbLayer *
bb_step_layer_new (BbSeries *series)
{
  return layer_new (series, draw_steps);
}
