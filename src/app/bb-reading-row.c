/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-reading-row"

#include "bb-reading-row.h"

#include <glib/gi18n-lib.h>

#include "bb-problem.h"
#include "bb-quick-cell.h"
#include "bb-quick.h"

/**
 * bb_reading_row_new:
 * @session: the session
 * @due: a specimen, which has to outlive the row
 *
 * Returns: (transfer full): a row without cells, for the specimen's next reading
 */
BbReadingRow *
bb_reading_row_new (BbSession       *session,
                    const BbDueLine *due)
{
  BbReadingRow *self = g_new0 (BbReadingRow, 1);

  self->due = due;
  self->cells = g_ptr_array_new ();
  self->reading = bb_wash_line_dup_next_reading (due->line, &due->due);
  bb_session_fill_in (session, &bb_reading_table, self->reading);

  return self;
}

/**
 * bb_reading_row_free:
 * @self: (transfer full): a row
 */
void
bb_reading_row_free (BbReadingRow *self)
{
  bb_reading_free (self->reading);
  g_ptr_array_unref (self->cells);
  g_free (self);
}

/**
 * bb_reading_row_get_test:
 * @self: a row
 *
 * Returns: (transfer none): the specimen
 */
const BbWashTest *
bb_reading_row_get_test (const BbReadingRow *self)
{
  return self->due->line->test;
}

/**
 * bb_reading_row_make_title:
 * @self: a row
 *
 * Returns: (transfer floating): what the specimen is, in two lines
 */
GtkWidget *
bb_reading_row_make_title (const BbReadingRow *self)
{
  const BbDueLine *due = self->due;
  const BbWashTest *test = due->line->test;
  const BbRevision *revision = due->line->revision;
  GtkWidget *code = gtk_label_new (test->code);
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  g_autofree char *waiting = bb_wash_due_describe (&due->due);
  g_autofree char *text = due->line->colourway != NULL
                            ? g_strjoin (" · ", revision->code, due->line->colourway, waiting, NULL)
                            : g_strjoin (" · ", revision->code, waiting, NULL);
  GtkWidget *label = gtk_label_new (text);

  gtk_widget_add_css_class (label, "caption");
  gtk_widget_add_css_class (label, "dim-label");
  gtk_label_set_xalign (GTK_LABEL (label), 0.0f);
  gtk_label_set_ellipsize (GTK_LABEL (label), PANGO_ELLIPSIZE_END);
  gtk_widget_set_tooltip_text (label, text);
  gtk_widget_set_hexpand (box, TRUE);
  gtk_label_set_xalign (GTK_LABEL (code), 0.0f);
  gtk_box_append (GTK_BOX (box), code);
  gtk_box_append (GTK_BOX (box), label);

  return box;
}

/**
 * bb_reading_row_save:
 * @self: a row
 *
 * Returns: (transfer floating): what is entered, valid or not: the specimen's key, the cycles, a value each cell
 */
GVariant *
bb_reading_row_save (const BbReadingRow *self)
{
  GVariantBuilder cells;

  g_variant_builder_init (&cells, G_VARIANT_TYPE ("ai"));
  for (guint i = 0; i < self->cells->len; i++)
    g_variant_builder_add (&cells, "i", bb_quick_cell_get_chosen (self->cells->pdata[i]));

  return g_variant_new ("(xsai)", bb_reading_row_get_test (self)->id,
                        gtk_editable_get_text (GTK_EDITABLE (self->cycles)), &cells);
}

/**
 * bb_reading_row_restore:
 * @self: a row with its cells
 * @cycles: what was entered as cycles
 * @cells: the values of the cells, as bb_reading_row_save() gave them
 *
 * Brings back what was entered.
 */
void
bb_reading_row_restore (BbReadingRow *self,
                        const char   *cycles,
                        GVariant     *cells)
{
  if (g_variant_n_children (cells) != self->cells->len)
    return;
  for (guint i = 0; i < self->cells->len; i++)
    {
      BbQuickCell *cell = self->cells->pdata[i];
      int chosen = -1;

      g_variant_get_child (cells, i, "i", &chosen);
      bb_quick_cell_set_chosen (cell, CLAMP (chosen, -1, (int) bb_quick_get_n (bb_quick_cell_get_field (cell)) - 1));
    }
  self->touched = TRUE;
  gtk_editable_set_text (GTK_EDITABLE (self->cycles), cycles);
}

/* What is wrong with a cell is said at the cell; the first of all is told. */
static void
mark (const BbReadingRow  *self,
      GtkWidget           *cell,
      const BbField       *field,
      const char          *message,
      GtkWidget          **faulty,
      char               **text)
{
  bb_quick_cell_set_fault (cell, message);
  if (*faulty != NULL)
    return;
  *faulty = cell;
  /* Translators: a specimen, a field, and what is wrong with it. */
  *text = g_strdup_printf (_("%s, %s: %s"), bb_reading_row_get_test (self)->code, _(field->title), message);
}

static void
read_cycles (BbReadingRow         *self,
             const BbUnitContext  *units,
             GtkWidget           **faulty,
             char                **text)
{
  const BbField *field = bb_table_find_field (&bb_reading_table, "cycles");
  const char *typed = gtk_editable_get_text (GTK_EDITABLE (self->cycles));
  const BbReading *other = NULL;
  g_autofree char *message = NULL;
  gint64 cycles = 0;
  BbProblem problem;

  bb_quick_cell_set_fault (self->cycles, NULL);
  self->reading->cycles = g_ascii_string_to_signed (typed, 10, 0, G_MAXINT32, &cycles, NULL) ? cycles : BB_INTEGER_NONE;
  other = bb_wash_line_find_reading (self->due->line, self->reading->cycles);
  if (bb_field_find_problem (field, self->reading, &problem))
    message = bb_problem_to_text (&problem, units);
  else if (other != NULL && other->id != self->reading->id)
    message = g_strdup (_("This specimen was read after as many washes before: correct that reading."));
  if (message != NULL)
    mark (self, self->cycles, field, message, faulty, text);
}

static void
read_cells (BbReadingRow         *self,
            const BbUnitContext  *units,
            GtkWidget           **faulty,
            char                **text)
{
  for (guint i = 0; i < self->cells->len; i++)
    {
      BbQuickCell *cell = self->cells->pdata[i];
      const BbField *field = bb_quick_cell_get_field (cell);
      BbProblem problem;

      bb_quick_set (field, self->reading, bb_quick_cell_get_chosen (cell));
      bb_quick_cell_set_fault (GTK_WIDGET (cell), NULL);
      if (bb_field_find_problem (field, self->reading, &problem))
        {
          g_autofree char *message = bb_problem_to_text (&problem, units);

          mark (self, GTK_WIDGET (cell), field, message, faulty, text);
        }
    }
}

/**
 * bb_reading_row_read:
 * @self: a row with its cells
 * @units: the units in which a problem is told
 * @faulty: (inout) (transfer none): the first cell with which something is wrong, %NULL so far
 * @text: (out) (transfer full): what is wrong with that one; set along with it only
 *
 * Reads what is entered into the row's reading, and marks each cell with which something is wrong.
 */
void
bb_reading_row_read (BbReadingRow         *self,
                     const BbUnitContext  *units,
                     GtkWidget           **faulty,
                     char                **text)
{
  read_cycles (self, units, faulty, text);
  read_cells (self, units, faulty, text);
}
