/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-exchange"

#include "bb-json-private.h"

#include "bb-problem.h"

static gboolean read_object (BbJsonReader  *self,
                             const BbTable *table,
                             JsonObject    *object,
                             gpointer       record);

/**
 * bb_json_is_exchanged:
 * @field: a field
 *
 * Returns: %TRUE if the field goes into files that books exchange; a record's key and seal belong to one book
 */
gboolean
bb_json_is_exchanged (const BbField *field)
{
  return !field->unsealed;
}

static gboolean
read_items (BbJsonReader  *self,
            const BbField *field,
            JsonArray     *list,
            gpointer       record)
{
  gsize here = self->path->len;

  bb_field_clear (field, record);
  bb_field_ensure_array (field, record);
  for (guint i = 0; i < json_array_get_length (list); i++)
    {
      JsonNode *node = json_array_get_element (list, i);

      g_string_append_printf (self->path, "[%u]", i);
      if (!JSON_NODE_HOLDS_OBJECT (node))
        return _bb_json_refuse_value (self, node, "an object");
      if (!read_object (self, field->item, json_node_get_object (node), bb_field_append_item (field, record)))
        return FALSE;
      g_string_truncate (self->path, here);
    }

  return TRUE;
}

static gboolean
read_numbers (BbJsonReader  *self,
              const BbField *field,
              JsonArray     *list,
              gpointer       record)
{
  GArray *array = NULL;

  bb_field_clear (field, record);
  array = bb_field_ensure_array (field, record);
  for (guint i = 0; i < json_array_get_length (list); i++)
    {
      JsonNode *node = json_array_get_element (list, i);
      double value = 0;

      if (!_bb_json_holds_number (node))
        {
          g_string_append_printf (self->path, "[%u]", i);
          return _bb_json_refuse_value (self, node, "a number");
        }
      value = json_node_get_double (node);
      g_array_append_val (array, value);
    }

  return TRUE;
}

static gboolean
read_texts (BbJsonReader  *self,
            const BbField *field,
            JsonArray     *list,
            gpointer       record)
{
  g_autoptr (GStrvBuilder) builder = g_strv_builder_new ();

  for (guint i = 0; i < json_array_get_length (list); i++)
    {
      JsonNode *node = json_array_get_element (list, i);

      if (!_bb_json_holds (node, G_TYPE_STRING) || !bb_text_is_plain (json_node_get_string (node), FALSE))
        {
          g_string_append_printf (self->path, "[%u]", i);
          return _bb_json_refuse_value (self, node, "a text without control characters");
        }
      g_strv_builder_add (builder, json_node_get_string (node));
    }
  bb_field_clear (field, record);
  BB_FIELD_AT (field, GStrv, record) = g_strv_builder_end (builder);

  return TRUE;
}

static gboolean
read_array (BbJsonReader  *self,
            const BbField *field,
            JsonNode      *node,
            gpointer       record)
{
  double most = field->count.set ? field->count.maximum : BB_JSON_ITEMS;
  JsonArray *list = NULL;

  if (!JSON_NODE_HOLDS_ARRAY (node))
    return _bb_json_refuse_value (self, node, "a list");
  list = json_node_get_array (node);
  if (json_array_get_length (list) > most)
    return _bb_json_refuse (self, BB_MODEL_ERROR_VALUE, "%u items, the maximum is %.0f", json_array_get_length (list),
                            most);

  if (field->kind == BB_KIND_LIST)
    return read_items (self, field, list, record);
  if (field->kind == BB_KIND_NUMBERS)
    return read_numbers (self, field, list, record);

  return read_texts (self, field, list, record);
}

static gboolean
read_nested (BbJsonReader  *self,
             const BbField *field,
             JsonNode      *node,
             gpointer       record)
{
  if (!JSON_NODE_HOLDS_OBJECT (node))
    return _bb_json_refuse_value (self, node, "an object");

  bb_field_clear (field, record);
  BB_FIELD_AT (field, gpointer, record) = bb_record_new (field->item);

  return read_object (self, field->item, json_node_get_object (node), BB_FIELD_AT (field, gpointer, record));
}

