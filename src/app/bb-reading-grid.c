/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-reading-grid"

#include "bb-reading-grid.h"

#include <glib/gi18n-lib.h>

#include "bb-compat.h"
#include "bb-due-load.h"
#include "bb-quick-cell.h"
#include "bb-quick.h"
#include "bb-reading-row.h"

/* More than anybody grades in a day, and few enough to be made at once. */
#define MOST_ROWS 60

/* Characters of a count of washes. */
#define CYCLES_WIDTH 4

/* How what was entered is kept: specimen, cycles, and a value each cell, for each row. */
#define KEPT_TYPE "a(xsai)"

struct _BbReadingGrid
{
  AdwBin parent_instance;

  /* template */
  GtkGrid *grid;

  /* owned; rows borrow their lines */
  BbSession *session;
  GPtrArray *lines;
  GPtrArray *rows;
};

G_DEFINE_FINAL_TYPE (BbReadingGrid, bb_reading_grid, ADW_TYPE_BIN)

enum {
  SIGNAL_CHANGED,
  N_SIGNALS
};

static guint signals[N_SIGNALS];

static BbReadingRow *
find_row (BbReadingGrid *self,
          GtkWidget     *cell,
          guint         *row_index,
          guint         *cell_index)
{
  for (guint i = 0; i < self->rows->len; i++)
    {
      BbReadingRow *row = self->rows->pdata[i];

      *row_index = i;
      *cell_index = 0;
      if (row->cycles == cell || g_ptr_array_find (row->cells, cell, cell_index))
        return row;
    }

  return NULL;
}

static void
changed_cb (BbReadingGrid *self,
            GtkWidget     *cell)
{
  guint row_index = 0;
  guint cell_index = 0;
  BbReadingRow *row = find_row (self, cell, &row_index, &cell_index);

  if (row == NULL)
    return;
  row->touched = TRUE;
  bb_quick_cell_set_fault (cell, NULL);
  g_signal_emit (self, signals[SIGNAL_CHANGED], 0);
}

/* On to the next cell, and from the last one to the first of the next row. */
static void
entered_cb (BbReadingGrid *self,
            GtkWidget     *cell)
{
  guint row_index = 0;
  guint cell_index = 0;
  BbReadingRow *row = find_row (self, cell, &row_index, &cell_index);

  if (row == NULL)
    return;
  if (cell_index + 1 < row->cells->len)
    gtk_widget_grab_focus (row->cells->pdata[cell_index + 1]);
  else if (row_index + 1 < self->rows->len)
    gtk_widget_grab_focus (((BbReadingRow *) self->rows->pdata[row_index + 1])->cells->pdata[0]);
}

static GtkWidget *
make_label (const char *text,
            const char *css_class)
{
  GtkWidget *label = gtk_label_new (text);

  gtk_label_set_xalign (GTK_LABEL (label), 0.0f);
  gtk_widget_add_css_class (label, css_class);

  return label;
}

static void
add_headings (BbReadingGrid *self)
{
  int column = 0;

  gtk_grid_attach (self->grid, make_label (_(bb_wash_test_table.title), "dim-label"), column++, 0, 1, 1);
  for (guint f = 0; f < bb_reading_table.n_fields; f++)
    {
      const BbField *field = &bb_reading_table.fields[f];

      if (field->quick || g_str_equal (field->name, "cycles"))
        {
          GtkWidget *label = make_label (_(field->title), "dim-label");

          gtk_widget_set_tooltip_text (label, _(field->help));
          gtk_grid_attach (self->grid, label, column++, 0, 1, 1);
        }
    }
}

static GtkWidget *
make_cycles (BbReadingGrid      *self,
             const BbReadingRow *row)
{
  GtkWidget *entry = gtk_entry_new ();
  g_autofree char *text = g_strdup_printf ("%" G_GINT64_FORMAT, row->reading->cycles);
  g_autofree char *name = g_strdup_printf (_("%s, cycles"), bb_reading_row_get_test (row)->code);

  gtk_editable_set_text (GTK_EDITABLE (entry), text);
  gtk_editable_set_width_chars (GTK_EDITABLE (entry), CYCLES_WIDTH);
  gtk_editable_set_max_width_chars (GTK_EDITABLE (entry), CYCLES_WIDTH);
  gtk_entry_set_alignment (GTK_ENTRY (entry), 1.0f);
  gtk_widget_set_valign (entry, GTK_ALIGN_CENTER);
  bb_compat_set_name (entry, name);
  g_signal_connect_object (entry, "changed", G_CALLBACK (changed_cb), self, G_CONNECT_SWAPPED);

  return entry;
}

