/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <pango/pangocairo.h>

#include "bb-axis.h"
#include "bb-chart-style.h"
#include "bb-series.h"

G_BEGIN_DECLS

/**
 * BbPlot:
 * @x: left edge
 * @y: upper edge
 * @width: width
 * @height: height
 * @across: the axis below it
 * @up: the axis beside it
 * @style: how it looks
 * @letters: what its words are laid out in
 *
 * The rectangle that layers draw in.
 */
typedef struct {
  double x;
  double y;
  double width;
  double height;
  const BbAxis *across;
  const BbAxis *up;
  const BbChartStyle *style;
  PangoContext *letters;
} BbPlot;

typedef struct _BbLayer BbLayer;

/**
 * BbLayer:
 * @series: (nullable): what can be pointed at and read out; the layer's own
 * @in_legend: whether the legend names the series, also where it has no points and only says what a shape means
 * @shift: how far to the right of their place its points are drawn, in lines' widths, so that equal series don't hide
 *   each other; their height is always what was read
 * @stands_out: whether it is drawn heavier than the others
 * @draw: draws it
 * @free: (nullable): frees what it has beside the series
 *
 * One layer of a chart: it draws, and has points. Its kinds put this first in a struct of their own.
 */
struct _BbLayer {
  BbSeries *series;
  gboolean in_legend;
  double shift;
  gboolean stands_out;
  void (*draw) (BbLayer      *self,
                cairo_t      *cr,
                const BbPlot *plot);
  void (*free) (BbLayer *self);
};

/**
 * BbLevel:
 * @value: the value along the line
 * @label: what is written on it
 * @is_limit: whether it is what has to be reached: drawn stronger
 *
 * A contour.
 */
typedef struct {
  double value;
  const char *label;
  gboolean is_limit;
} BbLevel;

/**
 * BbGrid:
 * @n_across: how many columns
 * @n_up: how many rows
 * @across: (array length=n_across): values of the columns, rising
 * @up: (array length=n_up): values of the rows, rising
 * @values: what was found there, row by row from the lowest; NaN where nothing was
 *
 * Values over a field of two settings.
 */
typedef struct {
  guint n_across;
  guint n_up;
  const double *across;
  const double *up;
  const double *values;
} BbGrid;

/* bb-layer.c */
void     bb_layer_free       (BbLayer            *self);
double   bb_plot_get_x       (const BbPlot       *self,
                              double              value);
double   bb_plot_get_y       (const BbPlot       *self,
                              double              value);
void     bb_ink_set          (const BbInk        *ink,
                              double              alpha,
                              cairo_t            *cr);
void     bb_marker_draw      (BbMarker            marker,
                              cairo_t            *cr,
                              double              x,
                              double              y,
                              double              radius);
void     bb_stroke_set       (BbStroke            stroke,
                              double              line,
                              cairo_t            *cr);

/* bb-line-layer.c, bb-limit-layer.c, bb-heat-layer.c */
BbLayer *bb_line_layer_new   (BbSeries           *series);
BbLayer *bb_step_layer_new   (BbSeries           *series);
BbLayer *bb_limit_layer_new  (double              value,
                              gboolean            upright,
                              const char         *label);
BbLayer *bb_heat_layer_new   (const char         *name,
                              const BbGrid       *grid,
                              const BbLevel      *levels,
                              guint               n_levels);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (BbLayer, bb_layer_free)

G_END_DECLS
