/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-reading-table"

#include "bb-reading-table.h"

#include <glib/gi18n-lib.h>

#include "bb-evidence-load.h"
#include "bb-moment.h"
#include "bb-person-menu.h"
#include "bb-problem.h"
#include "bb-quick-cell.h"
#include "bb-quick.h"
#include "bb-reading-row.h"
#include "bb-session-due.h"
#include "bb-show.h"

/* More than anybody grades in a day, and few enough to be made at once. */
#define MOST_ROWS 60

/* Characters of a count of washes. */
#define CYCLES_WIDTH 4

/* Under this key what was entered is kept until it is saved or given up: specimen, cycles, and a value each cell. */
#define KEPT_KEY "reading-table"
#define KEPT_TYPE "a(xsai)"

struct _BbReadingTable
{
  AdwWindow parent_instance;

  /* template */
  GtkLabel *hint_label;
  GtkDropDown *person_drop_down;
  GtkRevealer *fault_revealer;
  GtkLabel *fault_label;
  GtkGrid *grid;

  /* owned */
  BbSession *session;
  GCancellable *loading;
  GPtrArray *lines;
  GPtrArray *rows;

  gboolean saving;
};

G_DEFINE_FINAL_TYPE (BbReadingTable, bb_reading_table, ADW_TYPE_WINDOW)

static BbReadingRow *
find_row (BbReadingTable *self,
          GtkWidget      *cell,
          guint          *row_index,
          guint          *cell_index)
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
keep (BbReadingTable *self)
{
  GVariantBuilder builder;
  g_autoptr (GVariant) state = NULL;
  g_autofree char *text = NULL;

  g_variant_builder_init (&builder, G_VARIANT_TYPE (KEPT_TYPE));
  for (guint i = 0; i < self->rows->len; i++)
    if (((const BbReadingRow *) self->rows->pdata[i])->touched)
      g_variant_builder_add_value (&builder, bb_reading_row_save (self->rows->pdata[i]));
  state = g_variant_ref_sink (g_variant_builder_end (&builder));
  text = g_variant_print (state, FALSE);
  bb_session_keep_form (self->session, KEPT_KEY, text);
}

