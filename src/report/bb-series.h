/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/**
 * BbMarker:
 *
 * The shape of a point. Series are told apart by it first, and by their colour only besides.
 */
typedef enum {
  BB_MARKER_NONE = 0,
  BB_MARKER_CIRCLE,
  BB_MARKER_SQUARE,
  BB_MARKER_TRIANGLE,
  BB_MARKER_DIAMOND,
  BB_MARKER_RING,
  BB_MARKER_FRAME,
  BB_MARKER_CROSS,
  BB_MARKER_PLUS,
} BbMarker;

/**
 * BbStroke:
 *
 * How the points of a series are joined.
 */
typedef enum {
  BB_STROKE_NONE = 0,
  BB_STROKE_SOLID,
  BB_STROKE_DASHED,
  BB_STROKE_DOTTED,
} BbStroke;

/**
 * BbPoint:
 * @x: its value across
 * @y: its value up
 * @low: lower end of its interval; NaN where there is none
 * @high: upper end
 * @marker: its own shape, or %BB_MARKER_NONE for that of its series
 * @note: (nullable): what else is to be said of it
 *
 * One point.
 */
typedef struct {
  double x;
  double y;
  double low;
  double high;
  BbMarker marker;
  char *note;
} BbPoint;

/**
 * BbSeries:
 * @name: what it is, as the legend says it
 * @marker: the shape of its points
 * @stroke: how they are joined
 * @ink: which of the colours of a style
 * @points: (element-type BbPoint): the points, in the order in which they are joined and read
 *
 * Points that belong together.
 */
typedef struct {
  char *name;
  BbMarker marker;
  BbStroke stroke;
  guint ink;
  GArray *points;
} BbSeries;

BbSeries *bb_series_new       (const char  *name,
                               BbMarker     marker,
                               BbStroke     stroke,
                               guint        ink);
void      bb_series_free      (BbSeries    *self);
BbPoint  *bb_series_add       (BbSeries    *self,
                               double       x,
                               double       y);
BbMarker  bb_marker_of_series (guint        index);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (BbSeries, bb_series_free)

G_END_DECLS
