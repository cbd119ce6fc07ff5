/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-entry-row"

#include "bb-entry-row.h"

#include <glib/gi18n-lib.h>

#include "bb-colour-button.h"
#include "bb-date-button.h"
#include "bb-signal.h"

/* Wide enough for most names, narrow enough for the smallest window. */
#define TEXT_WIDTH 40
#define LEAST_TEXT_WIDTH 20
#define NUMBER_WIDTH 8
#define DATE_WIDTH 11

struct _BbEntryRow
{
  BbFieldRow parent_instance;

  GtkEntry *entry;

  /* What the record holds and how it was last shown: a text that nobody touched keeps the exact value. */
  double number;
  double second;
  char *shown;

  /* What was typed last, as it was understood then: other units must not give it another meaning. */
  char *typed;
  double typed_number;
  double typed_second;
  BbUnitSystem typed_system;
};

G_DEFINE_FINAL_TYPE (BbEntryRow, bb_entry_row, BB_TYPE_FIELD_ROW)

static gboolean
is_numeric (const BbField *field)
{
  return field->kind == BB_KIND_NUMBER || field->kind == BB_KIND_INTEGER;
}

static const BbField *
find_second (BbFieldRow *row)
{
  const BbField *field = bb_field_row_get_field (row);

  return field->parts_with == NULL ? NULL : bb_table_find_field (bb_field_row_get_table (row), field->parts_with);
}

static void
changed_cb (GtkEditable *editable,
            BbEntryRow  *self)
{
  (void) editable;

  bb_field_row_edited (BB_FIELD_ROW (self));
}

static void
set_text (BbEntryRow *self,
          const char *text)
{
  g_signal_handlers_block_by_func (self->entry, BB_HANDLER (changed_cb), self);
  gtk_editable_set_text (GTK_EDITABLE (self->entry), text);
  g_signal_handlers_unblock_by_func (self->entry, BB_HANDLER (changed_cb), self);
}

static const BbUnitContext *
get_units (BbEntryRow *self)
{
  return bb_session_get_units (bb_field_row_get_session (BB_FIELD_ROW (self)));
}

static char *
format (BbEntryRow          *self,
        const BbUnitContext *units)
{
  const BbField *field = bb_field_row_get_field (BB_FIELD_ROW (self));

  if (isnan (self->number))
    return g_strdup ("");
  if (field->parts_with != NULL)
    return isnan (self->second) ? g_strdup ("") : bb_dilution_format (self->number, self->second, units);
  if (field->kind == BB_KIND_INTEGER)
    return g_strdup_printf ("%.0f", self->number);

  return bb_quantity_format_typed (field->quantity, self->number, units);
}

static void
show_number (BbEntryRow *self)
{
  g_free (self->shown);
  self->shown = format (self, get_units (self));
  set_text (self, self->shown);
}

static void
set_width (BbEntryRow *self,
           int         least,
           int         most)
{
  gtk_editable_set_width_chars (GTK_EDITABLE (self->entry), least);
  gtk_editable_set_max_width_chars (GTK_EDITABLE (self->entry), most);
}

/* Days and colours can be chosen as well as typed. */
static GtkWidget *
make_editor (BbEntryRow    *self,
             const BbField *field)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);

  gtk_box_append (GTK_BOX (box), GTK_WIDGET (self->entry));
  if (field->kind == BB_KIND_DATE)
    gtk_box_append (GTK_BOX (box), bb_date_button_new (GTK_EDITABLE (self->entry)));
  else if (field->colour)
    gtk_box_append (GTK_BOX (box), bb_colour_button_new (GTK_EDITABLE (self->entry)));

  return box;
}

static gboolean
is_entered_quickly (const BbTable *table)
{
  for (guint i = 0; i < table->n_fields; i++)
    if (table->fields[i].quick)
      return TRUE;

  return FALSE;
}

/* Who enters by single keys goes on like that: Enter saves. */
static void
activate_cb (BbEntryRow *self)
{
  if (is_entered_quickly (bb_field_row_get_table (BB_FIELD_ROW (self))))
    gtk_widget_activate_action (GTK_WIDGET (self), "editor.save", NULL);
}

