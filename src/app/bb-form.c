/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-form"

#include "bb-form.h"

#include <glib/gi18n-lib.h>

#include "bb-show.h"

/* Kept beside the fields, none of which is called so: what numbers without a unit mean. */
#define UNITS_KEY "(units)"
#define METRIC "metric"
#define US "us"

/* Most fields beside each other in a strip. */
#define STRIP_LENGTH 4

struct _BbForm
{
  GtkBox parent_instance;

  /* owned */
  BbSession *session;
  GPtrArray *rows;

  const BbTable *table;
  gpointer base;
};

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
complain (BbFieldRow *row,
          const char *message,
          gboolean    even_if_untouched)
{
  if (even_if_untouched || bb_field_row_is_touched (row))
    bb_field_row_set_message (row, message);
}

/* What the rows hold, each judged alone. */
static gboolean
gather (BbForm   *self,
        gpointer  record,
        gboolean  even_if_untouched)
{
  gboolean valid = TRUE;

  for (guint i = 0; i < self->rows->len; i++)
    {
      BbFieldRow *row = self->rows->pdata[i];
      g_autofree char *message = NULL;
      BbProblem problem;

      bb_field_row_set_message (row, NULL);
      if (bb_field_row_store (row, record, &message) &&
          bb_field_find_problem (bb_field_row_get_field (row), record, &problem))
        message = bb_problem_to_text (&problem, bb_session_get_units (self->session));

      if (message != NULL)
        {
          complain (row, message, even_if_untouched);
          valid = FALSE;
        }
    }

  return valid;
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

static const char *
get_heading (const BbField *field)
{
  const char *station = bb_station_get_title (field->station);

  return station != NULL ? station : field->group != NULL ? _(field->group) : "";
}

/* Fields of one heading stand together; those without one where the table has them. */
static AdwPreferencesGroup *
find_group (BbForm     *self,
            const char *heading)
{
  GtkWidget *last = gtk_widget_get_last_child (GTK_WIDGET (self));

  if (*heading == '\0')
    return last != NULL && *adw_preferences_group_get_title (ADW_PREFERENCES_GROUP (last)) == '\0'
             ? ADW_PREFERENCES_GROUP (last) : NULL;

  for (GtkWidget *child = last; child != NULL; child = gtk_widget_get_prev_sibling (child))
    if (g_str_equal (adw_preferences_group_get_title (ADW_PREFERENCES_GROUP (child)), heading))
      return ADW_PREFERENCES_GROUP (child);

  return NULL;
}

static AdwPreferencesGroup *
ensure_group (BbForm     *self,
              const char *heading)
{
  AdwPreferencesGroup *group = find_group (self, heading);

  if (group == NULL)
    {
      group = ADW_PREFERENCES_GROUP (adw_preferences_group_new ());
      adw_preferences_group_set_title (group, heading);
      gtk_box_append (GTK_BOX (self), GTK_WIDGET (group));
    }

  return group;
}

/* Below each other in groups, the editors in one column. */
static void
place_in_column (BbForm       *self,
                 BbFieldRow   *row,
                 GtkSizeGroup *controls)
{
  bb_field_row_align (row, controls);
  adw_preferences_group_add (ensure_group (self, get_heading (bb_field_row_get_field (row))), GTK_WIDGET (row));
}

/* Beside each other as far as there is room. */
static void
place_in_strip (GtkFlowBox *strip,
                BbFieldRow *row)
{
  bb_field_row_set_stacked (row);
  gtk_flow_box_insert (strip, GTK_WIDGET (row), -1);
  gtk_widget_set_focusable (gtk_widget_get_parent (GTK_WIDGET (row)), FALSE);
  g_object_bind_property (row, "visible", gtk_widget_get_parent (GTK_WIDGET (row)), "visible",
                          G_BINDING_SYNC_CREATE);
}

static GtkFlowBox *
make_strip (BbForm *self)
{
  GtkWidget *strip = gtk_flow_box_new ();

  gtk_flow_box_set_selection_mode (GTK_FLOW_BOX (strip), GTK_SELECTION_NONE);
  gtk_flow_box_set_homogeneous (GTK_FLOW_BOX (strip), TRUE);
  gtk_flow_box_set_min_children_per_line (GTK_FLOW_BOX (strip), 2);
  gtk_flow_box_set_max_children_per_line (GTK_FLOW_BOX (strip), STRIP_LENGTH);
  gtk_flow_box_set_column_spacing (GTK_FLOW_BOX (strip), 12);
  gtk_flow_box_set_row_spacing (GTK_FLOW_BOX (strip), 8);
  gtk_box_append (GTK_BOX (self), strip);

  return GTK_FLOW_BOX (strip);
}

static void
build (BbForm  *self,
       gboolean is_strip)
{
  g_autoptr (GtkSizeGroup) controls = gtk_size_group_new (GTK_SIZE_GROUP_HORIZONTAL);
  GtkFlowBox *strip = is_strip ? make_strip (self) : NULL;

  for (guint i = 0; i < self->table->n_fields; i++)
    {
      const BbField *field = &self->table->fields[i];
      BbFieldRow *row = NULL;

      if (field->derived || field->beside || bb_table_is_second_part (self->table, field))
        continue;

      row = bb_field_row_new (self->session, self->table, field);
      g_signal_connect_object (row, "changed", G_CALLBACK (row_changed_cb), self, G_CONNECT_SWAPPED);
      g_ptr_array_add (self->rows, row);
      if (is_strip)
        place_in_strip (strip, row);
      else
        place_in_column (self, row, controls);
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
      gboolean       is_strip)
{
  BbForm *self = g_object_new (BB_TYPE_FORM, NULL);

  self->session = g_object_ref (session);
  self->table = table;
  self->base = bb_record_new (table);
  build (self, is_strip);
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

  return make (session, table, FALSE);
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

  return make (session, table, TRUE);
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
 * bb_form_dup_record:
 * @self: a form
 * @complain_about_all: whether to mark everything that is wrong, not only what the person has touched
 *
 * Returns: (transfer full) (nullable): the record as it is typed, or %NULL if something is wrong with it; the rows
 *   say what
 */
gpointer
bb_form_dup_record (BbForm   *self,
                    gboolean  complain_about_all)
{
  gpointer record = NULL;
  g_autoptr (GError) error = NULL;

  g_return_val_if_fail (BB_IS_FORM (self), NULL);

  record = bb_record_copy (self->table, self->base);
  if (!gather (self, record, complain_about_all))
    {
      bb_record_free (self->table, record);
      return NULL;
    }
  if (self->table->check != NULL && !self->table->check (record, &error))
    {
      if (!bb_form_show_fault (self, error->message, complain_about_all) && complain_about_all)
        bb_session_say (self->session, error->message);
      bb_record_free (self->table, record);
      return NULL;
    }

  return record;
}

/**
 * bb_form_focus_fault:
 * @self: a form
 *
 * Puts the keyboard where the first thing is marked as wrong.
 *
 * Returns: %FALSE if nothing is
 */
gboolean
bb_form_focus_fault (BbForm *self)
{
  g_return_val_if_fail (BB_IS_FORM (self), FALSE);

  for (guint i = 0; i < self->rows->len; i++)
    if (bb_field_row_is_faulty (self->rows->pdata[i]))
      return bb_field_row_focus (self->rows->pdata[i]);

  return FALSE;
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

static gboolean
is_silent_key (BbForm        *self,
               const BbField *field)
{
  return bb_form_find_row (self, field) == NULL &&
         (field->kind == BB_KIND_INTEGER || field->kind == BB_KIND_REFERENCE);
}

/**
 * bb_form_save_state:
 * @self: a form
 *
 * Returns: (transfer floating): all that is typed, valid or not, and the units that hold, as `a{ss}`
 */
GVariant *
bb_form_save_state (BbForm *self)
{
  GVariantBuilder builder;

  g_return_val_if_fail (BB_IS_FORM (self), NULL);

  g_variant_builder_init (&builder, G_VARIANT_TYPE ("a{ss}"));
  g_variant_builder_add (&builder, "{ss}", UNITS_KEY,
                         bb_session_get_units (self->session)->system == BB_UNITS_US ? US : METRIC);
  for (guint i = 0; i < self->rows->len; i++)
    {
      BbFieldRow *row = self->rows->pdata[i];
      g_autofree char *state = bb_field_row_dup_state (row);

      if (state != NULL)
        g_variant_builder_add (&builder, "{ss}", bb_field_row_get_field (row)->name, state);
    }

  /* What no row shows, but decides which record it is. */
  for (guint i = 0; i < self->table->n_fields; i++)
    if (is_silent_key (self, &self->table->fields[i]) && bb_field_is_set (&self->table->fields[i], self->base))
      {
        g_autofree char *key = g_strdup_printf ("%" G_GINT64_FORMAT,
                                                bb_field_get_integer (&self->table->fields[i], self->base));

        g_variant_builder_add (&builder, "{ss}", self->table->fields[i].name, key);
      }

  return g_variant_builder_end (&builder);
}

/**
 * bb_form_load_state:
 * @self: a form
 * @state: what bb_form_save_state() gave earlier
 */
void
bb_form_load_state (BbForm   *self,
                    GVariant *state)
{
  GVariantIter iter;
  const char *name = NULL;
  const char *text = NULL;
  BbUnitSystem system = bb_session_get_units (self->session)->system;

  g_return_if_fail (BB_IS_FORM (self) && g_variant_is_of_type (state, G_VARIANT_TYPE ("a{ss}")));

  if (g_variant_lookup (state, UNITS_KEY, "&s", &text))
    system = g_str_equal (text, US) ? BB_UNITS_US : BB_UNITS_METRIC;
  g_variant_iter_init (&iter, state);
  while (g_variant_iter_next (&iter, "{&s&s}", &name, &text))
    {
      const BbField *field = bb_table_find_field (self->table, name);
      BbFieldRow *row = field != NULL ? bb_form_find_row (self, field) : NULL;

      if (row != NULL)
        bb_field_row_set_state (row, text, system);
      else if (field != NULL && is_silent_key (self, field))
        bb_field_set_integer (field, self->base, g_ascii_strtoll (text, NULL, 10));
    }
}
