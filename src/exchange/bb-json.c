/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-exchange"

#include "bb-json.h"

#include <string.h>

#include "bb-canonical.h"
#include "bb-error.h"
#include "bb-json-scan.h"
#include "bb-problem.h"

/* A whole number beyond this is not held by every double (2^53). */
#define LARGEST_INTEGER 9007199254740992.0

/* One pass over a record: how to read, where in it we stand, and where to complain. */
typedef struct {
  const BbJsonReading *reading;
  GString *path;
  GError **error;
} Reader;

static gboolean read_object (Reader        *self,
                             const BbTable *table,
                             JsonObject    *object,
                             gpointer       record);

/**
 * bb_json_parse:
 * @text: a text
 * @length: its length in bytes
 * @error: return location for a #GError
 *
 * Reads JSON, no more and no less than RFC 8259 allows; see bb_json_scan() for what is refused beyond it. A byte
 * order mark at the start is passed over.
 *
 * Returns: (transfer full): the value, or %NULL on failure: %BB_EXCHANGE_ERROR_UNREADABLE where it is no JSON,
 *   %BB_EXCHANGE_ERROR_TOO_LARGE, or the domain %BB_MODEL_ERROR where a value or key is at fault
 */
JsonNode *
bb_json_parse (const char *text,
               gsize       length,
               GError    **error)
{
  g_autoptr (JsonParser) parser = NULL;
  g_autofree char *rewritten = NULL;
  g_autoptr (GError) reason = NULL;

  g_return_val_if_fail (text != NULL, NULL);

  if (length > BB_EXCHANGE_BYTES)
    {
      g_set_error (error, BB_EXCHANGE_ERROR, BB_EXCHANGE_ERROR_TOO_LARGE,
                   "%" G_GSIZE_FORMAT " bytes are more than the limit of %d", length, BB_EXCHANGE_BYTES);
      return NULL;
    }
  if (length >= 3 && memcmp (text, "\xef\xbb\xbf", 3) == 0)
    {
      text += 3;
      length -= 3;
    }
  if (!bb_json_scan (text, length, &rewritten, error))
    return NULL;

  parser = json_parser_new_immutable ();
  if (!json_parser_load_from_data (parser, rewritten != NULL ? rewritten : text,
                                   rewritten != NULL ? -1 : (gssize) length, &reason))
    {
      g_set_error (error, BB_EXCHANGE_ERROR, BB_EXCHANGE_ERROR_UNREADABLE, "not JSON: %s", reason->message);
      return NULL;
    }

  return json_node_ref (json_parser_get_root (parser));
}

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

static char *
describe (JsonNode *node)
{
  g_autofree char *text = NULL;

  if (JSON_NODE_HOLDS_OBJECT (node))
    return g_strdup ("an object");
  if (JSON_NODE_HOLDS_ARRAY (node))
    return g_strdup ("a list");
  if (JSON_NODE_HOLDS_NULL (node))
    return g_strdup ("null");
  if (json_node_get_value_type (node) == G_TYPE_BOOLEAN)
    return g_strdup (json_node_get_boolean (node) ? "true" : "false");
  if (json_node_get_value_type (node) == G_TYPE_STRING)
    {
      text = bb_message_quote (json_node_get_string (node), -1);
      return g_strdup_printf ("\"%s\"", text);
    }

  return bb_number_to_text (json_node_get_double (node));
}

static gboolean G_GNUC_PRINTF (3, 4)
refuse (Reader      *self,
        BbModelError code,
        const char  *format,
        ...)
{
  g_autofree char *message = NULL;
  va_list arguments;

  va_start (arguments, format);
  message = g_strdup_vprintf (format, arguments);
  va_end (arguments);
  g_set_error (self->error, BB_MODEL_ERROR, (int) code, "%s: %s", self->path->len > 0 ? self->path->str : "input",
               message);

  return FALSE;
}

static gboolean
refuse_value (Reader     *self,
              JsonNode   *node,
              const char *wanted)
{
  g_autofree char *given = describe (node);

  return refuse (self, BB_MODEL_ERROR_VALUE, "%s is not %s", given, wanted);
}