static void
bb_entry_row_build (BbFieldRow *row)
{
  BbEntryRow *self = BB_ENTRY_ROW (row);
  const BbField *field = bb_field_row_get_field (row);

  self->entry = GTK_ENTRY (gtk_entry_new ());
  gtk_widget_set_valign (GTK_WIDGET (self->entry), GTK_ALIGN_CENTER);
  g_signal_connect_swapped (self->entry, "activate", G_CALLBACK (activate_cb), self);
  if (is_numeric (field))
    {
      gtk_entry_set_alignment (self->entry, 1.0f);
      set_width (self, NUMBER_WIDTH, NUMBER_WIDTH);
      gtk_widget_add_css_class (GTK_WIDGET (self->entry), "numeral");
    }
  else if (field->kind == BB_KIND_DATE || field->colour)
    set_width (self, DATE_WIDTH, DATE_WIDTH);
  else
    {
      set_width (self, LEAST_TEXT_WIDTH, TEXT_WIDTH);
      gtk_widget_set_hexpand (GTK_WIDGET (self->entry), TRUE);
    }
  g_signal_connect (self->entry, "changed", G_CALLBACK (changed_cb), self);
  bb_field_row_set_editor (row, make_editor (self, field), GTK_WIDGET (self->entry));
}

static void
bb_entry_row_load (BbFieldRow    *row,
                   gconstpointer  record)
{
  BbEntryRow *self = BB_ENTRY_ROW (row);
  const BbField *field = bb_field_row_get_field (row);
  const BbField *second = find_second (row);

  g_clear_pointer (&self->shown, g_free);

  if (!is_numeric (field))
    {
      const char *text = bb_field_get_text (field, record);

      set_text (self, text != NULL ? text : "");
      return;
    }

  self->number = bb_field_get_number (field, record);
  self->second = second != NULL ? bb_field_get_number (second, record) : (double) NAN;
  show_number (self);
}

static gboolean
parse_integer (const char  *text,
               double      *number,
               char       **message)
{
  gint64 value = 0;

  if (!g_ascii_string_to_signed (text, 10, G_MININT32, G_MAXINT32, &value, NULL))
    {
      *message = g_strdup (_("This has to be a whole number."));
      return FALSE;
    }
  *number = (double) value;

  return TRUE;
}

static gboolean
was_typed_in_other_units (BbEntryRow *self,
                          const char *text)
{
  return self->typed_system != get_units (self)->system && g_strcmp0 (self->typed, text) == 0;
}

static void
remember (BbEntryRow  *self,
          const char  *text,
          double       number,
          double       second,
          BbUnitSystem system)
{
  g_free (self->typed);
  self->typed = g_strdup (text);
  self->typed_number = number;
  self->typed_second = second;
  self->typed_system = system;
}

/* What a text says in itself, whatever the record holds and was typed before. */
static gboolean
understand (const BbField       *field,
            const char          *text,
            const BbUnitContext *units,
            double              *number,
            double              *second,
            char               **message)
{
  g_autoptr (GError) error = NULL;

  if (field->kind == BB_KIND_INTEGER)
    return parse_integer (text, number, message);

  if (field->parts_with != NULL ? bb_dilution_parse (text, units, number, second, &error)
                                : bb_quantity_parse (field->quantity, text, units, number, &error))
    return TRUE;

  *message = g_strdup (error->message);
  *number = (double) NAN;
  *second = (double) NAN;

  return FALSE;
}

static gboolean
parse (BbEntryRow  *self,
       const char  *text,
       double      *number,
       double      *second,
       char       **message)
{
  *number = (double) NAN;
  *second = (double) NAN;

  if (*text == '\0')
    return TRUE;
  if (self->shown != NULL && g_str_equal (text, self->shown))
    {
      *number = self->number;
      *second = self->second;
      return TRUE;
    }
  if (was_typed_in_other_units (self, text))
    {
      *number = self->typed_number;
      *second = self->typed_second;
      return TRUE;
    }

  return understand (bb_field_row_get_field (BB_FIELD_ROW (self)), text, get_units (self), number, second, message);
}

