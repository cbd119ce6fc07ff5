/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-report"

#include "bb-chart-layout-private.h"

#include <glib/gi18n-lib.h>

#include "bb-lettering.h"

/* All in the height of a style's letters, by eye. */
#define TITLE_SIZE 1.12
#define GAP 0.5
#define TICK 0.35
#define SAMPLE 2.6
#define LEAST_PLOT 5.0

/* More names than a person tells apart; the others are pointed at. */
#define MOST_NAMES 12

typedef struct {
  BbChartLayout *layout;
  const BbChart *chart;
  const BbChartStyle *style;
  double width;
  double height;
} Work;

static void
clear_placed (gpointer data)
{
  g_object_unref (((BbPlaced *) data)->letters);
}

static PangoLayout *
letter (const Work *work,
        const char *text,
        double      size,
        gboolean    bold,
        double      width)
{
  return bb_lettering_new (work->layout->plot.letters, text, work->style->font, work->style->size * size, bold, width);
}

/* Takes the letters, and returns how high they are. */
static double
place (const Work    *work,
       PangoLayout   *letters,
       double         x,
       double         y,
       const BbLayer *layer)
{
  BbPlaced placed = { letters, x, y, layer };

  g_array_append_val (work->layout->words, placed);

  return bb_lettering_get_height (letters);
}

static double
widest_tick (const Work *work)
{
  double widest = 0.0;

  for (guint i = 0; i < work->chart->up->ticks->len; i++)
    {
      const BbTick *tick = &g_array_index (work->chart->up->ticks, BbTick, i);
      g_autoptr (PangoLayout) letters = letter (work, tick->label, 1.0, FALSE, -1);

      widest = MAX (widest, bb_lettering_get_width (letters));
    }

  return widest;
}

/* Title and heading of the axis beside stand above the plot. */
static double
place_above (const Work *work)
{
  g_autofree char *heading = bb_axis_dup_heading (work->chart->up);
  double gap = work->style->size * GAP;
  double y = 0.0;

  if (work->chart->title != NULL)
    y += place (work, letter (work, work->chart->title, TITLE_SIZE, TRUE, work->width), 0.0, y, NULL) + gap;

  return y + place (work, letter (work, heading, 1.0, FALSE, work->width), 0.0, y, NULL) + gap;
}

/* From @y down; returns where it ends. */
static double
place_legend (const Work *work,
              double      y)
{
  double gap = work->style->size * GAP;
  double x = 0.0;
  double line = 0.0;
  guint n = 0;
  guint n_left = 0;

  for (guint i = 0; i < work->chart->layers->len; i++)
    {
      const BbLayer *layer = work->chart->layers->pdata[i];
      PangoLayout *letters = NULL;
      double wide = 0.0;

      if (!layer->in_legend)
        continue;
      if (n++ >= MOST_NAMES)
        {
          n_left++;
          continue;
        }
      letters = letter (work, layer->series->name, 1.0, FALSE, -1);
      wide = work->layout->sample + bb_lettering_get_width (letters);
      if (x > 0.0 && x + wide > work->width)
        {
          x = 0.0;
          y += line;
        }
      line = place (work, letters, x + work->layout->sample, y, layer) + gap / 2.0;
      x += wide + 2.0 * gap;
    }
  if (n_left > 0)
    {
      g_autofree char *more = g_strdup_printf (ngettext ("and %u more", "and %u more", n_left), n_left);

      line = place (work, letter (work, more, 1.0, FALSE, -1), x, y, NULL) + gap / 2.0;
    }

  return y + line;
}

static double
place_caption (const Work *work,
               double      y)
{
  if (work->chart->caption == NULL)
    return y;

  return y + place (work, letter (work, work->chart->caption, 1.0, FALSE, work->width), 0.0, y, NULL);
}

static void
move_words (GArray *words,
            guint   from,
            double  down)
{
  for (guint i = from; i < words->len; i++)
    g_array_index (words, BbPlaced, i).y += down;
}

