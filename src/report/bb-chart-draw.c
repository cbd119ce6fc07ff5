/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-report"

#include "bb-chart.h"

#include <math.h>

#include "bb-chart-layout-private.h"
#include "bb-lettering.h"

/* In the height of a style's letters: how near a pointer has to come to a point, and what surrounds one. */
#define REACH 2.0
#define RING 0.62
#define BOX_GAP 0.5

static void
draw_grid (const BbPlot *plot,
           cairo_t      *cr)
{
  cairo_set_line_width (cr, plot->style->line * 0.6);
  cairo_set_dash (cr, NULL, 0, 0);
  bb_ink_set (&plot->style->grid, 1.0, cr);
  for (guint i = 0; i < plot->up->ticks->len; i++)
    {
      double y = bb_plot_get_y (plot, g_array_index (plot->up->ticks, BbTick, i).value);

      cairo_move_to (cr, plot->x, y);
      cairo_line_to (cr, plot->x + plot->width, y);
    }
  cairo_stroke (cr);
}

static void
draw_axes (const BbPlot *plot,
           cairo_t      *cr)
{
  double tick = plot->style->size * 0.25;

  cairo_set_line_width (cr, plot->style->line * 0.7);
  cairo_set_dash (cr, NULL, 0, 0);
  bb_ink_set (&plot->style->text, 0.8, cr);
  cairo_move_to (cr, plot->x, plot->y);
  cairo_line_to (cr, plot->x, plot->y + plot->height);
  cairo_line_to (cr, plot->x + plot->width, plot->y + plot->height);
  for (guint i = 0; i < plot->across->ticks->len; i++)
    {
      double x = bb_plot_get_x (plot, g_array_index (plot->across->ticks, BbTick, i).value);

      cairo_move_to (cr, x, plot->y + plot->height);
      cairo_line_to (cr, x, plot->y + plot->height + tick);
    }
  cairo_stroke (cr);
}

/* A sample is drawn as the layer draws: a plot of its own, as wide as the sample, with one point in its middle. */
static void
draw_sample (const BbPlaced     *word,
             const BbPlot       *plot,
             double              width,
             cairo_t            *cr)
{
  const BbSeries *series = word->layer->series;
  const BbChartStyle *style = plot->style;
  double y = word->y + bb_lettering_get_height (word->letters) / 2.0;
  double left = word->x - width;
  double right = word->x - style->size * 0.5;

  bb_ink_set (bb_chart_style_get_ink (style, series->ink), 1.0, cr);
  if (series->stroke != BB_STROKE_NONE)
    {
      bb_stroke_set (series->stroke, style->line, cr);
      cairo_move_to (cr, left, y);
      cairo_line_to (cr, right, y);
      cairo_stroke (cr);
    }
  bb_stroke_set (BB_STROKE_SOLID, style->line, cr);
  bb_marker_draw (series->marker, cr, (left + right) / 2.0, y, style->size * 0.3);
}

static void
draw_words (const BbChartLayout *layout,
            cairo_t             *cr)
{
  for (guint i = 0; i < layout->words->len; i++)
    {
      const BbPlaced *word = &g_array_index (layout->words, BbPlaced, i);

      if (word->layer != NULL)
        draw_sample (word, &layout->plot, layout->sample, cr);
      bb_ink_set (&layout->plot.style->text, 1.0, cr);
      bb_lettering_show (word->letters, cr, word->x, word->y);
    }
}

static void
draw_layers (const BbChart *self,
             const BbPlot  *plot,
             cairo_t       *cr)
{
  /* A marker on the edge is drawn whole. */
  double room = plot->style->size * 0.9;

  cairo_save (cr);
  cairo_rectangle (cr, plot->x - room, plot->y - room, plot->width + 2.0 * room, plot->height + 2.0 * room);
  cairo_clip (cr);
  for (guint i = 0; i < self->layers->len; i++)
    {
      BbLayer *layer = self->layers->pdata[i];

      cairo_save (cr);
      layer->draw (layer, cr, plot);
      cairo_restore (cr);
    }
  cairo_restore (cr);
}

static void
draw_empty (const BbChart *self,
            const BbPlot  *plot,
            cairo_t       *cr)
{
  g_autoptr (PangoLayout) letters = bb_lettering_new (plot->letters, self->empty, plot->style->font, plot->style->size,
                                                      FALSE, plot->width);

  pango_layout_set_alignment (letters, PANGO_ALIGN_CENTER);
  bb_ink_set (&plot->style->text, 0.75, cr);
  bb_lettering_show (letters, cr, plot->x, plot->y + (plot->height - bb_lettering_get_height (letters)) / 2.0);
}

static const BbPoint *
find_point (const BbChart      *self,
            const BbPlot       *plot,
            const BbChartSpot  *spot,
            double             *x,
            double             *y)
{
  const BbLayer *layer = spot->layer >= 0 && spot->layer < (int) self->layers->len ? self->layers->pdata[spot->layer]
                                                                                   : NULL;
  const BbPoint *point = NULL;

  if (layer == NULL || layer->series == NULL || spot->point < 0 || spot->point >= (int) layer->series->points->len)
    return NULL;

  point = &g_array_index (layer->series->points, BbPoint, spot->point);
  *x = bb_plot_get_x (plot, point->x) + layer->shift * plot->style->line;
  *y = bb_plot_get_y (plot, point->y);

  return point;
}

