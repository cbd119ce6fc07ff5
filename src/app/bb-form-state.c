/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-form"

#include "bb-form-private.h"

/* Kept beside the fields, none of which is called so: what numbers without a unit mean. */
#define UNITS_KEY "(units)"
#define METRIC "metric"
#define US "us"

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
