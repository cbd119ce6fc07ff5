/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-form"

#include "bb-form-private.h"

#include "bb-form-layout.h"

G_DEFINE_FINAL_TYPE (BbForm, bb_form, GTK_TYPE_BOX)

enum {
  SIGNAL_CHANGED,
  N_SIGNALS
};

static guint signals[N_SIGNALS];

/**
 * bb_form_find_row:
 * @self: a form
 * @field: a field of its table
 *
 * Returns: (transfer none) (nullable): the row that edits it; %NULL where no form asks for it
 */
BbFieldRow *
bb_form_find_row (BbForm        *self,
                  const BbField *field)
{
  for (guint i = 0; i < self->rows->len; i++)
    if (bb_field_row_get_field (self->rows->pdata[i]) == field)
      return self->rows->pdata[i];

  return NULL;
}

static void
row_changed_cb (BbForm *self)
{
  bb_record_free (self->table, bb_form_dup_record (self, FALSE));
  g_signal_emit (self, signals[SIGNAL_CHANGED], 0);
}

static void
units_changed_cb (BbForm *self)
{
  for (guint i = 0; i < self->rows->len; i++)
    bb_field_row_refresh (self->rows->pdata[i]);

  /* What was kept of the form speaks in the old units: it has to be kept anew. */
  row_changed_cb (self);
}

static void
add_rows (BbForm *self)
{
  for (guint i = 0; i < self->table->n_fields; i++)
    {
      const BbField *field = &self->table->fields[i];
      BbFieldRow *row = NULL;

      if (field->derived || field->beside || bb_table_is_second_part (self->table, field))
        continue;

      row = bb_field_row_new (self->session, self->table, field);
      g_signal_connect_object (row, "changed", G_CALLBACK (row_changed_cb), self, G_CONNECT_SWAPPED);
      g_ptr_array_add (self->rows, row);
    }
}

static void
bb_form_dispose (GObject *object)
{
  BbForm *self = BB_FORM (object);

  g_clear_pointer (&self->rows, g_ptr_array_unref);
  if (self->base != NULL)
    bb_record_free (self->table, g_steal_pointer (&self->base));
  g_clear_object (&self->session);

  G_OBJECT_CLASS (bb_form_parent_class)->dispose (object);
}

static void
bb_form_class_init (BbFormClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = bb_form_dispose;

  /**
   * BbForm::changed:
   *
   * The person typed or chose something else.
   */
  signals[SIGNAL_CHANGED] = g_signal_new ("changed", BB_TYPE_FORM, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                          G_TYPE_NONE, 0);
}

static void
bb_form_init (BbForm *self)
{
  self->rows = g_ptr_array_new ();
  gtk_orientable_set_orientation (GTK_ORIENTABLE (self), GTK_ORIENTATION_VERTICAL);
  gtk_box_set_spacing (GTK_BOX (self), 18);
}

static GtkWidget *
make (BbSession     *session,
      const BbTable *table,
      BbFormLayout   lay_out)
{
  BbForm *self = g_object_new (BB_TYPE_FORM, NULL);

  self->session = g_object_ref (session);
  self->table = table;
  self->base = bb_record_new (table);
  add_rows (self);
  lay_out (GTK_BOX (self), self->rows);
  bb_form_load (self, self->base);
  g_signal_connect_object (session, "units-changed", G_CALLBACK (units_changed_cb), self, G_CONNECT_SWAPPED);

  return GTK_WIDGET (self);
}

/**
 * bb_form_new:
 * @session: the session
 * @table: the table of the record to edit
 *
 * Returns: (transfer floating): a form that shows the table's defaults
 */
GtkWidget *
bb_form_new (BbSession     *session,
             const BbTable *table)
{
  g_return_val_if_fail (BB_IS_SESSION (session) && table != NULL, NULL);

  return make (session, table, bb_form_layout_column);
}

/**
 * bb_form_new_strip:
 * @session: the session
 * @table: the table of the record to edit
 *
 * Returns: (transfer floating): the same for a few fields, beside each other
 */
GtkWidget *
bb_form_new_strip (BbSession     *session,
                   const BbTable *table)
{
  g_return_val_if_fail (BB_IS_SESSION (session) && table != NULL, NULL);

  return make (session, table, bb_form_layout_strip);
}

