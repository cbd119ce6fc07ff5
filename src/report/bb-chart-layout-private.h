/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bb-chart.h"

G_BEGIN_DECLS

/**
 * BbPlaced:
 * @letters: words
 * @x: their left edge
 * @y: their upper edge
 * @layer: (nullable): in the legend, the layer whose sample stands left of them
 *
 * Words in their place.
 */
typedef struct {
  PangoLayout *letters;
  double x;
  double y;
  const BbLayer *layer;
} BbPlaced;

/**
 * BbChartLayout:
 * @plot: where the layers are drawn
 * @words: (element-type BbPlaced): every word around it
 * @sample: the width of a sample of the legend
 *
 * Where everything of a chart stands, at one size.
 */
typedef struct {
  BbPlot plot;
  GArray *words;
  double sample;
} BbChartLayout;

BbChartLayout *_bb_chart_layout_new  (const BbChart       *chart,
                                      double               width,
                                      double               height,
                                      const BbChartStyle  *style);
void           _bb_chart_layout_free (BbChartLayout       *self);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (BbChartLayout, _bb_chart_layout_free)

G_END_DECLS
