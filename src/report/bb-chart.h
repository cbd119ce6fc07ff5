/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bb-layer.h"

G_BEGIN_DECLS

/**
 * BbChartSpot:
 * @layer: which layer, counted from 0; -1 for none
 * @point: which point of its series
 *
 * A point of a chart that is looked at.
 */
typedef struct {
  int layer;
  int point;
} BbChartSpot;

#define BB_CHART_NO_SPOT ((BbChartSpot) { -1, -1 })

/**
 * BbChartStep:
 * @BB_CHART_NEXT: the next point of the series, as it is joined
 * @BB_CHART_PREVIOUS: the one before
 * @BB_CHART_NEXT_SERIES: the point of the next series that is nearest across
 * @BB_CHART_PREVIOUS_SERIES: the same of the series before
 * @BB_CHART_FIRST: the first point of the series
 * @BB_CHART_LAST: the last
 *
 * A step from one point to another.
 */
typedef enum {
  BB_CHART_NEXT = 1,
  BB_CHART_PREVIOUS,
  BB_CHART_NEXT_SERIES,
  BB_CHART_PREVIOUS_SERIES,
  BB_CHART_FIRST,
  BB_CHART_LAST,
} BbChartStep;

/**
 * BbChart:
 * @title: (nullable): what it shows
 * @caption: (nullable): what that means, in sentences below it
 * @empty: what stands in place of a plot that has no points
 * @across: the axis below
 * @up: the axis beside
 * @layers: (element-type BbLayer): what is drawn, from the back to the front
 *
 * A chart: drawn alike on a screen, on paper and into files, pointed at, and read out point by point. It is built by
 * one owner; once it has more it does not change, so that several threads can draw it.
 */
typedef struct {
  char *title;
  char *caption;
  char *empty;
  BbAxis *across;
  BbAxis *up;
  GPtrArray *layers;
} BbChart;

/* bb-chart.c */
BbChart  *bb_chart_new           (const char          *title,
                                  BbAxis              *across,
                                  BbAxis              *up);
BbChart  *bb_chart_ref           (BbChart             *self);
void      bb_chart_unref         (BbChart             *self);
BbLayer  *bb_chart_take_layer    (BbChart             *self,
                                  BbLayer             *layer);
gboolean  bb_chart_is_empty      (const BbChart       *self);

/* bb-chart-draw.c */
void      bb_chart_draw          (const BbChart       *self,
                                  cairo_t             *cr,
                                  double               width,
                                  double               height,
                                  const BbChartStyle  *style,
                                  const BbChartSpot   *spot);
gboolean  bb_chart_find_spot     (const BbChart       *self,
                                  double               width,
                                  double               height,
                                  const BbChartStyle  *style,
                                  double               x,
                                  double               y,
                                  BbChartSpot         *spot);

/* bb-chart-read.c */
gboolean  bb_chart_step          (const BbChart       *self,
                                  BbChartStep          step,
                                  BbChartSpot         *spot);
char     *bb_chart_describe      (const BbChart       *self);
char     *bb_chart_describe_spot (const BbChart       *self,
                                  const BbChartSpot   *spot);

/* bb-chart-save.c */
GBytes   *bb_chart_to_png        (const BbChart       *self,
                                  double               width,
                                  double               height,
                                  double               scale,
                                  GError             **error);
GBytes   *bb_chart_to_pdf        (const BbChart       *self,
                                  double               width,
                                  double               height,
                                  GError             **error);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (BbChart, bb_chart_unref)

G_END_DECLS
