/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-pick-row"

#include "bb-pick-row.h"

#include <glib/gi18n-lib.h>

#include "bb-add-button.h"
#include "bb-pick-width.h"
#include "bb-show.h"
#include "bb-signal.h"

/* Longer lists than this get a search field. */
#define SEARCH_FROM 8

/* Most characters in the button. */
#define BUTTON_WIDTH 34

struct _BbPickRow
{
  BbFieldRow parent_instance;

  GtkDropDown *drop_down;
  GtkStringList *titles;

  /* What each position means: an index of a choice or of a named field, a flag, or the key of a record. */
  GArray *values;
};

G_DEFINE_FINAL_TYPE (BbPickRow, bb_pick_row, BB_TYPE_FIELD_ROW)

static void
selected_cb (GObject    *object,
             GParamSpec *pspec,
             BbPickRow  *self)
{
  (void) object;
  (void) pspec;

  bb_field_row_edited (BB_FIELD_ROW (self));
}

static gint64
get_nothing (const BbField *field)
{
  return field->kind == BB_KIND_REFERENCE ? 0 : -1;
}

static void
append (BbPickRow  *self,
        gint64      value,
        const char *title)
{
  g_array_append_val (self->values, value);
  gtk_string_list_append (self->titles, title);
}

static char *
make_title (const BbNameLine *line)
{
  return line->name != NULL ? g_strdup_printf ("%s · %s", line->name, line->code) : g_strdup (line->code);
}

static void
append_records (BbPickRow *self)
{
  BbFieldRow *row = BB_FIELD_ROW (self);
  BbSession *session = bb_field_row_get_session (row);
  g_autoptr (GError) error = NULL;
  g_autoptr (GPtrArray) lines = NULL;

  lines = bb_book_load_names (bb_session_get_book (session), bb_field_row_get_field (row), &error);
  if (lines == NULL)
    {
      bb_session_report (session, error);
      return;
    }

  for (guint i = 0; i < lines->len; i++)
    {
      const BbNameLine *line = lines->pdata[i];
      g_autofree char *title = make_title (line);

      append (self, line->id, title);
    }
}

/* A value of such a field is written in its canonical unit, so that stands beside it. */
static char *
make_setting_title (const BbField *setting)
{
  const char *unit = setting->kind == BB_KIND_NUMBER ? bb_quantity_get_canonical_unit (setting->quantity) : "";

  if (*unit == '\0')
    return g_strdup_printf ("%s · %s", bb_station_get_title (setting->station), _(setting->title));

  return g_strdup_printf ("%s · %s, %s", bb_station_get_title (setting->station), _(setting->title), unit);
}

static void
append_settings (BbPickRow     *self,
                 const BbTable *table)
{
  for (guint i = 0; i < table->n_fields; i++)
    if (table->fields[i].station != BB_STATION_NONE)
      {
        g_autofree char *title = make_setting_title (&table->fields[i]);

        append (self, i, title);
      }
}

static void
fill (BbPickRow *self)
{
  const BbField *field = bb_field_row_get_field (BB_FIELD_ROW (self));

  if (!field->required || !field->fallback.set)
    append (self, get_nothing (field), _("—"));

  if (field->kind == BB_KIND_REFERENCE)
    append_records (self);
  else if (field->names != NULL)
    append_settings (self, field->names);
  else if (field->kind == BB_KIND_FLAG)
    {
      append (self, 0, _("No"));
      append (self, 1, _("Yes"));
    }
  else
    for (guint i = 0; i < field->choices->n_items; i++)
      append (self, i, bb_choices_get_title (field->choices, (int) i));
}

static void
select_value (BbPickRow *self,
              gint64     value)
{
  guint position = GTK_INVALID_LIST_POSITION;

  for (guint i = 0; i < self->values->len; i++)
    if (g_array_index (self->values, gint64, i) == value)
      position = i;

  /* What was chosen once and is withdrawn now stays as it is until the person chooses otherwise. */
  if (position == GTK_INVALID_LIST_POSITION)
    {
      BbFieldRow *row = BB_FIELD_ROW (self);
      const BbField *field = bb_field_row_get_field (row);
      g_autofree char *title = NULL;

      if (field->kind != BB_KIND_REFERENCE)
        return;
      title = bb_show_name (bb_field_row_get_session (row), field->target, value);
      append (self, value, title);
      position = self->values->len - 1;
    }

  g_signal_handlers_block_by_func (self->drop_down, BB_HANDLER (selected_cb), self);
  gtk_drop_down_set_selected (self->drop_down, position);
  g_signal_handlers_unblock_by_func (self->drop_down, BB_HANDLER (selected_cb), self);
}

static gint64
get_value (BbPickRow *self)
{
  guint position = gtk_drop_down_get_selected (self->drop_down);

  if (position >= self->values->len)
    return get_nothing (bb_field_row_get_field (BB_FIELD_ROW (self)));

  return g_array_index (self->values, gint64, position);
}

