/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-report"

#include "bb-block.h"

#include "bb-lettering.h"

/* In the height of the letters of the text, by eye. */
#define FACTS_SIZE 0.92
#define TABLE_SIZE 0.84
#define WIDE_TABLE_SIZE 0.72
#define MANY_COLUMNS 10
#define NAME_SHARE 0.34
#define PADDING 0.22
#define GUTTER 0.6
#define AFTER 0.9

typedef struct {
  GStrv cells;
  char *note;
  GPtrArray *letters;
  PangoLayout *note_letters;
} Row;

/* @facts: pairs of a name and a value, in two columns of pairs, without a head */
typedef struct {
  BbBlock parent;
  gboolean facts;
  GArray *columns;
  GPtrArray *titles;
  GPtrArray *head_letters;
  GPtrArray *rows;
  double width;
  double padding;
  double gutter;
} TableBlock;

static void
free_row (gpointer data)
{
  Row *self = data;

  g_strfreev (self->cells);
  g_free (self->note);
  g_clear_pointer (&self->letters, g_ptr_array_unref);
  g_clear_object (&self->note_letters);
  g_free (self);
}

static double
sum_of_shares (const TableBlock *self)
{
  double sum = 0.0;

  for (guint c = 0; c < self->columns->len; c++)
    sum += g_array_index (self->columns, BbColumn, c).share;

  return sum;
}

static double
width_of (const TableBlock *self,
          guint             column)
{
  return self->width * g_array_index (self->columns, BbColumn, column).share / sum_of_shares (self) - self->gutter;
}

static double
size_of (const TableBlock *self)
{
  if (self->facts)
    return FACTS_SIZE;

  return self->columns->len > MANY_COLUMNS ? WIDE_TABLE_SIZE : TABLE_SIZE;
}

static GPtrArray *
lay_out_cells (const TableBlock *self,
               const BbType     *type,
               GStrv             cells,
               gboolean          strong,
               double           *height)
{
  GPtrArray *letters = g_ptr_array_new_with_free_func (g_object_unref);

  *height = 0.0;
  for (guint c = 0; c < self->columns->len; c++)
    {
      gboolean is_name = self->facts && c % 2 == 0;
      PangoLayout *cell = bb_lettering_new (type->letters, cells[c], type->font, type->size * size_of (self),
                                            strong || is_name, width_of (self, c));

      if (g_array_index (self->columns, BbColumn, c).to_right)
        pango_layout_set_alignment (cell, PANGO_ALIGN_RIGHT);
      *height = MAX (*height, bb_lettering_get_height (cell));
      g_ptr_array_add (letters, cell);
    }

  return letters;
}

static double
lay_out_row (const TableBlock *self,
             const BbType     *type,
             Row              *row)
{
  double height = 0.0;

  g_clear_pointer (&row->letters, g_ptr_array_unref);
  g_clear_object (&row->note_letters);
  row->letters = lay_out_cells (self, type, row->cells, FALSE, &height);
  if (row->note != NULL)
    {
      row->note_letters = bb_lettering_new (type->letters, row->note, type->font, type->size * TABLE_SIZE, FALSE,
                                            self->width - self->gutter);
      height += bb_lettering_get_height (row->note_letters);
    }

  return height + 2.0 * self->padding;
}

static void
lay_out_table (BbBlock      *block,
               const BbType *type,
               double        width)
{
  TableBlock *self = (TableBlock *) block;

  self->width = width;
  self->padding = type->size * PADDING;
  self->gutter = type->size * GUTTER;
  block->head = 0.0;
  g_clear_pointer (&self->head_letters, g_ptr_array_unref);
  if (!self->facts)
    {
      self->head_letters = lay_out_cells (self, type, (GStrv) self->titles->pdata, TRUE, &block->head);
      block->head += 2.0 * self->padding;
    }

  g_array_set_size (block->heights, 0);
  for (guint r = 0; r < self->rows->len; r++)
    {
      double height = lay_out_row (self, type, self->rows->pdata[r]);

      g_array_append_val (block->heights, height);
    }
}

static void
show_cells (const TableBlock *self,
            const GPtrArray  *letters,
            cairo_t          *cr,
            double            y)
{
  double x = 0.0;

  for (guint c = 0; c < letters->len; c++)
    {
      bb_lettering_show (letters->pdata[c], cr, x, y);
      x += width_of (self, c) + self->gutter;
    }
}

static void
rule (const TableBlock *self,
      cairo_t          *cr,
      double            y,
      double            line,
      double            grey)
{
  cairo_set_source_rgb (cr, grey, grey, grey);
  cairo_set_line_width (cr, line);
  cairo_move_to (cr, 0, y);
  cairo_line_to (cr, self->width, y);
  cairo_stroke (cr);
}

