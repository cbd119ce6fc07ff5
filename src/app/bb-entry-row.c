/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-entry-row"

#include "bb-entry-row.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#include "bb-colour-button.h"
#include "bb-date-button.h"
#include "bb-signal.h"
#include "bb-typed-number.h"

/* Wide enough for most names, narrow enough for the smallest window. */
#define TEXT_WIDTH 40
#define LEAST_TEXT_WIDTH 20
#define NUMBER_WIDTH 8
#define DATE_WIDTH 11
#define MOMENT_WIDTH 19

struct _BbEntryRow
{
  BbFieldRow parent_instance;

  GtkEntry *entry;
  GtkWidget *beside;

  /* owned: NULL for what is no number */
  BbTypedNumber *typed;

  /* owned: a moment that the program set, which is shown and not typed; NULL for what a person enters */
  char *moment;
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

static char *
describe_moment (const char *moment)
{
  g_autoptr (GDateTime) utc = g_date_time_new_from_iso8601 (moment, NULL);
  g_autoptr (GDateTime) local = utc != NULL ? g_date_time_to_local (utc) : NULL;

  /* Translators: a day and an hour: 3 Feb 2025, 14:05. See the manual of strftime. */
  return local != NULL ? g_date_time_format (local, _("%-d %b %Y, %H:%M")) : g_strdup (moment);
}

/* A day can be typed; the hour at which something began was taken from the clock, and is shown as it was here. */
static void
show_text (BbEntryRow *self,
           const char *text)
{
  const BbField *field = bb_field_row_get_field (BB_FIELD_ROW (self));
  const gboolean is_moment = field->kind == BB_KIND_DATE && strchr (text, 'T') != NULL && bb_text_is_date (text);
  g_autofree char *shown = is_moment ? describe_moment (text) : g_strdup (text);

  g_free (self->moment);
  self->moment = is_moment ? g_strdup (text) : NULL;
  set_text (self, shown);
  if (field->kind != BB_KIND_DATE)
    return;
  gtk_editable_set_editable (GTK_EDITABLE (self->entry), !is_moment);
  gtk_entry_set_has_frame (self->entry, !is_moment);
  gtk_editable_set_width_chars (GTK_EDITABLE (self->entry), is_moment ? MOMENT_WIDTH : DATE_WIDTH);
  gtk_editable_set_max_width_chars (GTK_EDITABLE (self->entry), is_moment ? MOMENT_WIDTH : DATE_WIDTH);
  gtk_widget_set_visible (self->beside, !is_moment);
}

static const BbUnitContext *
get_units (BbEntryRow *self)
{
  return bb_session_get_units (bb_field_row_get_session (BB_FIELD_ROW (self)));
}

static void
show (BbEntryRow *self,
      const char *text)
{
  if (text != NULL)
    set_text (self, text);
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
    self->beside = bb_date_button_new (GTK_EDITABLE (self->entry));
  else if (field->colour)
    self->beside = bb_colour_button_new (GTK_EDITABLE (self->entry));
  if (self->beside != NULL)
    gtk_box_append (GTK_BOX (box), self->beside);

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
      self->typed = bb_typed_number_new (field);
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

  if (!is_numeric (field))
    {
      const char *text = bb_field_get_text (field, record);

      show_text (self, text != NULL ? text : "");
      return;
    }

  show (self, bb_typed_number_load (self->typed, bb_field_get_number (field, record),
                                    second != NULL ? bb_field_get_number (second, record) : (double) NAN,
                                    get_units (self)));
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
      bb_field_set_text (field, record, self->moment != NULL ? self->moment : *text != '\0' ? text : NULL);
      return TRUE;
    }

  understood = bb_typed_number_read (self->typed, text, get_units (self), &number, &second, message);
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
  BbEntryRow *self = BB_ENTRY_ROW (row);

  return g_strdup (self->moment != NULL ? self->moment : gtk_editable_get_text (GTK_EDITABLE (self->entry)));
}

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
  show (self, bb_typed_number_refresh (self->typed, text, get_units (self)));
}

static void
bb_entry_row_set_state (BbFieldRow  *row,
                        const char  *state,
                        BbUnitSystem system)
{
  BbEntryRow *self = BB_ENTRY_ROW (row);
  g_autofree char *text = g_strstrip (g_strdup (state));

  show_text (self, state);
  if (is_numeric (bb_field_row_get_field (row)))
    show (self, bb_typed_number_resume (self->typed, text, system, get_units (self)));
}

static void
bb_entry_row_finalize (GObject *object)
{
  g_clear_pointer (&BB_ENTRY_ROW (object)->typed, bb_typed_number_free);
  g_free (BB_ENTRY_ROW (object)->moment);

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
  (void) self;
}