static gboolean
bb_entry_row_store (BbFieldRow  *row,
                    gpointer     record,
                    char       **message)
{
  BbEntryRow *self = BB_ENTRY_ROW (row);
  const BbField *field = bb_field_row_get_field (row);
  const BbField *second_field = find_second (row);
  g_autofree char *text = g_strstrip (g_strdup (gtk_editable_get_text (GTK_EDITABLE (self->entry))));
  double number = (double) NAN;
  double second = (double) NAN;
  gboolean understood = TRUE;

  if (!is_numeric (field))
    {
      bb_field_set_text (field, record, *text != '\0' ? text : NULL);
      return TRUE;
    }

  understood = parse (self, text, &number, &second, message);
  if (!was_typed_in_other_units (self, text))
    remember (self, understood ? text : NULL, number, second, get_units (self)->system);
  if (field->kind == BB_KIND_INTEGER)
    bb_field_set_integer (field, record, isnan (number) ? BB_INTEGER_NONE : (gint64) number);
  else
    bb_field_set_number (field, record, number);
  if (second_field != NULL)
    bb_field_set_number (second_field, record, second);

  return understood;
}

static char *
bb_entry_row_dup_state (BbFieldRow *row)
{
  return g_strdup (gtk_editable_get_text (GTK_EDITABLE (BB_ENTRY_ROW (row)->entry)));
}

/* What can't be understood stays as it was typed; everything else is the same value in the new units. */
static void
bb_entry_row_refresh (BbFieldRow *row)
{
  BbEntryRow *self = BB_ENTRY_ROW (row);
  const BbField *field = bb_field_row_get_field (row);
  g_autofree char *text = g_strstrip (g_strdup (gtk_editable_get_text (GTK_EDITABLE (self->entry))));

  if (!is_numeric (field))
    return;

  bb_field_row_set_unit (row, field->parts_with != NULL ? ""
                                                        : bb_quantity_get_unit (field->quantity, get_units (self)));
  if (was_typed_in_other_units (self, text) && g_strcmp0 (self->shown, text) != 0)
    {
      self->number = self->typed_number;
      self->second = self->typed_second;
      g_free (self->shown);
      self->shown = g_strdup (text);
    }
  if (g_strcmp0 (self->shown, text) == 0)
    show_number (self);
}

/* A text that shows what the record holds stands for the exact value, also where it was shown in other units. */
static void
bb_entry_row_set_state (BbFieldRow  *row,
                        const char  *state,
                        BbUnitSystem system)
{
  BbEntryRow *self = BB_ENTRY_ROW (row);
  const BbField *field = bb_field_row_get_field (row);
  BbUnitContext then = *get_units (self);
  g_autofree char *shown = NULL;
  g_autofree char *text = g_strstrip (g_strdup (state));
  g_autofree char *message = NULL;
  double number = (double) NAN;
  double second = (double) NAN;

  set_text (self, state);
  if (!is_numeric (field) || *text == '\0' || then.system == system)
    return;

  then.system = system;
  shown = format (self, &then);
  if (g_str_equal (shown, text))
    show_number (self);
  else if (understand (field, text, &then, &number, &second, &message))
    {
      g_clear_pointer (&self->shown, g_free);
      remember (self, text, number, second, system);
      bb_entry_row_refresh (row);
    }
}

static void
bb_entry_row_finalize (GObject *object)
{
  g_free (BB_ENTRY_ROW (object)->shown);
  g_free (BB_ENTRY_ROW (object)->typed);

  G_OBJECT_CLASS (bb_entry_row_parent_class)->finalize (object);
}

static void
bb_entry_row_class_init (BbEntryRowClass *klass)
{
  BbFieldRowClass *row_class = BB_FIELD_ROW_CLASS (klass);

  G_OBJECT_CLASS (klass)->finalize = bb_entry_row_finalize;
  row_class->build = bb_entry_row_build;
  row_class->load = bb_entry_row_load;
  row_class->store = bb_entry_row_store;
  row_class->dup_state = bb_entry_row_dup_state;
  row_class->set_state = bb_entry_row_set_state;
  row_class->refresh = bb_entry_row_refresh;
}

static void
bb_entry_row_init (BbEntryRow *self)
{
  self->number = (double) NAN;
  self->second = (double) NAN;
}
