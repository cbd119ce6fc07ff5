/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-report"

#include "bb-series.h"

#include <math.h>

static void
clear_point (gpointer data)
{
  g_free (((BbPoint *) data)->note);
}

/**
 * bb_series_new:
 * @name: what it is
 * @marker: the shape of its points
 * @stroke: how they are joined
 * @ink: which of the colours of a style; counted from 0, and begun again after the last
 *
 * Returns: (transfer full): a series without points
 */
BbSeries *
bb_series_new (const char *name,
               BbMarker    marker,
               BbStroke    stroke,
               guint       ink)
{
  BbSeries *self = g_new0 (BbSeries, 1);

  self->name = g_strdup (name);
  self->marker = marker;
  self->stroke = stroke;
  self->ink = ink;
  self->points = g_array_new (FALSE, TRUE, sizeof (BbPoint));
  g_array_set_clear_func (self->points, clear_point);

  return self;
}

/**
 * bb_series_free:
 * @self: (transfer full): a series
 */
void
bb_series_free (BbSeries *self)
{
  g_free (self->name);
  g_array_unref (self->points);
  g_free (self);
}

/**
 * bb_series_add:
 * @self: a series
 * @x: the point's value across
 * @y: its value up
 *
 * Returns: (transfer none): the new point, to be given an interval, a shape or a note; it moves when another is added
 */
BbPoint *
bb_series_add (BbSeries *self,
               double    x,
               double    y)
{
  BbPoint point = { .x = x, .y = y, .low = (double) NAN, .high = (double) NAN };

  g_array_append_val (self->points, point);

  return &g_array_index (self->points, BbPoint, self->points->len - 1);
}

/**
 * bb_marker_of_series:
 * @index: which series of a chart, counted from 0
 *
 * Returns: a shape that tells it from its neighbours; crosses are left for points that mean something else
 */
BbMarker
bb_marker_of_series (guint index)
{
  const BbMarker markers[] = {
    BB_MARKER_CIRCLE, BB_MARKER_SQUARE, BB_MARKER_TRIANGLE, BB_MARKER_DIAMOND, BB_MARKER_RING, BB_MARKER_FRAME,
  };

  return markers[index % G_N_ELEMENTS (markers)];
}
