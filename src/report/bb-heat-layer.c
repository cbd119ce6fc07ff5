/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-report"

#include "bb-layer.h"

#include <math.h>

#include "bb-lettering.h"

#define LETTERS_SHARE 0.85

/* How much the highest values cover. */
#define DEEPEST 0.55

/* @x, @y: a place in the field; @value: what was found there */
typedef struct {
  double x;
  double y;
  double value;
} Node;

/* @nodes: (element-type Node): row by row from the lowest, as the grid's values are, and as the series is read */
typedef struct {
  BbLayer parent;
  guint n_across;
  guint n_up;
  GArray *nodes;
  GArray *levels;
} HeatLayer;

typedef struct {
  double x;
  double y;
} Place;

static const Node *
node_at (const HeatLayer *self,
         guint            column,
         guint            row)
{
  return &g_array_index (self->nodes, Node, row * self->n_across + column);
}

static void
find_range (const HeatLayer *self,
            double          *least,
            double          *greatest)
{
  *least = INFINITY;
  *greatest = -INFINITY;
  for (guint i = 0; i < self->nodes->len; i++)
    {
      double value = g_array_index (self->nodes, Node, i).value;

      if (isnan (value))
        continue;
      *least = MIN (*least, value);
      *greatest = MAX (*greatest, value);
    }
}

/* Around the cell, from its low corner. */
static void
get_corners (const HeatLayer *self,
             guint            column,
             guint            row,
             const Node      *corners[4])
{
  corners[0] = node_at (self, column, row);
  corners[1] = node_at (self, column + 1, row);
  corners[2] = node_at (self, column + 1, row + 1);
  corners[3] = node_at (self, column, row + 1);
}

static double
mean_of (const Node *corners[4])
{
  double sum = 0.0;

  for (guint c = 0; c < 4; c++)
    sum += corners[c]->value;

  return sum / 4.0;
}

static void
fill_cells (const HeatLayer *self,
            cairo_t         *cr,
            const BbPlot    *plot)
{
  double least = 0.0;
  double greatest = 0.0;

  find_range (self, &least, &greatest);
  cairo_save (cr);
  /* Cells touch: smoothed edges would show as a net. */
  cairo_set_antialias (cr, CAIRO_ANTIALIAS_NONE);
  for (guint row = 0; row + 1 < self->n_up; row++)
    for (guint column = 0; column + 1 < self->n_across; column++)
      {
        const Node *corners[4];
        double x = 0.0;
        double y = 0.0;

        get_corners (self, column, row, corners);
        if (isnan (mean_of (corners)))
          continue;
        x = bb_plot_get_x (plot, corners[0]->x);
        y = bb_plot_get_y (plot, corners[2]->y);
        bb_ink_set (bb_chart_style_get_ink (plot->style, self->parent.series->ink),
                    greatest > least ? DEEPEST * (mean_of (corners) - least) / (greatest - least) : 0.0, cr);
        cairo_rectangle (cr, x, y, bb_plot_get_x (plot, corners[2]->x) - x, bb_plot_get_y (plot, corners[0]->y) - y);
        cairo_fill (cr);
      }
  cairo_restore (cr);
}

/* Where a level crosses the side of a cell, if it does. */
static gboolean
find_crossing (const BbPlot *plot,
               const Node   *from,
               const Node   *to,
               double        level,
               Place        *crossing)
{
  double share = (level - from->value) / (to->value - from->value);

  if ((from->value < level) == (to->value < level))
    return FALSE;
  crossing->x = bb_plot_get_x (plot, from->x + share * (to->x - from->x));
  crossing->y = bb_plot_get_y (plot, from->y + share * (to->y - from->y));

  return TRUE;
}

/* Marching squares: the crossings of a cell's sides are joined two by two. */
static guint
find_crossings (const HeatLayer *self,
                const BbPlot    *plot,
                guint            column,
                guint            row,
                double           level,
                Place            crossings[4])
{
  const Node *corners[4];
  guint n = 0;

  get_corners (self, column, row, corners);
  if (isnan (mean_of (corners)))
    return 0;
  for (guint c = 0; c < 4; c++)
    if (find_crossing (plot, corners[c], corners[(c + 1) % 4], level, &crossings[n]))
      n++;

  return n;
}