/* What was entered when the window went away. */
static void
restore (BbReadingTable *self)
{
  g_autofree char *text = bb_session_dup_form (self->session, KEPT_KEY);
  g_autoptr (GVariant) state = text != NULL ? g_variant_parse (G_VARIANT_TYPE (KEPT_TYPE), text, NULL, NULL, NULL)
                                            : NULL;
  GVariantIter iter;
  gint64 test = 0;
  const char *cycles = NULL;
  GVariant *cells = NULL;

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

static void
changed_cb (BbReadingTable *self,
            GtkWidget      *cell)
{
  guint row_index = 0;
  guint cell_index = 0;
  BbReadingRow *row = find_row (self, cell, &row_index, &cell_index);

  if (row == NULL)
    return;
  row->touched = TRUE;
  bb_quick_cell_set_fault (cell, NULL);
  gtk_revealer_set_reveal_child (self->fault_revealer, FALSE);
  keep (self);
}

/* On to the next cell, and from the last one to the first of the next row. */
static void
entered_cb (BbReadingTable *self,
            GtkWidget      *cell)
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
add_headings (BbReadingTable *self)
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
make_cycles (BbReadingTable *self,
             const BbReadingRow      *row)
{
  GtkWidget *entry = gtk_entry_new ();
  g_autofree char *text = g_strdup_printf ("%" G_GINT64_FORMAT, row->reading->cycles);
  g_autofree char *name = g_strdup_printf (_("%s, cycles"), bb_reading_row_get_test (row)->code);

  gtk_editable_set_text (GTK_EDITABLE (entry), text);
  gtk_editable_set_width_chars (GTK_EDITABLE (entry), CYCLES_WIDTH);
  gtk_editable_set_max_width_chars (GTK_EDITABLE (entry), CYCLES_WIDTH);
  gtk_entry_set_alignment (GTK_ENTRY (entry), 1.0f);
  gtk_widget_set_valign (entry, GTK_ALIGN_CENTER);
  gtk_accessible_update_property (GTK_ACCESSIBLE (entry), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
  g_signal_connect_object (entry, "changed", G_CALLBACK (changed_cb), self, G_CONNECT_SWAPPED);

  return entry;
}

static GtkWidget *
make_cell (BbReadingTable *self,
           const BbReadingRow      *row,
           const BbField  *field)
{
  GtkWidget *cell = bb_quick_cell_new (field, bb_reading_row_get_test (row)->code);

  bb_quick_cell_set_chosen (BB_QUICK_CELL (cell), bb_quick_get (field, row->reading));
  gtk_widget_set_valign (cell, GTK_ALIGN_CENTER);
  g_signal_connect_object (cell, "changed", G_CALLBACK (changed_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (cell, "entered", G_CALLBACK (entered_cb), self, G_CONNECT_SWAPPED);

  return cell;
}

static void
add_row (BbReadingTable  *self,
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

static char *
describe_hint (BbReadingTable *self,
               guint           n_left_out)
{
  const char *keys = _("Keys: 5 to 1 for whole grades, 9 to 6 for 4-5 to 1-2; 1, 2, 3 for none, slight, marked. "
                       "Rows without an entry are left alone.");
  g_autofree char *today = bb_dup_today ();
  g_autofree char *day = bb_show_date (today);
  /* Translators: a day. */
  g_autofree char *dated = g_strdup_printf (_("Dated %s."), day);
  g_autofree char *more = NULL;

  if (self->rows->len == 0)
    return g_strdup (_("Nothing has to be graded now."));
  if (n_left_out > 0)
    more = g_strdup_printf (ngettext ("%u more waits, and comes once these are saved.",
                                      "%u more wait, and come once these are saved.", n_left_out), n_left_out);

  return g_strjoin (" ", keys, dated, more, NULL);
}

static void
fill (BbReadingTable *self)
{
  guint n_left_out = 0;
  g_autofree char *hint = NULL;

  add_headings (self);
  for (guint i = 0; i < self->lines->len; i++)
    {
      const BbDueLine *due = self->lines->pdata[i];

      if (due->due.state != BB_DUE_OVERDUE && due->due.state != BB_DUE_TODAY)
        continue;
      if (self->rows->len < MOST_ROWS)
        add_row (self, due);
      else
        n_left_out++;
    }
  restore (self);
  hint = describe_hint (self, n_left_out);
  gtk_label_set_label (self->hint_label, hint);
  if (self->rows->len > 0)
    gtk_widget_grab_focus (((BbReadingRow *) self->rows->pdata[0])->cells->pdata[0]);
}

static void
loaded_cb (GObject      *source,
           GAsyncResult *result,
           gpointer      data)
{
  g_autoptr (BbReadingTable) self = data;
  g_autoptr (GError) error = NULL;
  GPtrArray *lines = bb_session_load_due_finish (BB_SESSION (source), result, &error);

  if (lines == NULL)
    {
      bb_session_report (BB_SESSION (source), error);
      return;
    }
  self->lines = lines;
  fill (self);
}

/* What is wrong with a cell is said at the cell; the first of them gets the keyboard. */
static void
mark (BbReadingTable  *self,
      const BbReadingRow       *row,
      GtkWidget       *cell,
      const char      *title,
      const char      *message,
      GtkWidget      **first)
{
  bb_quick_cell_set_fault (cell, message);
  if (*first != NULL)
    return;
  *first = cell;
  {
    /* Translators: a specimen, a field, and what is wrong with it. */
    g_autofree char *text = g_strdup_printf (_("%s, %s: %s"), bb_reading_row_get_test (row)->code, title, message);

    gtk_label_set_label (self->fault_label, text);
  }
}

static void
read_cycles (BbReadingTable  *self,
             BbReadingRow             *row,
             GtkWidget      **first)
{
  const BbField *field = bb_table_find_field (&bb_reading_table, "cycles");
  const char *text = gtk_editable_get_text (GTK_EDITABLE (row->cycles));
  const BbReading *other = NULL;
  g_autofree char *message = NULL;
  gint64 cycles = 0;
  BbProblem problem;

  bb_quick_cell_set_fault (row->cycles, NULL);
  row->reading->cycles = g_ascii_string_to_signed (text, 10, 0, G_MAXINT32, &cycles, NULL) ? cycles : BB_INTEGER_NONE;
  other = bb_wash_line_find_reading (row->due->line, row->reading->cycles);
  if (bb_field_find_problem (field, row->reading, &problem))
    message = bb_problem_to_text (&problem, bb_session_get_units (self->session));
  else if (other != NULL && other->id != row->reading->id)
    message = g_strdup (_("This specimen was read after as many washes before: correct that reading."));
  if (message != NULL)
    mark (self, row, row->cycles, _(field->title), message, first);
}

static void
read_cells (BbReadingTable  *self,
            BbReadingRow             *row,
            GtkWidget      **first)
{
  for (guint i = 0; i < row->cells->len; i++)
    {
      BbQuickCell *cell = row->cells->pdata[i];
      const BbField *field = bb_quick_cell_get_field (cell);
      BbProblem problem;

      bb_quick_set (field, row->reading, bb_quick_cell_get_chosen (cell));
      bb_quick_cell_set_fault (GTK_WIDGET (cell), NULL);
      if (bb_field_find_problem (field, row->reading, &problem))
        {
          g_autofree char *message = bb_problem_to_text (&problem, bb_session_get_units (self->session));

          mark (self, row, GTK_WIDGET (cell), _(field->title), message, first);
        }
    }
}

/* Shared with the writing thread; all are written or none. */
static gboolean
write_readings (BbBook   *book,
                gpointer  data,
                GError  **error)
{
  GPtrArray *readings = data;

  for (guint i = 0; i < readings->len; i++)
    if (!bb_book_save (book, &bb_reading_table, readings->pdata[i], error))
      return FALSE;

  return TRUE;
}

static void
saved_cb (GObject      *source,
          GAsyncResult *result,
          gpointer      data)
{
  g_autoptr (BbReadingTable) self = data;
  g_autoptr (GError) error = NULL;

  self->saving = FALSE;
  if (bb_session_write_finish (BB_SESSION (source), result, &error))
    {
      gtk_window_close (GTK_WINDOW (self));
      return;
    }
  /* What was entered is kept, also where the whole window is gone. */
  if (!gtk_widget_get_visible (GTK_WIDGET (self)))
    {
      bb_session_report (BB_SESSION (source), error);
      return;
    }
  gtk_label_set_label (self->fault_label, error->message);
  gtk_revealer_set_reveal_child (self->fault_revealer, TRUE);
}

static GPtrArray *
collect (BbReadingTable  *self,
         GtkWidget      **first)
{
  GPtrArray *readings = g_ptr_array_new_with_free_func ((GDestroyNotify) bb_reading_free);

  for (guint i = 0; i < self->rows->len; i++)
    {
      BbReadingRow *row = self->rows->pdata[i];

      if (!row->touched)
        continue;
      read_cycles (self, row, first);
      read_cells (self, row, first);
      /* A new reading is of whoever is at the bench now, one that is gone on with of whoever began it. */
      if (row->reading->id == BB_INTEGER_NONE || row->reading->person == 0)
        row->reading->person = bb_session_get_person (self->session);
      g_ptr_array_add (readings, bb_record_copy (&bb_reading_table, row->reading));
    }

  return readings;
}

/* A grade is worth what its reader's eye is worth. Where the shop has named nobody there is nobody to choose. */
static gboolean
lacks_person (BbReadingTable *self)
{
  return bb_session_get_person (self->session) == 0 &&
         g_list_model_get_n_items (gtk_drop_down_get_model (self->person_drop_down)) > 1;
}

static void
ask_for_person (BbReadingTable *self)
{
  gtk_label_set_label (self->fault_label, _("Say first who graded these: choose the person above."));
  gtk_revealer_set_reveal_child (self->fault_revealer, TRUE);
  gtk_widget_grab_focus (GTK_WIDGET (self->person_drop_down));
}

static void
save_action (GtkWidget  *widget,
             const char *name,
             GVariant   *parameter)
{
  BbReadingTable *self = BB_READING_TABLE (widget);
  GtkWidget *first = NULL;
  g_autoptr (GPtrArray) readings = NULL;

  (void) name;
  (void) parameter;

  if (self->saving)
    return;
  readings = collect (self, &first);
  if (first != NULL)
    {
      gtk_revealer_set_reveal_child (self->fault_revealer, TRUE);
      gtk_widget_grab_focus (first);
      return;
    }
  if (readings->len == 0)
    {
      gtk_window_close (GTK_WINDOW (self));
      return;
    }
  if (lacks_person (self))
    {
      ask_for_person (self);
      return;
    }
  self->saving = TRUE;
  bb_session_write_async (self->session, write_readings, g_steal_pointer (&readings),
                          (GDestroyNotify) g_ptr_array_unref, saved_cb, g_object_ref (self));
}

/* Not while it is being saved. Otherwise what was entered is saved by now, or given up. */
static gboolean
bb_reading_table_close_request (GtkWindow *window)
{
  BbReadingTable *self = BB_READING_TABLE (window);

  if (self->saving)
    return TRUE;
  bb_session_keep_form (self->session, KEPT_KEY, NULL);

  return GTK_WINDOW_CLASS (bb_reading_table_parent_class)->close_request (window);
}

static void
bb_reading_table_dispose (GObject *object)
{
  BbReadingTable *self = BB_READING_TABLE (object);

  if (self->loading != NULL)
    g_cancellable_cancel (self->loading);
  g_clear_object (&self->loading);
  g_ptr_array_set_size (self->rows, 0);
  g_clear_pointer (&self->lines, g_ptr_array_unref);
  g_clear_object (&self->session);
  gtk_widget_dispose_template (GTK_WIDGET (self), BB_TYPE_READING_TABLE);

  G_OBJECT_CLASS (bb_reading_table_parent_class)->dispose (object);
}

static void
bb_reading_table_finalize (GObject *object)
{
  g_ptr_array_unref (BB_READING_TABLE (object)->rows);

  G_OBJECT_CLASS (bb_reading_table_parent_class)->finalize (object);
}

static void
bb_reading_table_class_init (BbReadingTableClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = bb_reading_table_dispose;
  G_OBJECT_CLASS (klass)->finalize = bb_reading_table_finalize;
  GTK_WINDOW_CLASS (klass)->close_request = bb_reading_table_close_request;

  gtk_widget_class_set_template_from_resource (widget_class, "/io/blankbook/Blankbook/bb-reading-table.ui");
  gtk_widget_class_bind_template_child (widget_class, BbReadingTable, hint_label);
  gtk_widget_class_bind_template_child (widget_class, BbReadingTable, person_drop_down);
  gtk_widget_class_bind_template_child (widget_class, BbReadingTable, fault_revealer);
  gtk_widget_class_bind_template_child (widget_class, BbReadingTable, fault_label);
  gtk_widget_class_bind_template_child (widget_class, BbReadingTable, grid);
  gtk_widget_class_install_action (widget_class, "table.save", NULL, save_action);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_s, GDK_CONTROL_MASK, "table.save", NULL);
}

static void
bb_reading_table_init (BbReadingTable *self)
{
  self->rows = g_ptr_array_new_with_free_func ((GDestroyNotify) bb_reading_row_free);
  gtk_widget_init_template (GTK_WIDGET (self));
}

/**
 * bb_reading_table_new:
 * @parent: the window that asks
 * @session: the session
 *
 * Returns: (transfer none): a table, not yet presented, of what has to be graded now, what has waited longest first
 */
GtkWidget *
bb_reading_table_new (GtkWindow *parent,
                      BbSession *session)
{
  BbReadingTable *self = g_object_new (BB_TYPE_READING_TABLE, "transient-for", parent, NULL);

  self->session = g_object_ref (session);
  bb_person_menu_connect (self->person_drop_down, session);
  self->loading = g_cancellable_new ();
  bb_session_load_due_async (session, self->loading, loaded_cb, g_object_ref (self));

  return GTK_WIDGET (self);
}
