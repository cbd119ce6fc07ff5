/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-report"

#include "bb-block.h"

#include "bb-lettering.h"

/* In the height of the letters of the text, by eye. */
static const double heading_sizes[] = { 1.9, 1.25, 1.05 };
static const double heading_gaps[] = { 0.4, 0.5, 0.35 };
#define HEADING_ABOVE 0.7
#define TEXT_AFTER 0.6
#define FIGURE_AFTER 1.2

typedef struct {
  BbBlock parent;
  char *text;
  double size;
  double above;
  gboolean strong;
  PangoLayout *letters;
} TextBlock;

typedef struct {
  BbBlock parent;
  BbChart *chart;
  double width;
  double height;
} FigureBlock;

static void
init_block (BbBlock *self,
            void   (*lay_out) (BbBlock *, const BbType *, double),
            void   (*draw) (BbBlock *, cairo_t *, guint, guint),
            void   (*free_block) (BbBlock *))
{
  self->heights = g_array_new (FALSE, FALSE, sizeof (double));
  self->lay_out = lay_out;
  self->draw = draw;
  self->free = free_block;
}

/**
 * bb_block_free:
 * @self: (transfer full): a block
 */
void
bb_block_free (BbBlock *self)
{
  if (self->free != NULL)
    self->free (self);
  g_array_unref (self->heights);
  g_free (self);
}

/* Each line is a part, so that a long text goes on on the next page. */
static void
lay_out_text (BbBlock      *block,
              const BbType *type,
              double        width)
{
  TextBlock *self = (TextBlock *) block;

  g_clear_object (&self->letters);
  self->letters = bb_lettering_new (type->letters, self->text, type->font, type->size * self->size, self->strong,
                                    width);
  g_array_set_size (block->heights, 0);
  for (int i = 0; i < pango_layout_get_line_count (self->letters); i++)
    {
      PangoRectangle line;
      double height = 0.0;

      pango_layout_line_get_extents (pango_layout_get_line_readonly (self->letters, i), NULL, &line);
      height = (double) line.height / PANGO_SCALE + (i == 0 ? self->above * type->size : 0.0);
      g_array_append_val (block->heights, height);
    }
}

static void
draw_text (BbBlock *block,
           cairo_t *cr,
           guint    from,
           guint    to)
{
  TextBlock *self = (TextBlock *) block;
  double y = 0.0;

  cairo_set_source_rgb (cr, 0, 0, 0);
  for (guint i = from; i < to; i++)
    {
      PangoLayoutLine *line = pango_layout_get_line_readonly (self->letters, (int) i);
      PangoRectangle extents;

      pango_layout_line_get_extents (line, NULL, &extents);
      y += g_array_index (block->heights, double, i);
      cairo_move_to (cr, 0, y - (double) (extents.height + extents.y) / PANGO_SCALE);
      pango_cairo_show_layout_line (cr, line);
    }
  cairo_new_path (cr);
}

static void
free_text (BbBlock *block)
{
  TextBlock *self = (TextBlock *) block;

  g_clear_object (&self->letters);
  g_free (self->text);
}

static TextBlock *
text_block_new (const char *text,
                double      size,
                gboolean    strong)
{
  TextBlock *self = g_new0 (TextBlock, 1);

  init_block (&self->parent, lay_out_text, draw_text, free_text);
  self->text = g_strdup (text);
  self->size = size;
  self->strong = strong;

  return self;
}

/**
 * bb_heading_new:
 * @text: the heading
 * @level: 0 for the title of the document, 1 and 2 for what is in it
 *
 * Returns: (transfer full): a heading, which stays with what follows it
 */
BbBlock *
bb_heading_new (const char *text,
                guint       level)
{
  TextBlock *self = NULL;

  g_return_val_if_fail (level < G_N_ELEMENTS (heading_sizes), NULL);

  self = text_block_new (text, heading_sizes[level], TRUE);
  self->above = level > 0 ? HEADING_ABOVE : 0.0;
  self->parent.after = heading_gaps[level];
  self->parent.keep = TRUE;

  return &self->parent;
}

/**
 * bb_text_new:
 * @text: sentences
 * @strong: whether they are bold
 *
 * Returns: (transfer full): a paragraph
 */
BbBlock *
bb_text_new (const char *text,
             gboolean    strong)
{
  TextBlock *self = text_block_new (text, 1.0, strong);

  self->parent.after = TEXT_AFTER;

  return &self->parent;
}

static void
lay_out_figure (BbBlock      *block,
                const BbType *type,
                double        width)
{
  FigureBlock *self = (FigureBlock *) block;

  (void) type;
  self->width = width;
  g_array_set_size (block->heights, 0);
  g_array_append_val (block->heights, self->height);
}

static void
draw_figure (BbBlock *block,
             cairo_t *cr,
             guint    from,
             guint    to)
{
  FigureBlock *self = (FigureBlock *) block;

  if (from < to)
    bb_chart_draw (self->chart, cr, self->width, self->height, &bb_chart_style_print, NULL);
}

static void
free_figure (BbBlock *block)
{
  bb_chart_unref (((FigureBlock *) block)->chart);
}

/**
 * bb_figure_new:
 * @chart: (transfer full): a chart
 * @height: how high it is drawn, in points; it is as wide as the text
 *
 * Returns: (transfer full): a figure, which is never broken
 */
BbBlock *
bb_figure_new (BbChart *chart,
               double   height)
{
  FigureBlock *self = g_new0 (FigureBlock, 1);

  init_block (&self->parent, lay_out_figure, draw_figure, free_figure);
  self->chart = chart;
  self->height = height;
  self->parent.after = FIGURE_AFTER;

  return &self->parent;
}