static gboolean
holds_number (JsonNode *node)
{
  return JSON_NODE_HOLDS_VALUE (node) && (json_node_get_value_type (node) == G_TYPE_INT64 ||
                                          json_node_get_value_type (node) == G_TYPE_DOUBLE);
}

static gboolean
holds (JsonNode *node,
       GType     type)
{
  return JSON_NODE_HOLDS_VALUE (node) && json_node_get_value_type (node) == type;
}

static gboolean
read_number (Reader        *self,
             const BbField *field,
             JsonNode      *node,
             gpointer       record)
{
  if (!holds_number (node))
    return refuse_value (self, node, "a number");
  bb_field_set_number (field, record, json_node_get_double (node));

  return TRUE;
}

static gboolean
read_integer (Reader        *self,
              const BbField *field,
              JsonNode      *node,
              gpointer       record)
{
  double value = 0;

  if (!holds_number (node))
    return refuse_value (self, node, "a whole number");
  value = json_node_get_double (node);
  if (trunc (value) != value || fabs (value) > LARGEST_INTEGER)
    return refuse_value (self, node, "a whole number between -2^53 and 2^53");
  bb_field_set_integer (field, record, (gint64) value);

  return TRUE;
}

static gboolean
read_text (Reader        *self,
           const BbField *field,
           JsonNode      *node,
           gpointer       record)
{
  if (!holds (node, G_TYPE_STRING))
    return refuse_value (self, node, field->kind == BB_KIND_DATE ? "a date YYYY-MM-DD" : "a text");
  bb_field_set_text (field, record, json_node_get_string (node));

  return TRUE;
}

static gboolean
read_choice (Reader        *self,
             const BbField *field,
             JsonNode      *node,
             gpointer       record)
{
  int choice = holds (node, G_TYPE_STRING) ? bb_choices_find (field->choices, json_node_get_string (node))
                                           : BB_CHOICE_NONE;

  if (choice == BB_CHOICE_NONE)
    {
      g_autoptr (GString) allowed = g_string_new ("one of: ");

      for (guint i = 0; i < field->choices->n_items; i++)
        g_string_append_printf (allowed, "%s%s", i > 0 ? ", " : "", field->choices->items[i].key);
      return refuse_value (self, node, allowed->str);
    }
  bb_field_set_choice (field, record, choice);

  return TRUE;
}

static gboolean
read_flag (Reader        *self,
           const BbField *field,
           JsonNode      *node,
           gpointer       record)
{
  if (!holds (node, G_TYPE_BOOLEAN))
    return refuse_value (self, node, "true or false");
  bb_field_set_choice (field, record, json_node_get_boolean (node) ? 1 : 0);

  return TRUE;
}

static gboolean
read_reference (Reader        *self,
                const BbField *field,
                JsonNode      *node,
                gpointer       record)
{
  gint64 id = 0;

  if (!holds (node, G_TYPE_STRING) || self->reading->resolve == NULL)
    return refuse_value (self, node, "the code of a record");
  if (!self->reading->resolve (field, json_node_get_string (node), &id, self->reading->data, self->error))
    {
      g_prefix_error (self->error, "%s: ", self->path->str);
      return FALSE;
    }
  bb_field_set_integer (field, record, id);

  return TRUE;
}

static gboolean
read_items (Reader        *self,
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
        return refuse_value (self, node, "an object");
      if (!read_object (self, field->item, json_node_get_object (node), bb_field_append_item (field, record)))
        return FALSE;
      g_string_truncate (self->path, here);
    }

  return TRUE;
}

static gboolean
read_numbers (Reader        *self,
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

      if (!holds_number (node))
        {
          g_string_append_printf (self->path, "[%u]", i);
          return refuse_value (self, node, "a number");
        }
      value = json_node_get_double (node);
      g_array_append_val (array, value);
    }

  return TRUE;
}