static gboolean
read_null (BbJsonReader  *self,
           const BbField *field,
           gpointer       record)
{
  if (field->fallback.set && (field->required || !self->reading->null_is_none))
    return _bb_json_refuse (self, BB_MODEL_ERROR_VALUE, "null is not allowed, leave the key out for its default");
  if (field->required)
    return _bb_json_refuse (self, BB_MODEL_ERROR_VALUE, "null is not allowed, the key is required");
  bb_field_clear (field, record);

  return TRUE;
}

static gboolean
read_value (BbJsonReader  *self,
            const BbField *field,
            JsonNode      *node,
            gpointer       record)
{
  if (JSON_NODE_HOLDS_NULL (node))
    return read_null (self, field, record);

  if (field->kind == BB_KIND_OBJECT)
    return read_nested (self, field, node, record);
  if (field->kind == BB_KIND_LIST || field->kind == BB_KIND_NUMBERS || field->kind == BB_KIND_TEXTS)
    return read_array (self, field, node, record);

  return _bb_json_read_single (self, field, node, record);
}

static gboolean
refuse_key (BbJsonReader  *self,
            const BbTable *table)
{
  g_autoptr (GString) known = g_string_new (NULL);

  for (guint i = 0; i < table->n_fields; i++)
    if (!self->reading->exchanged || bb_json_is_exchanged (&table->fields[i]))
      g_string_append_printf (known, "%s%s", known->len > 0 ? ", " : "", table->fields[i].name);

  return _bb_json_refuse (self, BB_MODEL_ERROR_KEY, "unknown key, it is none of: %s", known->str);
}

static gboolean
read_object (BbJsonReader  *self,
             const BbTable *table,
             JsonObject    *object,
             gpointer       record)
{
  gsize here = self->path->len;
  JsonObjectIter iter;
  const char *key = NULL;
  JsonNode *node = NULL;

  json_object_iter_init_ordered (&iter, object);
  while (json_object_iter_next_ordered (&iter, &key, &node))
    {
      const BbField *field = bb_table_find_field (table, key);
      g_autofree char *quote = bb_message_quote (key, -1);

      g_string_append_printf (self->path, "%s%s", here > 0 ? "." : "", *quote != '\0' ? quote : "\"\"");
      if (field == NULL || (self->reading->exchanged && !bb_json_is_exchanged (field)))
        return refuse_key (self, table);
      if (!read_value (self, field, node, record))
        return FALSE;
      g_string_truncate (self->path, here);
    }

  return TRUE;
}

/**
 * bb_json_read_record:
 * @table: the record's table
 * @node: a value from bb_json_parse()
 * @reading: (nullable): how to read, or %NULL for the input of a calculator
 * @record: a record as bb_record_init() or bb_record_new() leave it
 * @error: return location for a #GError in the domain %BB_MODEL_ERROR
 *
 * Reads a record: unknown keys, wrong types, words that are no choice and lists that are too long are refused, with
 * a message that names the key by its path. A key left out takes its default. Limits and what is missing are not
 * looked at: hold the record against its table by bb_record_validate() once it is whole.
 *
 * Returns: %FALSE on failure; @record then holds what was read up to there, and is still to be freed
 */
gboolean
bb_json_read_record (const BbTable       *table,
                     JsonNode            *node,
                     const BbJsonReading *reading,
                     gpointer             record,
                     GError             **error)
{
  static const BbJsonReading plain = { NULL, NULL, FALSE, FALSE };
  g_autoptr (GString) path = g_string_new (NULL);
  BbJsonReader self = { .reading = reading != NULL ? reading : &plain, .path = path, .error = error };

  if (!JSON_NODE_HOLDS_OBJECT (node))
    return _bb_json_refuse_value (&self, node, "an object");

  return read_object (&self, table, json_node_get_object (node), record);
}