static void
draw_row (const TableBlock *self,
          const Row        *row,
          cairo_t          *cr,
          double            y)
{
  double below = 0.0;

  cairo_set_source_rgb (cr, 0, 0, 0);
  show_cells (self, row->letters, cr, y + self->padding);
  if (row->note_letters == NULL)
    return;
  for (guint c = 0; c < row->letters->len; c++)
    below = MAX (below, bb_lettering_get_height (row->letters->pdata[c]));
  cairo_set_source_rgb (cr, 0.25, 0.25, 0.25);
  bb_lettering_show (row->note_letters, cr, 0, y + self->padding + below);
}

static void
draw_table (BbBlock *block,
            cairo_t *cr,
            guint    from,
            guint    to)
{
  TableBlock *self = (TableBlock *) block;
  double y = block->head;

  if (self->head_letters != NULL)
    {
      cairo_set_source_rgb (cr, 0, 0, 0);
      show_cells (self, self->head_letters, cr, self->padding);
      rule (self, cr, y, 0.7, 0.2);
    }
  for (guint r = from; r < to; r++)
    {
      draw_row (self, self->rows->pdata[r], cr, y);
      y += g_array_index (block->heights, double, r);
      rule (self, cr, y, 0.35, 0.75);
    }
}

static void
free_table (BbBlock *block)
{
  TableBlock *self = (TableBlock *) block;

  for (guint c = 0; c < self->columns->len; c++)
    g_free ((char *) g_array_index (self->columns, BbColumn, c).title);
  g_array_unref (self->columns);
  g_ptr_array_unref (self->titles);
  g_clear_pointer (&self->head_letters, g_ptr_array_unref);
  g_ptr_array_unref (self->rows);
}

static TableBlock *
table_block_new (const BbColumn *columns,
                 guint           n_columns)
{
  TableBlock *self = g_new0 (TableBlock, 1);

  self->parent.heights = g_array_new (FALSE, FALSE, sizeof (double));
  self->parent.after = AFTER;
  self->parent.lay_out = lay_out_table;
  self->parent.draw = draw_table;
  self->parent.free = free_table;
  self->columns = g_array_new (FALSE, FALSE, sizeof (BbColumn));
  self->titles = g_ptr_array_new ();
  self->rows = g_ptr_array_new_with_free_func (free_row);
  for (guint c = 0; c < n_columns; c++)
    {
      BbColumn column = { g_strdup (columns[c].title), columns[c].share, columns[c].to_right };

      g_array_append_val (self->columns, column);
      g_ptr_array_add (self->titles, (gpointer) column.title);
    }

  return self;
}

/**
 * bb_table_new:
 * @columns: (array length=n_columns): its columns; copied
 * @n_columns: how many
 *
 * Returns: (transfer full): a table without rows, whose head is repeated on each page
 */
BbBlock *
bb_table_new (const BbColumn *columns,
              guint           n_columns)
{
  return &table_block_new (columns, n_columns)->parent;
}

/**
 * bb_table_add:
 * @self: a table
 * @cells: one text for each column; copied
 * @note: (nullable): what stands below them over the whole width
 *
 * Adds a row, which is never broken.
 */
void
bb_table_add (BbBlock    *self,
              GStrv       cells,
              const char *note)
{
  TableBlock *table = (TableBlock *) self;
  Row *row = NULL;

  g_return_if_fail (g_strv_length (cells) == table->columns->len);

  row = g_new0 (Row, 1);
  row->cells = g_strdupv (cells);
  row->note = g_strdup (note);
  g_ptr_array_add (table->rows, row);
}

/**
 * bb_facts_new:
 *
 * Returns: (transfer full): names with their values, two beside each other
 */
BbBlock *
bb_facts_new (void)
{
  const BbColumn columns[] = {
    { "", NAME_SHARE, FALSE }, { "", 1.0 - NAME_SHARE, FALSE },
    { "", NAME_SHARE, FALSE }, { "", 1.0 - NAME_SHARE, FALSE },
  };
  TableBlock *self = table_block_new (columns, G_N_ELEMENTS (columns));

  self->facts = TRUE;
  self->parent.whole = TRUE;

  return &self->parent;
}

/**
 * bb_facts_add:
 * @self: names with their values
 * @name: a name
 * @value: its value
 */
void
bb_facts_add (BbBlock    *self,
              const char *name,
              const char *value)
{
  TableBlock *table = (TableBlock *) self;
  Row *last = table->rows->len > 0 ? table->rows->pdata[table->rows->len - 1] : NULL;
  const char *cells[] = { name, value, "", "", NULL };

  if (last == NULL || *last->cells[2] != '\0')
    {
      bb_table_add (self, (GStrv) (gpointer) cells, NULL);
      return;
    }
  g_free (last->cells[2]);
  g_free (last->cells[3]);
  last->cells[2] = g_strdup (name);
  last->cells[3] = g_strdup (value);
}