static void
added_cb (BbPickRow *self,
          gint64     id)
{
  g_signal_handlers_block_by_func (self->drop_down, BB_HANDLER (selected_cb), self);
  g_array_set_size (self->values, 0);
  gtk_string_list_splice (self->titles, 0, g_list_model_get_n_items (G_LIST_MODEL (self->titles)), NULL);
  fill (self);
  g_signal_handlers_unblock_by_func (self->drop_down, BB_HANDLER (selected_cb), self);
  select_value (self, id);
  bb_field_row_edited (BB_FIELD_ROW (self));
}

/* Customers have no page of their own, and nobody leaves a form that wants a name: they are added where they are asked
 * for. */
static const char *
get_add_title (const BbField *field)
{
  if (field->target == &bb_customer_table)
    return _("Add a Customer");

  return field->target == &bb_person_table && field->wanted != NULL ? _("Add a Person") : NULL;
}

static GtkWidget *
add_button (BbPickRow *self)
{
  const BbField *field = bb_field_row_get_field (BB_FIELD_ROW (self));
  const char *title = get_add_title (field);
  GtkWidget *box = NULL;
  GtkWidget *button = NULL;

  if (title == NULL)
    return GTK_WIDGET (self->drop_down);

  box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);
  button = bb_add_button_new (bb_field_row_get_session (BB_FIELD_ROW (self)), field->target, title);
  g_signal_connect_object (button, "added", G_CALLBACK (added_cb), self, G_CONNECT_SWAPPED);
  gtk_box_append (GTK_BOX (box), GTK_WIDGET (self->drop_down));
  gtk_box_append (GTK_BOX (box), button);

  return box;
}

static void
bb_pick_row_build (BbFieldRow *row)
{
  BbPickRow *self = BB_PICK_ROW (row);

  self->values = g_array_new (FALSE, FALSE, sizeof (gint64));
  self->titles = gtk_string_list_new (NULL);
  fill (self);
  self->drop_down = GTK_DROP_DOWN (g_object_new (GTK_TYPE_DROP_DOWN, "valign", GTK_ALIGN_CENTER, NULL));
  bb_pick_set_width (self->drop_down, BUTTON_WIDTH);
  gtk_drop_down_set_model (self->drop_down, G_LIST_MODEL (self->titles));
  gtk_drop_down_set_enable_search (self->drop_down, self->values->len > SEARCH_FROM);
  g_signal_connect (self->drop_down, "notify::selected", G_CALLBACK (selected_cb), self);
  bb_field_row_set_editor (row, add_button (self), GTK_WIDGET (self->drop_down));
}

static gint64
find_setting (const BbTable *table,
              const char    *name)
{
  for (guint i = 0; name != NULL && i < table->n_fields; i++)
    if (g_str_equal (table->fields[i].name, name))
      return i;

  return -1;
}

static void
bb_pick_row_load (BbFieldRow    *row,
                  gconstpointer  record)
{
  BbPickRow *self = BB_PICK_ROW (row);
  const BbField *field = bb_field_row_get_field (row);

  if (field->kind == BB_KIND_REFERENCE)
    select_value (self, bb_field_get_integer (field, record));
  else if (field->names != NULL)
    select_value (self, find_setting (field->names, bb_field_get_text (field, record)));
  else
    select_value (self, bb_field_get_choice (field, record));
}

static gboolean
bb_pick_row_store (BbFieldRow  *row,
                   gpointer     record,
                   char       **message)
{
  const BbField *field = bb_field_row_get_field (row);
  gint64 value = get_value (BB_PICK_ROW (row));

  (void) message;

  if (field->kind == BB_KIND_REFERENCE)
    bb_field_set_integer (field, record, value);
  else if (field->names != NULL)
    bb_field_set_text (field, record, value < 0 ? NULL : field->names->fields[value].name);
  else
    bb_field_set_choice (field, record, (int) value);

  return TRUE;
}

static char *
bb_pick_row_dup_state (BbFieldRow *row)
{
  return g_strdup_printf ("%" G_GINT64_FORMAT, get_value (BB_PICK_ROW (row)));
}

static void
bb_pick_row_set_state (BbFieldRow  *row,
                       const char  *state,
                       BbUnitSystem system)
{
  (void) system;

  select_value (BB_PICK_ROW (row), g_ascii_strtoll (state, NULL, 10));
}

static void
bb_pick_row_dispose (GObject *object)
{
  BbPickRow *self = BB_PICK_ROW (object);

  g_clear_object (&self->titles);
  g_clear_pointer (&self->values, g_array_unref);

  G_OBJECT_CLASS (bb_pick_row_parent_class)->dispose (object);
}

static void
bb_pick_row_class_init (BbPickRowClass *klass)
{
  BbFieldRowClass *row_class = BB_FIELD_ROW_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = bb_pick_row_dispose;
  row_class->build = bb_pick_row_build;
  row_class->load = bb_pick_row_load;
  row_class->store = bb_pick_row_store;
  row_class->dup_state = bb_pick_row_dup_state;
  row_class->set_state = bb_pick_row_set_state;
}

static void
bb_pick_row_init (BbPickRow *self)
{
  (void) self;
}