static GtkWidget *
make_cell (BbReadingGrid      *self,
           const BbReadingRow *row,
           const BbField      *field)
{
  GtkWidget *cell = bb_quick_cell_new (field, bb_reading_row_get_test (row)->code);

  bb_quick_cell_set_chosen (BB_QUICK_CELL (cell), bb_quick_get (field, row->reading));
  gtk_widget_set_valign (cell, GTK_ALIGN_CENTER);
  g_signal_connect_object (cell, "changed", G_CALLBACK (changed_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (cell, "entered", G_CALLBACK (entered_cb), self, G_CONNECT_SWAPPED);

  return cell;
}

static void
add_row (BbReadingGrid   *self,
         const BbDueLine *due)
{
  BbReadingRow *row = bb_reading_row_new (self->session, due);
  const int line = (int) self->rows->len + 1;
  int column = 0;

  row->cycles = make_cycles (self, row);
  g_ptr_array_add (self->rows, row);
  gtk_grid_attach (self->grid, bb_reading_row_make_title (row), column++, line, 1, 1);
  gtk_grid_attach (self->grid, row->cycles, column++, line, 1, 1);
  for (guint f = 0; f < bb_reading_table.n_fields; f++)
    if (bb_reading_table.fields[f].quick)
      {
        GtkWidget *cell = make_cell (self, row, &bb_reading_table.fields[f]);

        g_ptr_array_add (row->cells, cell);
        gtk_grid_attach (self->grid, cell, column++, line, 1, 1);
      }
}

static void
bb_reading_grid_dispose (GObject *object)
{
  BbReadingGrid *self = BB_READING_GRID (object);

  g_ptr_array_set_size (self->rows, 0);
  g_clear_pointer (&self->lines, g_ptr_array_unref);
  g_clear_object (&self->session);
  adw_bin_set_child (ADW_BIN (self), NULL);

  G_OBJECT_CLASS (bb_reading_grid_parent_class)->dispose (object);
}

static void
bb_reading_grid_finalize (GObject *object)
{
  g_ptr_array_unref (BB_READING_GRID (object)->rows);

  G_OBJECT_CLASS (bb_reading_grid_parent_class)->finalize (object);
}

static void
bb_reading_grid_class_init (BbReadingGridClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = bb_reading_grid_dispose;
  G_OBJECT_CLASS (klass)->finalize = bb_reading_grid_finalize;

  /**
   * BbReadingGrid::changed:
   *
   * Something was entered.
   */
  signals[SIGNAL_CHANGED] = g_signal_new ("changed", BB_TYPE_READING_GRID, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                          G_TYPE_NONE, 0);

  gtk_widget_class_set_template_from_resource (widget_class, "/io/blankbook/Blankbook/bb-reading-grid.ui");
  gtk_widget_class_bind_template_child (widget_class, BbReadingGrid, grid);
}

static void
bb_reading_grid_init (BbReadingGrid *self)
{
  self->rows = g_ptr_array_new_with_free_func ((GDestroyNotify) bb_reading_row_free);
  gtk_widget_init_template (GTK_WIDGET (self));
}

/**
 * bb_reading_grid_fill:
 * @self: a grid without rows
 * @session: the session
 * @lines: (transfer full) (element-type BbDueLine): specimens, what has waited longest first
 *
 * Makes a row for each specimen that has to be graded now, as far as there is room. To be called once.
 *
 * Returns: how many there is no room for
 */
guint
bb_reading_grid_fill (BbReadingGrid *self,
                      BbSession     *session,
                      GPtrArray     *lines)
{
  guint n_left_out = 0;

  g_return_val_if_fail (BB_IS_READING_GRID (self) && BB_IS_SESSION (session) && self->lines == NULL, 0);

  self->session = g_object_ref (session);
  self->lines = lines;
  add_headings (self);
  for (guint i = 0; i < lines->len; i++)
    {
      const BbDueLine *due = lines->pdata[i];

      if (due->due.state != BB_DUE_OVERDUE && due->due.state != BB_DUE_TODAY)
        continue;
      if (self->rows->len < MOST_ROWS)
        add_row (self, due);
      else
        n_left_out++;
    }

  return n_left_out;
}

/**
 * bb_reading_grid_get_n_rows:
 * @self: a grid
 *
 * Returns: how many specimens it has
 */
guint
bb_reading_grid_get_n_rows (BbReadingGrid *self)
{
  g_return_val_if_fail (BB_IS_READING_GRID (self), 0);

  return self->rows->len;
}

/**
 * bb_reading_grid_focus:
 * @self: a grid
 *
 * Puts the keyboard into the first cell, where there is one.
 */
void
bb_reading_grid_focus (BbReadingGrid *self)
{
  g_return_if_fail (BB_IS_READING_GRID (self));

  if (self->rows->len > 0)
    gtk_widget_grab_focus (((BbReadingRow *) self->rows->pdata[0])->cells->pdata[0]);
}

/**
 * bb_reading_grid_save:
 * @self: a grid
 *
 * Returns: (transfer full): what was entered, valid or not, for bb_reading_grid_restore()
 */
char *
bb_reading_grid_save (BbReadingGrid *self)
{
  GVariantBuilder builder;
  g_autoptr (GVariant) state = NULL;

  g_return_val_if_fail (BB_IS_READING_GRID (self), NULL);

  g_variant_builder_init (&builder, G_VARIANT_TYPE (KEPT_TYPE));
  for (guint i = 0; i < self->rows->len; i++)
    if (((const BbReadingRow *) self->rows->pdata[i])->touched)
      g_variant_builder_add_value (&builder, bb_reading_row_save (self->rows->pdata[i]));
  state = g_variant_ref_sink (g_variant_builder_end (&builder));

  return g_variant_print (state, FALSE);
}

/**
 * bb_reading_grid_restore:
 * @self: a grid with its rows
 * @saved: what bb_reading_grid_save() gave
 *
 * Brings back what was entered for the specimens that are still here.
 */
void
bb_reading_grid_restore (BbReadingGrid *self,
                         const char    *saved)
{
  g_autoptr (GVariant) state = g_variant_parse (G_VARIANT_TYPE (KEPT_TYPE), saved, NULL, NULL, NULL);
  GVariantIter iter;
  gint64 test = 0;
  const char *cycles = NULL;
  GVariant *cells = NULL;

  g_return_if_fail (BB_IS_READING_GRID (self));

  if (state == NULL)
    return;
  g_variant_iter_init (&iter, state);
  while (g_variant_iter_next (&iter, "(x&s@ai)", &test, &cycles, &cells))
    {
      for (guint i = 0; i < self->rows->len; i++)
        if (bb_reading_row_get_test (self->rows->pdata[i])->id == test)
          bb_reading_row_restore (self->rows->pdata[i], cycles, cells);
      g_variant_unref (cells);
    }
}

/**
 * bb_reading_grid_collect:
 * @self: a grid
 * @problem: (out) (transfer full) (nullable): what is wrong with the first cell that is, else %NULL
 *
 * Reads the rows in which something was entered. What is wrong is marked at each cell, and the first of them gets the
 * keyboard.
 *
 * Returns: (transfer full) (element-type BbReading): copies of the readings, to be written where there is no @problem
 */
GPtrArray *
bb_reading_grid_collect (BbReadingGrid  *self,
                         char          **problem)
{
  GPtrArray *readings = g_ptr_array_new_with_free_func ((GDestroyNotify) bb_reading_free);
  GtkWidget *faulty = NULL;

  *problem = NULL;
  for (guint i = 0; i < self->rows->len; i++)
    {
      BbReadingRow *row = self->rows->pdata[i];

      if (!row->touched)
        continue;
      bb_reading_row_read (row, bb_session_get_units (self->session), &faulty, problem);
      /* A new reading is of whoever is at the bench now, one that is gone on with of whoever began it. */
      if (row->reading->id == BB_INTEGER_NONE || row->reading->person == 0)
        row->reading->person = bb_session_get_person (self->session);
      g_ptr_array_add (readings, bb_record_copy (&bb_reading_table, row->reading));
    }

  if (faulty != NULL)
    gtk_widget_grab_focus (faulty);

  return readings;
}
