/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-test"

#include <string.h>

#include "bb-canonical.h"
#include "bb-json-write.h"
#include "bb-json.h"
#include "fuzz.h"
#include "records.h"

/* JSON, as a value and as a record of each table. What was read comes back the same when it is written. */

static const BbJsonReading exchanged = { .resolve = resolve_record, .null_is_none = TRUE, .exchanged = TRUE };

static void append_value (GString  *out,
                          JsonNode *node);

static void
append_array (GString   *out,
              JsonArray *array)
{
  g_string_append_c (out, '[');
  for (guint i = 0; i < json_array_get_length (array); i++)
    {
      if (i > 0)
        g_string_append_c (out, ',');
      append_value (out, json_array_get_element (array, i));
    }
  g_string_append_c (out, ']');
}

static void
append_object (GString    *out,
               JsonObject *object)
{
  JsonObjectIter iter;
  const char *key = NULL;
  JsonNode *node = NULL;
  gboolean first = TRUE;

  g_string_append_c (out, '{');
  json_object_iter_init_ordered (&iter, object);
  while (json_object_iter_next_ordered (&iter, &key, &node))
    {
      if (!first)
        g_string_append_c (out, ',');
      first = FALSE;
      bb_json_append_string (out, key);
      g_string_append_c (out, ':');
      append_value (out, node);
    }
  g_string_append_c (out, '}');
}

static void
append_value (GString  *out,
              JsonNode *node)
{
  g_autofree char *number = NULL;

  if (JSON_NODE_HOLDS_OBJECT (node))
    append_object (out, json_node_get_object (node));
  else if (JSON_NODE_HOLDS_ARRAY (node))
    append_array (out, json_node_get_array (node));
  else if (JSON_NODE_HOLDS_NULL (node))
    g_string_append (out, "null");
  else if (json_node_get_value_type (node) == G_TYPE_STRING)
    bb_json_append_string (out, json_node_get_string (node));
  else if (json_node_get_value_type (node) == G_TYPE_BOOLEAN)
    g_string_append (out, json_node_get_boolean (node) ? "true" : "false");
  else
    g_string_append (out, number = bb_number_to_text (json_node_get_double (node)));
}

/* Whole numbers and others are not told apart here: both are numbers. */
static void
check_value (JsonNode *node)
{
  g_autoptr (GString) text = g_string_new (NULL);
  g_autoptr (GString) again_text = g_string_new (NULL);
  g_autoptr (GError) error = NULL;
  g_autoptr (JsonNode) again = NULL;

  append_value (text, node);
  again = bb_json_parse (text->str, text->len, &error);
  g_assert_no_error (error);
  append_value (again_text, again);
  g_assert_cmpstr (text->str, ==, again_text->str);
}

static void
check_record (const BbTable *table,
              gconstpointer  record)
{
  g_autoptr (GString) text = g_string_new (NULL);
  g_autoptr (GError) error = NULL;
  g_autoptr (JsonNode) node = NULL;
  gpointer again = bb_record_new (table);

  bb_json_append_exchanged (text, table, record, name_record, NULL, &error);
  g_assert_no_error (error);
  node = bb_json_parse (text->str, text->len, &error);
  g_assert_no_error (error);
  bb_json_read_record (table, node, &exchanged, again, &error);
  g_assert_no_error (error);
  g_assert_true (bb_record_equal (table, record, again));
  bb_record_free (table, again);
}

static void
read_table (const BbTable *table,
            JsonNode      *node)
{
  gpointer record = bb_record_new (table);
  g_autoptr (GError) error = NULL;

  if (!bb_json_read_record (table, node, &exchanged, record, &error))
    fuzz_check_message (error);
  else if (record_is_valid (table, record))
    check_record (table, record);
  bb_record_free (table, record);
}

gboolean
fuzz_one (const guint8 *data,
          gsize         length)
{
  const char *text = length > 0 ? (const char *) data : "";
  g_autoptr (GError) error = NULL;
  g_autoptr (JsonNode) node = bb_json_parse (text, length, &error);
  guint n_tables = 0;
  const BbTable * const *tables = bb_book_tables (&n_tables);

  if (node == NULL)
    {
      fuzz_check_message (error);
      /* So json-glib begins what it complains of; it is to see nothing that it would complain of. */
      g_assert_false (g_str_has_prefix (error->message, "not JSON: <data>"));
      return FALSE;
    }

  check_value (node);
  for (guint i = 0; i < n_tables; i++)
    read_table (tables[i], node);

  return TRUE;
}