static void
place_up_ticks (const Work *work)
{
  const BbPlot *plot = &work->layout->plot;

  for (guint i = 0; i < work->chart->up->ticks->len; i++)
    {
      const BbTick *tick = &g_array_index (work->chart->up->ticks, BbTick, i);
      PangoLayout *letters = letter (work, tick->label, 1.0, FALSE, -1);

      place (work, letters, plot->x - work->style->size * TICK - bb_lettering_get_width (letters),
             bb_plot_get_y (plot, tick->value) - bb_lettering_get_height (letters) / 2.0, NULL);
    }
}

/* A word that would touch the one before it is left out; its mark stays. */
static void
place_across_ticks (const Work *work)
{
  const BbPlot *plot = &work->layout->plot;
  double taken = -G_MAXDOUBLE;

  for (guint i = 0; i < work->chart->across->ticks->len; i++)
    {
      const BbTick *tick = &g_array_index (work->chart->across->ticks, BbTick, i);
      PangoLayout *letters = letter (work, tick->label, 1.0, FALSE, -1);
      double width = bb_lettering_get_width (letters);
      double x = bb_plot_get_x (plot, tick->value) - width / 2.0;

      if (x < taken)
        {
          g_object_unref (letters);
          continue;
        }
      taken = x + width + work->style->size * GAP;
      place (work, letters, x, plot->y + plot->height + work->style->size * TICK, NULL);
    }
}

/* How far the last word of the axis below reaches past the plot. */
static double
reach_right (const Work *work)
{
  const GArray *ticks = work->chart->across->ticks;
  g_autoptr (PangoLayout) letters = NULL;

  if (ticks->len == 0)
    return 0.0;
  letters = letter (work, g_array_index (ticks, BbTick, ticks->len - 1).label, 1.0, FALSE, -1);

  return bb_lettering_get_width (letters) / 2.0;
}

static void
lay_out (const Work *work)
{
  BbPlot *plot = &work->layout->plot;
  g_autofree char *heading = bb_axis_dup_heading (work->chart->across);
  double size = work->style->size;
  double gap = size * GAP;
  double below = 0.0;
  guint first = 0;

  plot->y = place_above (work) + gap;
  first = work->layout->words->len;
  /* What stands below is laid out from 0, and moved once the height of the plot is known. */
  below = size * (1.0 + TICK) + gap;
  below += place (work, letter (work, heading, 1.0, FALSE, work->width), 0.0, below, NULL) + gap;
  below = place_legend (work, below);
  below = place_caption (work, below + (work->chart->caption != NULL ? gap : 0.0));

  plot->x = widest_tick (work) + size * TICK + gap;
  plot->width = MAX (work->width - plot->x - MAX (reach_right (work), gap), 1.0);
  plot->height = MAX (work->height - plot->y - below, size * LEAST_PLOT);
  move_words (work->layout->words, first, plot->y + plot->height);
  /* The heading stands at the end of its axis, where the values grow. */
  g_array_index (work->layout->words, BbPlaced, first).x =
    MAX (plot->x + plot->width - bb_lettering_get_width (g_array_index (work->layout->words, BbPlaced, first).letters),
         0.0);
  place_up_ticks (work);
  place_across_ticks (work);
}

/**
 * _bb_chart_layout_new:
 * @chart: a chart, which has to outlive the result
 * @width: how much room there is
 * @height: how much room there is; a chart of many words is higher than too little
 * @style: how it looks
 *
 * Returns: (transfer full): where everything stands
 */
BbChartLayout *
_bb_chart_layout_new (const BbChart      *chart,
                      double              width,
                      double              height,
                      const BbChartStyle *style)
{
  BbChartLayout *self = g_new0 (BbChartLayout, 1);

  self->words = g_array_new (FALSE, FALSE, sizeof (BbPlaced));
  g_array_set_clear_func (self->words, clear_placed);
  self->sample = style->size * SAMPLE;
  self->plot.across = chart->across;
  self->plot.up = chart->up;
  self->plot.style = style;
  self->plot.letters = bb_lettering_new_context ();
  lay_out (&(Work) { self, chart, style, width, height });

  return self;
}

/**
 * _bb_chart_layout_free:
 * @self: (transfer full): a layout
 */
void
_bb_chart_layout_free (BbChartLayout *self)
{
  g_array_unref (self->words);
  g_object_unref (self->plot.letters);
  g_free (self);
}
