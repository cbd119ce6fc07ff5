/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-report"

#include "bb-chart.h"

#include <glib/gi18n-lib.h>

/**
 * bb_chart_new:
 * @title: (nullable): what it shows
 * @across: (transfer full): the axis below
 * @up: (transfer full): the axis beside
 *
 * Returns: (transfer full): a chart without layers
 */
BbChart *
bb_chart_new (const char *title,
              BbAxis     *across,
              BbAxis     *up)
{
  BbChart *self = g_atomic_rc_box_new0 (BbChart);

  self->title = g_strdup (title);
  self->empty = g_strdup (_("There is nothing to show yet."));
  self->across = across;
  self->up = up;
  self->layers = g_ptr_array_new_with_free_func ((GDestroyNotify) bb_layer_free);

  return self;
}

static void
clear_chart (gpointer data)
{
  BbChart *self = data;

  g_free (self->title);
  g_free (self->caption);
  g_free (self->empty);
  bb_axis_free (self->across);
  bb_axis_free (self->up);
  g_ptr_array_unref (self->layers);
}

/**
 * bb_chart_ref:
 * @self: a chart
 *
 * Returns: (transfer full): @self
 */
BbChart *
bb_chart_ref (BbChart *self)
{
  return g_atomic_rc_box_acquire (self);
}

/**
 * bb_chart_unref:
 * @self: (transfer full): a chart
 */
void
bb_chart_unref (BbChart *self)
{
  g_atomic_rc_box_release_full (self, clear_chart);
}

/**
 * bb_chart_take_layer:
 * @self: a chart
 * @layer: (transfer full): a layer, to be drawn on those before it
 *
 * Returns: (transfer none): @layer
 */
BbLayer *
bb_chart_take_layer (BbChart *self,
                     BbLayer *layer)
{
  g_ptr_array_add (self->layers, layer);

  return layer;
}

/**
 * bb_chart_is_empty:
 * @self: a chart
 *
 * Returns: %TRUE if none of its layers has a point
 */
gboolean
bb_chart_is_empty (const BbChart *self)
{
  for (guint i = 0; i < self->layers->len; i++)
    {
      const BbLayer *layer = self->layers->pdata[i];

      if (layer->series != NULL && layer->series->points->len > 0)
        return FALSE;
    }

  return TRUE;
}