/**
 * bb_form_get_table:
 * @self: a form
 *
 * Returns: the table of the record that the form edits
 */
const BbTable *
bb_form_get_table (BbForm *self)
{
  g_return_val_if_fail (BB_IS_FORM (self), NULL);

  return self->table;
}

/**
 * bb_form_fix:
 * @self: a form
 * @field: a field of its table
 *
 * Leaves a field as it is loaded: the place where the form was opened has decided it.
 */
void
bb_form_fix (BbForm        *self,
             const BbField *field)
{
  BbFieldRow *row = bb_form_find_row (self, field);

  g_return_if_fail (row != NULL);

  gtk_widget_set_visible (GTK_WIDGET (row), FALSE);
}

/**
 * bb_form_set_fixed:
 * @self: a form
 * @field: a field of its table that holds a number
 * @value: what it holds from now on, or NaN for nothing
 *
 * Changes one value and leaves alone what the person typed elsewhere. A value that is not allowed is marked as if the
 * person had typed it.
 */
void
bb_form_set_fixed (BbForm        *self,
                   const BbField *field,
                   double         value)
{
  BbFieldRow *row = bb_form_find_row (self, field);

  g_return_if_fail (row != NULL);

  bb_field_set_number (field, self->base, value);
  bb_field_row_load (row, self->base);
  if (!isnan (value))
    bb_field_row_set_touched (row, TRUE);
}

/**
 * bb_form_take:
 * @self: a form
 * @field: a field of its table
 * @record: a record that has it
 *
 * Takes over one value from what stands beside the form, and leaves alone what the person typed elsewhere. Says that it
 * changed.
 */
void
bb_form_take (BbForm        *self,
              const BbField *field,
              gconstpointer  record)
{
  BbFieldRow *row = bb_form_find_row (self, field);

  g_return_if_fail (BB_IS_FORM (self) && record != NULL);

  bb_field_copy (field, record, self->base);
  if (row != NULL)
    bb_field_row_load (row, self->base);
  row_changed_cb (self);
}

/**
 * bb_form_load:
 * @self: a form
 * @record: a record of its table
 *
 * Shows a record. What the form has no row for is kept as the record has it.
 */
void
bb_form_load (BbForm        *self,
              gconstpointer  record)
{
  g_return_if_fail (BB_IS_FORM (self));

  if (record != self->base)
    {
      bb_record_free (self->table, self->base);
      self->base = bb_record_copy (self->table, record);
    }
  for (guint i = 0; i < self->rows->len; i++)
    bb_field_row_load (self->rows->pdata[i], record);
}

/**
 * bb_form_focus_start:
 * @self: a form
 *
 * Puts the keyboard where a person begins: into the first field that has to be filled in and is empty, or the first. A
 * form that is not shown yet is left alone.
 */
void
bb_form_focus_start (BbForm *self)
{
  g_return_if_fail (BB_IS_FORM (self));

  /* GTK 4.8 never tells assistive technologies of a window whose entry has the keyboard before it is shown. */
  if (!gtk_widget_get_mapped (GTK_WIDGET (self)))
    return;

  for (guint i = 0; i < self->rows->len; i++)
    {
      BbFieldRow *row = self->rows->pdata[i];
      const BbField *field = bb_field_row_get_field (row);

      if (field->required && !bb_field_is_set (field, self->base) && gtk_widget_get_visible (GTK_WIDGET (row)) &&
          bb_field_row_focus (row))
        return;
    }
  gtk_widget_child_focus (GTK_WIDGET (self), GTK_DIR_TAB_FORWARD);
}

/**
 * bb_form_dup_draft:
 * @self: a form
 *
 * Returns: (transfer full): the record as far as it can be read: what is wrong or missing is left empty
 */
gpointer
bb_form_dup_draft (BbForm *self)
{
  gpointer record = NULL;

  g_return_val_if_fail (BB_IS_FORM (self), NULL);

  record = bb_record_copy (self->table, self->base);
  for (guint i = 0; i < self->rows->len; i++)
    {
      g_autofree char *message = NULL;

      bb_field_row_store (self->rows->pdata[i], record, &message);
    }

  return record;
}
