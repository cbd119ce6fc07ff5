/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-report"

#include "bb-chart.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/* More than anyone listens to at a stretch; the others can be stepped through. */
#define MOST_SERIES 12

static const BbSeries *
get_series (const BbChart *self,
            int            layer)
{
  const BbSeries *series = layer >= 0 && layer < (int) self->layers->len
                             ? ((const BbLayer *) self->layers->pdata[layer])->series
                             : NULL;

  return series != NULL && series->points->len > 0 ? series : NULL;
}

static const BbPoint *
get_point (const BbSeries *series,
           int             point)
{
  return &g_array_index (series->points, BbPoint, CLAMP (point, 0, (int) series->points->len - 1));
}

static int
find_series (const BbChart *self,
             int            from,
             int            direction)
{
  for (int layer = from + direction; layer >= 0 && layer < (int) self->layers->len; layer += direction)
    if (get_series (self, layer) != NULL)
      return layer;

  return -1;
}

static int
find_nearest (const BbSeries *series,
              double          x)
{
  int nearest = 0;

  for (guint i = 1; i < series->points->len; i++)
    if (fabs (get_point (series, (int) i)->x - x) < fabs (get_point (series, nearest)->x - x))
      nearest = (int) i;

  return nearest;
}

static gboolean
step_aside (const BbChart *self,
            int            direction,
            BbChartSpot   *spot)
{
  int layer = find_series (self, spot->layer, direction);
  double x = 0.0;

  if (layer < 0)
    return FALSE;
  x = get_point (get_series (self, spot->layer), spot->point)->x;
  spot->point = find_nearest (get_series (self, layer), x);
  spot->layer = layer;

  return TRUE;
}

static gboolean
step_along (const BbSeries *series,
            int             point,
            BbChartSpot    *spot)
{
  if (point < 0 || point >= (int) series->points->len || point == spot->point)
    return FALSE;
  spot->point = point;

  return TRUE;
}

/**
 * bb_chart_step:
 * @self: a chart
 * @step: where to
 * @spot: (inout): a point; from none every step leads to the first of the chart
 *
 * Returns: %TRUE if @spot is another one now
 */
gboolean
bb_chart_step (const BbChart *self,
               BbChartStep    step,
               BbChartSpot   *spot)
{
  const BbSeries *series = get_series (self, spot->layer);

  if (series == NULL)
    {
      int first = find_series (self, -1, 1);

      if (first >= 0)
        *spot = (BbChartSpot) { first, 0 };
      return first >= 0;
    }

  switch (step)
    {
    case BB_CHART_NEXT:
      return step_along (series, spot->point + 1, spot);
    case BB_CHART_PREVIOUS:
      return step_along (series, spot->point - 1, spot);
    case BB_CHART_FIRST:
      return step_along (series, 0, spot);
    case BB_CHART_LAST:
      return step_along (series, (int) series->points->len - 1, spot);
    case BB_CHART_NEXT_SERIES:
      return step_aside (self, 1, spot);
    case BB_CHART_PREVIOUS_SERIES:
      return step_aside (self, -1, spot);
    default:
      g_return_val_if_reached (FALSE);
    }
}

static char *
format_interval (const BbChart *self,
                 const BbPoint *point)
{
  g_autofree char *low = NULL;
  g_autofree char *high = NULL;

  if (isnan (point->low) || isnan (point->high))
    return NULL;
  low = bb_axis_format (self->up, point->low);
  high = bb_axis_format (self->up, point->high);

  /* Translators: the ends of an interval, like "from 34.5 % to 91.2 %". */
  return g_strdup_printf (_("from %s to %s"), low, high);
}

/**
 * bb_chart_describe_spot:
 * @self: a chart
 * @spot: one of its points
 *
 * Returns: (transfer full) (nullable): what a person reads off there: series, values with their units, interval and
 *   note, on lines of their own; %NULL for no point
 */
char *
bb_chart_describe_spot (const BbChart     *self,
                        const BbChartSpot *spot)
{
  const BbSeries *series = get_series (self, spot->layer);
  const BbPoint *point = NULL;
  g_autoptr (GPtrArray) lines = NULL;

  if (series == NULL)
    return NULL;

  point = get_point (series, spot->point);
  lines = g_ptr_array_new_with_free_func (g_free);
  if (series->name != NULL)
    g_ptr_array_add (lines, g_strdup (series->name));
  g_ptr_array_add (lines, bb_axis_format (self->across, point->x));
  g_ptr_array_add (lines, bb_axis_format (self->up, point->y));
  if (!isnan (point->low) && !isnan (point->high))
    g_ptr_array_add (lines, format_interval (self, point));
  if (point->note != NULL)
    g_ptr_array_add (lines, g_strdup (point->note));
  g_ptr_array_add (lines, NULL);

  return g_strjoinv ("\n", (GStrv) lines->pdata);
}

static void
append_series (GString        *out,
               const BbChart  *self,
               const BbSeries *series)
{
  const BbPoint *first = get_point (series, 0);
  const BbPoint *last = get_point (series, (int) series->points->len - 1);
  g_autofree char *first_x = bb_axis_format (self->across, first->x);
  g_autofree char *first_y = bb_axis_format (self->up, first->y);
  g_autofree char *last_x = bb_axis_format (self->across, last->x);
  g_autofree char *last_y = bb_axis_format (self->up, last->y);

  g_string_append_c (out, '\n');
  if (series->points->len == 1)
    /* Translators: a series, then a value across and a value up: "R.3: 20 cycles, grade 4". */
    g_string_append_printf (out, _("%s: %s, %s"), series->name, first_x, first_y);
  else
    /* Translators: a series, how many points it has, and its first and last one. */
    g_string_append_printf (out, ngettext ("%s, %u point: from %s, %s to %s, %s",
                                           "%s, %u points: from %s, %s to %s, %s", series->points->len),
                            series->name, series->points->len, first_x, first_y, last_x, last_y);
}

/**
 * bb_chart_describe:
 * @self: a chart
 *
 * Returns: (transfer full): what a person who can't see it has to hear: title, axes, each series from where to where,
 *   and the caption
 */
char *
bb_chart_describe (const BbChart *self)
{
  g_autoptr (GString) out = g_string_new (self->title);
  g_autofree char *across = bb_axis_dup_heading (self->across);
  g_autofree char *up = bb_axis_dup_heading (self->up);
  guint n = 0;

  if (self->title != NULL)
    g_string_append (out, "\n");
  if (bb_chart_is_empty (self))
    {
      g_string_append (out, self->empty);
      return g_string_free (g_steal_pointer (&out), FALSE);
    }

  /* Translators: the headings of the two axes of a chart. */
  g_string_append_printf (out, _("Across: %s. Up: %s."), across, up);
  for (guint i = 0; i < self->layers->len; i++)
    {
      const BbSeries *series = get_series (self, (int) i);

      if (series != NULL && series->name != NULL && n++ < MOST_SERIES)
        append_series (out, self, series);
    }
  if (n > MOST_SERIES)
    g_string_append_printf (out, ngettext ("\nand %u more series", "\nand %u more series", n - MOST_SERIES),
                            n - MOST_SERIES);
  if (self->caption != NULL)
    g_string_append_printf (out, "\n%s", self->caption);

  return g_string_free (g_steal_pointer (&out), FALSE);
}
