/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-model"

#include "bb-format.h"

#include <glib/gi18n-lib.h>

#include "bb-blank.h"

static char *
format_number (const BbTable       *table,
               const BbField       *field,
               gconstpointer        record,
               const BbUnitContext *context)
{
  double value = bb_field_get_number (field, record);
  const BbField *other = field->parts_with != NULL ? bb_table_find_field (table, field->parts_with) : NULL;

  if (other != NULL && bb_field_is_set (other, record))
    return bb_dilution_describe (value, bb_field_get_number (other, record), context);

  return bb_quantity_format_with_unit (field->quantity, value, context);
}

/* A list of single values, like the cycles of a wash plan. */
static char *
format_items (const BbField       *field,
              gconstpointer        record,
              const BbUnitContext *context)
{
  const GArray *items = bb_field_get_array (field, record);
  g_autoptr (GString) out = g_string_new (NULL);

  for (guint i = 0; i < items->len; i++)
    {
      g_autofree char *text = bb_field_format (field->item, field->item->fields, items->data + i * field->item->size,
                                               context);

      g_string_append_printf (out, "%s%s", i > 0 ? ", " : "", text);
    }

  return g_strdup (out->str);
}

/**
 * bb_field_format:
 * @table: the record's table
 * @field: a field of it
 * @record: a record
 * @context: the units to show
 *
 * Writes one value with its unit, or in words, as a person reads it. What a reference points to is not known here.
 *
 * Returns: (transfer full): the text; empty where there is none
 */
char *
bb_field_format (const BbTable       *table,
                 const BbField       *field,
                 gconstpointer        record,
                 const BbUnitContext *context)
{
  if (!bb_field_is_set (field, record))
    return g_strdup ("");

  switch (field->kind)
    {
    case BB_KIND_NUMBER:
      return format_number (table, field, record, context);
    case BB_KIND_INTEGER:
      return g_strdup_printf ("%" G_GINT64_FORMAT, bb_field_get_integer (field, record));
    case BB_KIND_CHOICE:
      return g_strdup (bb_choices_get_title (field->choices, bb_field_get_choice (field, record)));
    case BB_KIND_FLAG:
      return g_strdup (bb_field_get_choice (field, record) == 1 ? _("Yes") : _("No"));
    case BB_KIND_TEXT:
    case BB_KIND_DATE:
      return g_strdup (bb_field_get_text (field, record));
    case BB_KIND_LIST:
      if (field->item == &bb_fibre_share_table)
        return bb_composition_dup_text (bb_field_get_array (field, record));
      if (field->item->n_fields == 1)
        return format_items (field, record, context);
      return g_strdup_printf ("%u", bb_field_get_array (field, record)->len);
    case BB_KIND_NUMBERS:
      return g_strdup_printf ("%u", bb_field_get_array (field, record)->len);
    case BB_KIND_TEXTS:
      return g_strjoinv (", ", BB_FIELD_IN (field, GStrv, record));
    case BB_KIND_REFERENCE:
    case BB_KIND_OBJECT:
      return g_strdup ("");
    default:
      g_return_val_if_reached (g_strdup (""));
    }
}