/* Beside the point, on the side that has more room. */
static void
draw_box (const BbPlot *plot,
          const char   *text,
          double        x,
          double        y,
          cairo_t      *cr)
{
  double gap = plot->style->size * BOX_GAP;
  g_autoptr (PangoLayout) letters = bb_lettering_new (plot->letters, text, plot->style->font, plot->style->size, FALSE,
                                                      -1);
  double width = MIN (bb_lettering_get_width (letters), plot->width * 0.6) + 2.0 * gap;
  double height = 0.0;
  double left = x < plot->x + plot->width / 2.0 ? x + 2.0 * gap : x - width - 2.0 * gap;
  double top = 0.0;

  pango_layout_set_width (letters, (int) ((width - 2.0 * gap) * PANGO_SCALE));
  height = bb_lettering_get_height (letters) + 2.0 * gap;
  top = CLAMP (y - height / 2.0, plot->y, MAX (plot->y + plot->height - height, plot->y));
  cairo_rectangle (cr, left, top, width, height);
  bb_ink_set (&plot->style->paper, 0.96, cr);
  cairo_fill_preserve (cr);
  bb_ink_set (&plot->style->text, 0.5, cr);
  bb_stroke_set (BB_STROKE_SOLID, plot->style->line * 0.7, cr);
  cairo_stroke (cr);
  bb_ink_set (&plot->style->text, 1.0, cr);
  bb_lettering_show (letters, cr, left + gap, top + gap);
}

static void
draw_spot (const BbChart      *self,
           const BbPlot       *plot,
           const BbChartSpot  *spot,
           cairo_t            *cr)
{
  g_autofree char *text = bb_chart_describe_spot (self, spot);
  double x = 0.0;
  double y = 0.0;

  if (text == NULL || find_point (self, plot, spot, &x, &y) == NULL)
    return;

  bb_ink_set (&plot->style->text, 0.45, cr);
  bb_stroke_set (BB_STROKE_DOTTED, plot->style->line * 0.7, cr);
  cairo_move_to (cr, x, plot->y);
  cairo_line_to (cr, x, plot->y + plot->height);
  cairo_move_to (cr, plot->x, y);
  cairo_line_to (cr, plot->x + plot->width, y);
  cairo_stroke (cr);
  bb_ink_set (&plot->style->text, 1.0, cr);
  bb_stroke_set (BB_STROKE_SOLID, plot->style->line, cr);
  cairo_arc (cr, x, y, plot->style->size * RING, 0, 2.0 * G_PI);
  cairo_stroke (cr);
  draw_box (plot, text, x, y, cr);
}

/**
 * bb_chart_draw:
 * @self: a chart
 * @cr: where to draw, with the chart's corner at its origin
 * @width: how much room there is, in units of @cr
 * @height: how much room there is
 * @style: how it looks
 * @spot: (nullable): the point that is looked at, which is marked and read out beside it
 *
 * Draws a chart: title, plot, axes, legend and caption. With a plot of no points it says why.
 */
void
bb_chart_draw (const BbChart      *self,
               cairo_t            *cr,
               double              width,
               double              height,
               const BbChartStyle *style,
               const BbChartSpot  *spot)
{
  g_autoptr (BbChartLayout) layout = _bb_chart_layout_new (self, width, height, style);

  cairo_save (cr);
  pango_cairo_update_context (cr, layout->plot.letters);
  cairo_rectangle (cr, 0, 0, width, height);
  cairo_clip (cr);
  draw_grid (&layout->plot, cr);
  draw_axes (&layout->plot, cr);
  draw_words (layout, cr);
  if (bb_chart_is_empty (self))
    draw_empty (self, &layout->plot, cr);
  else
    draw_layers (self, &layout->plot, cr);
  if (spot != NULL)
    draw_spot (self, &layout->plot, spot, cr);
  cairo_restore (cr);
}

/**
 * bb_chart_find_spot:
 * @self: a chart
 * @width: as it was drawn
 * @height: as it was drawn
 * @style: as it was drawn
 * @x: a place on it
 * @y: a place on it
 * @spot: (out): the point that is nearest
 *
 * Returns: %TRUE if a point is near enough to be meant
 */
gboolean
bb_chart_find_spot (const BbChart      *self,
                    double              width,
                    double              height,
                    const BbChartStyle *style,
                    double              x,
                    double              y,
                    BbChartSpot        *spot)
{
  g_autoptr (BbChartLayout) layout = _bb_chart_layout_new (self, width, height, style);
  double nearest = style->size * REACH;

  *spot = BB_CHART_NO_SPOT;
  for (guint i = 0; i < self->layers->len; i++)
    {
      const BbLayer *layer = self->layers->pdata[i];

      for (guint p = 0; layer->series != NULL && p < layer->series->points->len; p++)
        {
          BbChartSpot candidate = { (int) i, (int) p };
          double px = 0.0;
          double py = 0.0;

          if (find_point (self, &layout->plot, &candidate, &px, &py) != NULL && hypot (px - x, py - y) < nearest)
            {
              nearest = hypot (px - x, py - y);
              *spot = candidate;
            }
        }
    }

  return spot->layer >= 0;
}