static void
draw_label (const BbLevel *level,
            const Place   *at,
            cairo_t       *cr,
            const BbPlot  *plot)
{
  g_autoptr (PangoLayout) label = bb_lettering_new (plot->letters, level->label, plot->style->font,
                                                    plot->style->size * LETTERS_SHARE, level->is_limit, -1);
  double width = bb_lettering_get_width (label);
  double height = bb_lettering_get_height (label);
  double x = CLAMP (at->x - width / 2.0, plot->x, plot->x + plot->width - width);
  double y = CLAMP (at->y - height / 2.0, plot->y, plot->y + plot->height - height);

  bb_ink_set (&plot->style->paper, 0.85, cr);
  bb_lettering_clear_ground (label, cr, x, y, plot->style->size * 0.15);
  bb_ink_set (&plot->style->text, 1.0, cr);
  bb_lettering_show (label, cr, x, y);
}

static void
draw_contour (const HeatLayer *self,
              const BbLevel   *level,
              cairo_t         *cr,
              const BbPlot    *plot)
{
  Place lowest = { 0.0, -INFINITY };

  bb_ink_set (&plot->style->text, level->is_limit ? 1.0 : 0.6, cr);
  bb_stroke_set (BB_STROKE_SOLID, plot->style->line * (level->is_limit ? 1.6 : 0.8), cr);
  for (guint row = 0; row + 1 < self->n_up; row++)
    for (guint column = 0; column + 1 < self->n_across; column++)
      {
        Place crossings[4];
        guint n = find_crossings (self, plot, column, row, level->value, crossings);

        for (guint c = 0; c + 1 < n; c += 2)
          {
            cairo_move_to (cr, crossings[c].x, crossings[c].y);
            cairo_line_to (cr, crossings[c + 1].x, crossings[c + 1].y);
            if (crossings[c].y > lowest.y)
              lowest = crossings[c];
          }
      }
  cairo_stroke (cr);
  if (isfinite (lowest.y))
    draw_label (level, &lowest, cr, plot);
}

static void
draw_heat (BbLayer      *layer,
           cairo_t      *cr,
           const BbPlot *plot)
{
  const HeatLayer *self = (const HeatLayer *) layer;

  fill_cells (self, cr, plot);
  for (guint i = 0; i < self->levels->len; i++)
    draw_contour (self, &g_array_index (self->levels, BbLevel, i), cr, plot);
}

static void
clear_level (gpointer data)
{
  g_free ((char *) ((BbLevel *) data)->label);
}

static void
free_heat (BbLayer *layer)
{
  HeatLayer *self = (HeatLayer *) layer;

  g_array_unref (self->nodes);
  g_array_unref (self->levels);
}

/**
 * bb_heat_layer_new:
 * @name: what the values are, as it is read out
 * @grid: values over a field, at least two by two; copied
 * @levels: (array length=n_levels): the contours that are wanted
 * @n_levels: how many
 *
 * The higher a value, the deeper its cell; contours with their values tell it without colour.
 *
 * Returns: (transfer full): a layer that fills the field
 */
BbLayer *
bb_heat_layer_new (const char    *name,
                   const BbGrid  *grid,
                   const BbLevel *levels,
                   guint          n_levels)
{
  HeatLayer *self = NULL;

  g_return_val_if_fail (grid->n_across >= 2 && grid->n_up >= 2, NULL);

  self = g_new0 (HeatLayer, 1);
  self->parent.draw = draw_heat;
  self->parent.free = free_heat;
  self->parent.series = bb_series_new (name, BB_MARKER_NONE, BB_STROKE_NONE, 0);
  self->n_across = grid->n_across;
  self->n_up = grid->n_up;
  self->nodes = g_array_new (FALSE, FALSE, sizeof (Node));
  self->levels = g_array_new (FALSE, FALSE, sizeof (BbLevel));
  g_array_set_clear_func (self->levels, clear_level);
  for (guint row = 0; row < grid->n_up; row++)
    for (guint column = 0; column < grid->n_across; column++)
      {
        Node node = { grid->across[column], grid->up[row], grid->values[row * grid->n_across + column] };

        g_array_append_val (self->nodes, node);
        bb_series_add (self->parent.series, node.x, node.y)->note =
          isnan (node.value) ? NULL : g_strdup_printf ("%s: %.3g", name, node.value);
      }
  for (guint i = 0; i < n_levels; i++)
    {
      BbLevel level = { levels[i].value, g_strdup (levels[i].label), levels[i].is_limit };

      g_array_append_val (self->levels, level);
    }

  return &self->parent;
}