static gboolean
read_texts (Reader        *self,
            const BbField *field,
            JsonArray     *list,
            gpointer       record)
{
  g_autoptr (GStrvBuilder) builder = g_strv_builder_new ();

  for (guint i = 0; i < json_array_get_length (list); i++)
    {
      JsonNode *node = json_array_get_element (list, i);

      if (!holds (node, G_TYPE_STRING) || !bb_text_is_plain (json_node_get_string (node), FALSE))
        {
          g_string_append_printf (self->path, "[%u]", i);
          return refuse_value (self, node, "a text without control characters");
        }
      g_strv_builder_add (builder, json_node_get_string (node));
    }
  bb_field_clear (field, record);
  BB_FIELD_AT (field, GStrv, record) = g_strv_builder_end (builder);

  return TRUE;
}

static gboolean
read_array (Reader        *self,
            const BbField *field,
            JsonNode      *node,
            gpointer       record)
{
  double most = field->count.set ? field->count.maximum : BB_JSON_ITEMS;
  JsonArray *list = NULL;

  if (!JSON_NODE_HOLDS_ARRAY (node))
    return refuse_value (self, node, "a list");
  list = json_node_get_array (node);
  if (json_array_get_length (list) > most)
    return refuse (self, BB_MODEL_ERROR_VALUE, "%u items, the maximum is %.0f", json_array_get_length (list), most);

  if (field->kind == BB_KIND_LIST)
    return read_items (self, field, list, record);
  if (field->kind == BB_KIND_NUMBERS)
    return read_numbers (self, field, list, record);

  return read_texts (self, field, list, record);
}

static gboolean
read_nested (Reader        *self,
             const BbField *field,
             JsonNode      *node,
             gpointer       record)
{
  if (!JSON_NODE_HOLDS_OBJECT (node))
    return refuse_value (self, node, "an object");

  bb_field_clear (field, record);
  BB_FIELD_AT (field, gpointer, record) = bb_record_new (field->item);

  return read_object (self, field->item, json_node_get_object (node), BB_FIELD_AT (field, gpointer, record));
}

static gboolean
read_null (Reader        *self,
           const BbField *field,
           gpointer       record)
{
  if (field->fallback.set && (field->required || !self->reading->null_is_none))
    return refuse (self, BB_MODEL_ERROR_VALUE, "null is not allowed, leave the key out for its default");
  if (field->required)
    return refuse (self, BB_MODEL_ERROR_VALUE, "null is not allowed, the key is required");
  bb_field_clear (field, record);

  return TRUE;
}

static gboolean
read_value (Reader        *self,
            const BbField *field,
            JsonNode      *node,
            gpointer       record)
{
  if (JSON_NODE_HOLDS_NULL (node))
    return read_null (self, field, record);

  switch (field->kind)
    {
    case BB_KIND_NUMBER:
      return read_number (self, field, node, record);
    case BB_KIND_INTEGER:
      return read_integer (self, field, node, record);
    case BB_KIND_TEXT:
    case BB_KIND_DATE:
      return read_text (self, field, node, record);
    case BB_KIND_CHOICE:
      return read_choice (self, field, node, record);
    case BB_KIND_FLAG:
      return read_flag (self, field, node, record);
    case BB_KIND_REFERENCE:
      return read_reference (self, field, node, record);
    case BB_KIND_LIST:
    case BB_KIND_NUMBERS:
    case BB_KIND_TEXTS:
      return read_array (self, field, node, record);
    case BB_KIND_OBJECT:
      return read_nested (self, field, node, record);
    default:
      g_return_val_if_reached (FALSE);
    }
}

static gboolean
refuse_key (Reader        *self,
            const BbTable *table)
{
  g_autoptr (GString) known = g_string_new (NULL);

  for (guint i = 0; i < table->n_fields; i++)
    if (!self->reading->exchanged || bb_json_is_exchanged (&table->fields[i]))
      g_string_append_printf (known, "%s%s", known->len > 0 ? ", " : "", table->fields[i].name);

  return refuse (self, BB_MODEL_ERROR_KEY, "unknown key, it is none of: %s", known->str);
}

static gboolean
read_object (Reader        *self,
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
  Reader self = { .reading = reading != NULL ? reading : &plain, .path = path, .error = error };

  if (!JSON_NODE_HOLDS_OBJECT (node))
    return refuse_value (&self, node, "an object");

  return read_object (&self, table, json_node_get_object (node), record);
}
