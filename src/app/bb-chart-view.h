/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <adwaita.h>

#include "bb-chart.h"

G_BEGIN_DECLS

/**
 * BbChartView:
 *
 * Shows a chart. The pointer reads off the nearest point; so do the keys once it has the focus: Left and Right along a
 * series, Up and Down between series, Home and End to its ends, Escape to none. What is read off is drawn beside the
 * point and is the view's accessible label, so that it is spoken; the accessible description tells the whole chart. The
 * menu (the button in its corner, the right button of the mouse, Menu or Shift+F10) saves it as PNG or PDF, or copies
 * it as a picture or in words.
 *
 * Signal `say` (text): what a person has to be told, like where a file could not be written.
 */
#define BB_TYPE_CHART_VIEW (bb_chart_view_get_type ())
G_DECLARE_FINAL_TYPE (BbChartView, bb_chart_view, BB, CHART_VIEW, GtkWidget)

GtkWidget *bb_chart_view_new       (void);
void       bb_chart_view_set_chart (BbChartView *self,
                                    BbChart     *chart);
BbChart   *bb_chart_view_get_chart (BbChartView *self);

G_END_DECLS
