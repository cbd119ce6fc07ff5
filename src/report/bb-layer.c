/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-report"

#include "bb-layer.h"

#include <math.h>

/**
 * bb_layer_free:
 * @self: (transfer full): a layer
 */
void
bb_layer_free (BbLayer *self)
{
  if (self->free != NULL)
    self->free (self);
  g_clear_pointer (&self->series, bb_series_free);
  g_free (self);
}

/**
 * bb_plot_get_x:
 * @self: a plot
 * @value: a value of the axis below it
 *
 * Returns: where it is drawn
 */
double
bb_plot_get_x (const BbPlot *self,
               double        value)
{
  return self->x + self->width * bb_axis_map (self->across, value);
}

/**
 * bb_plot_get_y:
 * @self: a plot
 * @value: a value of the axis beside it
 *
 * Returns: where it is drawn; values rise upwards
 */
double
bb_plot_get_y (const BbPlot *self,
               double        value)
{
  return self->y + self->height * (1.0 - bb_axis_map (self->up, value));
}

/**
 * bb_ink_set:
 * @ink: a colour
 * @alpha: how much of its cover is wanted, from 0 to 1
 * @cr: what to draw with it
 */
void
bb_ink_set (const BbInk *ink,
            double       alpha,
            cairo_t     *cr)
{
  cairo_set_source_rgba (cr, ink->red, ink->green, ink->blue, ink->alpha * alpha);
}

static void
trace_polygon (cairo_t *cr,
               double   x,
               double   y,
               double   radius,
               guint    n_corners,
               double   turn)
{
  for (guint i = 0; i < n_corners; i++)
    {
      double angle = turn + 2.0 * G_PI * i / n_corners;

      cairo_line_to (cr, x + radius * sin (angle), y - radius * cos (angle));
    }
  cairo_close_path (cr);
}

static void
trace_strokes (cairo_t *cr,
               double   x,
               double   y,
               double   radius,
               double   turn)
{
  for (guint i = 0; i < 2; i++)
    {
      double angle = turn + G_PI * i / 2.0;

      cairo_move_to (cr, x - radius * sin (angle), y + radius * cos (angle));
      cairo_line_to (cr, x + radius * sin (angle), y - radius * cos (angle));
    }
}

/**
 * bb_marker_draw:
 * @marker: a shape
 * @cr: where to draw, with colour and line width set
 * @x: its middle
 * @y: its middle
 * @radius: half its width
 */
void
bb_marker_draw (BbMarker  marker,
                cairo_t  *cr,
                double    x,
                double    y,
                double    radius)
{
  cairo_new_path (cr);
  switch (marker)
    {
    case BB_MARKER_CIRCLE:
    case BB_MARKER_RING:
      cairo_arc (cr, x, y, radius * 0.95, 0, 2.0 * G_PI);
      break;
    case BB_MARKER_SQUARE:
    case BB_MARKER_FRAME:
      trace_polygon (cr, x, y, radius * 1.2, 4, G_PI / 4.0);
      break;
    case BB_MARKER_TRIANGLE:
      trace_polygon (cr, x, y, radius * 1.25, 3, 0.0);
      break;
    case BB_MARKER_DIAMOND:
      trace_polygon (cr, x, y, radius * 1.25, 4, 0.0);
      break;
    case BB_MARKER_CROSS:
      trace_strokes (cr, x, y, radius * 1.5, G_PI / 4.0);
      break;
    case BB_MARKER_PLUS:
      trace_strokes (cr, x, y, radius * 1.3, 0.0);
      break;
    case BB_MARKER_NONE:
    default:
      return;
    }

  if (marker == BB_MARKER_CIRCLE || marker == BB_MARKER_SQUARE || marker == BB_MARKER_TRIANGLE ||
      marker == BB_MARKER_DIAMOND)
    cairo_fill (cr);
  else
    cairo_stroke (cr);
}

/**
 * bb_stroke_set:
 * @stroke: how a line is broken
 * @line: its width
 * @cr: what to draw with it
 */
void
bb_stroke_set (BbStroke  stroke,
               double    line,
               cairo_t  *cr)
{
  const double dashes[] = { line * 5.0, line * 3.5 };
  const double dots[] = { line * 1.2, line * 2.6 };

  cairo_set_line_width (cr, line);
  cairo_set_line_join (cr, CAIRO_LINE_JOIN_ROUND);
  if (stroke == BB_STROKE_DASHED)
    cairo_set_dash (cr, dashes, G_N_ELEMENTS (dashes), 0);
  else if (stroke == BB_STROKE_DOTTED)
    cairo_set_dash (cr, dots, G_N_ELEMENTS (dots), 0);
  else
    cairo_set_dash (cr, NULL, 0, 0);
}
