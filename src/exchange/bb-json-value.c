/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-exchange"

#include "bb-json-private.h"

#include "bb-canonical.h"
#include "bb-problem.h"

/* One value at a time: whether it is of the kind that its field has, and what to say where it is not. */

/* A whole number beyond this is not held by every double (2^53). */
#define LARGEST_INTEGER 9007199254740992.0

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

/**
 * _bb_json_refuse:
 * @self: a pass over a record
 * @code: what is wrong
 * @format: a sentence about what stands where the pass is, like that of printf()
 * @...: what goes into it
 *
 * Complains of the value or key where the pass is.
 *
 * Returns: %FALSE
 */
gboolean
_bb_json_refuse (BbJsonReader *self,
                 BbModelError  code,
                 const char   *format,
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

/**
 * _bb_json_refuse_value:
 * @self: a pass over a record
 * @node: the value where the pass is
 * @wanted: what it is not, like "a whole number"
 *
 * Complains of the value where the pass is.
 *
 * Returns: %FALSE
 */
gboolean
_bb_json_refuse_value (BbJsonReader *self,
                       JsonNode     *node,
                       const char   *wanted)
{
  g_autofree char *given = describe (node);

  return _bb_json_refuse (self, BB_MODEL_ERROR_VALUE, "%s is not %s", given, wanted);
}

/**
 * _bb_json_holds_number:
 * @node: a value
 *
 * Returns: %TRUE if it is a number, whole or not
 */
gboolean
_bb_json_holds_number (JsonNode *node)
{
  return JSON_NODE_HOLDS_VALUE (node) && (json_node_get_value_type (node) == G_TYPE_INT64 ||
                                          json_node_get_value_type (node) == G_TYPE_DOUBLE);
}

/**
 * _bb_json_holds:
 * @node: a value
 * @type: the type of a text or of true and false
 *
 * Returns: %TRUE if it is of that type
 */
gboolean
_bb_json_holds (JsonNode *node,
                GType     type)
{
  return JSON_NODE_HOLDS_VALUE (node) && json_node_get_value_type (node) == type;
}

static gboolean
read_number (BbJsonReader  *self,
             const BbField *field,
             JsonNode      *node,
             gpointer       record)
{
  if (!_bb_json_holds_number (node))
    return _bb_json_refuse_value (self, node, "a number");
  bb_field_set_number (field, record, json_node_get_double (node));

  return TRUE;
}

static gboolean
read_integer (BbJsonReader  *self,
              const BbField *field,
              JsonNode      *node,
              gpointer       record)
{
  double value = 0;

  if (!_bb_json_holds_number (node))
    return _bb_json_refuse_value (self, node, "a whole number");
  value = json_node_get_double (node);
  if (trunc (value) != value || fabs (value) > LARGEST_INTEGER)
    return _bb_json_refuse_value (self, node, "a whole number between -2^53 and 2^53");
  bb_field_set_integer (field, record, (gint64) value);

  return TRUE;
}

static gboolean
read_text (BbJsonReader  *self,
           const BbField *field,
           JsonNode      *node,
           gpointer       record)
{
  if (!_bb_json_holds (node, G_TYPE_STRING))
    return _bb_json_refuse_value (self, node, field->kind == BB_KIND_DATE ? "a date YYYY-MM-DD" : "a text");
  bb_field_set_text (field, record, json_node_get_string (node));

  return TRUE;
}

static gboolean
read_choice (BbJsonReader  *self,
             const BbField *field,
             JsonNode      *node,
             gpointer       record)
{
  int choice = _bb_json_holds (node, G_TYPE_STRING) ? bb_choices_find (field->choices, json_node_get_string (node))
                                                    : BB_CHOICE_NONE;

  if (choice == BB_CHOICE_NONE)
    {
      g_autoptr (GString) allowed = g_string_new ("one of: ");

      for (guint i = 0; i < field->choices->n_items; i++)
        g_string_append_printf (allowed, "%s%s", i > 0 ? ", " : "", field->choices->items[i].key);
      return _bb_json_refuse_value (self, node, allowed->str);
    }
  bb_field_set_choice (field, record, choice);

  return TRUE;
}

static gboolean
read_flag (BbJsonReader  *self,
           const BbField *field,
           JsonNode      *node,
           gpointer       record)
{
  if (!_bb_json_holds (node, G_TYPE_BOOLEAN))
    return _bb_json_refuse_value (self, node, "true or false");
  bb_field_set_choice (field, record, json_node_get_boolean (node) ? 1 : 0);

  return TRUE;
}

static gboolean
read_reference (BbJsonReader  *self,
                const BbField *field,
                JsonNode      *node,
                gpointer       record)
{
  gint64 id = 0;

  if (!_bb_json_holds (node, G_TYPE_STRING) || self->reading->resolve == NULL)
    return _bb_json_refuse_value (self, node, "the code of a record");
  if (!self->reading->resolve (field, json_node_get_string (node), &id, self->reading->data, self->error))
    {
      g_prefix_error (self->error, "%s: ", self->path->str);
      return FALSE;
    }
  bb_field_set_integer (field, record, id);

  return TRUE;
}

/**
 * _bb_json_read_single:
 * @self: a pass over a record
 * @field: a field that holds one value: no list and no record
 * @node: the value, which is not null
 * @record: the record that takes it
 *
 * Returns: %FALSE where the value is refused
 */
gboolean
_bb_json_read_single (BbJsonReader  *self,
                      const BbField *field,
                      JsonNode      *node,
                      gpointer       record)
{
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
    case BB_KIND_OBJECT:
    default:
      g_return_val_if_reached (FALSE);
    }
}
