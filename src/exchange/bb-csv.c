/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bb-csv.h"

#include <string.h>

#include "bb-canonical.h"
#include "bb-error.h"

/* With these a spreadsheet starts a formula; the apostrophe is here so that taking it off again is unambiguous. */
#define GUARDED "=+-@\t\r'"

static gboolean
is_text (const BbField *field)
{
  return field->kind == BB_KIND_TEXT || field->kind == BB_KIND_DATE || field->kind == BB_KIND_CHOICE ||
         field->kind == BB_KIND_REFERENCE;
}

static void
append_text (GString    *out,
             const char *text)
{
  g_autofree char *guarded = *text != '\0' && strchr (GUARDED, *text) != NULL ? g_strconcat ("'", text, NULL) : NULL;

  bb_csv_append_cell (out, guarded != NULL ? guarded : text);
}

static const char *
without_guard (const char *cell)
{
  return cell[0] == '\'' && cell[1] != '\0' && strchr (GUARDED, cell[1]) != NULL ? cell + 1 : cell;
}

static gboolean
append_value (GString       *out,
              const BbField *field,
              gconstpointer  record,
              BbJsonName     name,
              gpointer       data,
              GError       **error)
{
  g_autoptr (GString) json = NULL;

  if (!bb_field_is_set (field, record))
    return TRUE;
  if (field->kind == BB_KIND_REFERENCE)
    {
      g_autofree char *code = name (field, bb_field_get_integer (field, record), data, error);

      if (code == NULL)
        return FALSE;
      append_text (out, code);
      return TRUE;
    }
  if (is_text (field))
    {
      append_text (out, bb_field_get_text (field, record));
      return TRUE;
    }

  json = g_string_new (NULL);
  bb_json_append_field (json, field, record, BB_SCOPE_ALL);
  bb_csv_append_cell (out, json->str);

  return TRUE;
}

static gboolean
append_row (GString       *out,
            const BbTable *table,
            gconstpointer  record,
            BbJsonName     name,
            gpointer       data,
            GError       **error)
{
  gboolean first = TRUE;

  for (guint i = 0; i < table->n_fields; i++)
    {
      const BbField *field = &table->fields[i];

      if (!bb_json_is_exchanged (field))
        continue;
      if (!first)
        g_string_append_c (out, ',');
      first = FALSE;
      if (record == NULL)
        bb_csv_append_cell (out, field->name);
      else if (!append_value (out, field, record, name, data, error))
        return FALSE;
    }
  g_string_append (out, "\r\n");

  return TRUE;
}

/**
 * bb_csv_write:
 * @table: the records' table
 * @records: (element-type gpointer): records
 * @name: tells the code of what a reference points to
 * @data: for @name
 * @error: return location for a #GError
 *
 * Writes records as CSV, the names of the fields first; what belongs to one book, like keys and seals, is left out.
 *
 * Returns: (transfer full): the text, or %NULL on failure
 */
char *
bb_csv_write (const BbTable *table,
              GPtrArray     *records,
              BbJsonName     name,
              gpointer       data,
              GError       **error)
{
  g_autoptr (GString) out = g_string_new (NULL);

  append_row (out, table, NULL, name, data, error);
  for (guint i = 0; i < records->len; i++)
    if (!append_row (out, table, records->pdata[i], name, data, error))
      return NULL;

  return g_string_free (g_steal_pointer (&out), FALSE);
}

static gboolean
refuse (GError    **error,
        guint       line,
        const char *column,
        const char *why)
{
  g_autofree char *quote = bb_message_quote (column, -1);

  g_set_error (error, BB_MODEL_ERROR, BB_MODEL_ERROR_KEY, "row %u: %s: %s", line, quote, why);
  return FALSE;
}

/* The fields of the columns, in their order. */
static GPtrArray *
read_header (const BbTable *table,
             GStrv          header,
             GError       **error)
{
  g_autoptr (GPtrArray) fields = g_ptr_array_new ();

  for (guint i = 0; header[i] != NULL; i++)
    {
      const BbField *field = bb_table_find_field (table, header[i]);

      if (field == NULL || !bb_json_is_exchanged (field))
        {
          refuse (error, 1, header[i], "unknown column");
          return NULL;
        }
      if (g_ptr_array_find (fields, field, NULL))
        {
          refuse (error, 1, header[i], "the column is given twice");
          return NULL;
        }
      g_ptr_array_add (fields, (gpointer) field);
    }

  return g_steal_pointer (&fields);
}

/**
 * bb_csv_cell_to_node:
 * @field: a field
 * @cell: the text of a cell of that field
 *
 * Texts stand in cells as they are, everything else as JSON. What is neither becomes a text, which the reader of
 * records then refuses by the field's name.
 *
 * Returns: (transfer full): the value, `null` for an empty cell
 */
JsonNode *
bb_csv_cell_to_node (const BbField *field,
                     const char    *cell)
{
  JsonNode *node = NULL;

  if (*cell == '\0')
    return json_node_new (JSON_NODE_NULL);
  if (!is_text (field))
    node = bb_json_parse (cell, strlen (cell), NULL);
  if (node != NULL)
    return node;

  node = json_node_new (JSON_NODE_VALUE);
  json_node_set_string (node, is_text (field) ? without_guard (cell) : cell);

  return node;
}

static JsonNode *
row_to_node (GPtrArray *fields,
             GStrv      row)
{
  JsonNode *node = json_node_new (JSON_NODE_OBJECT);
  JsonObject *object = json_object_new ();

  for (guint i = 0; i < fields->len; i++)
    {
      const BbField *field = fields->pdata[i];

      /* An empty cell of a required field is one left out: where it has a default it takes it. */
      if (*row[i] != '\0' || !field->required)
        json_object_set_member (object, field->name, bb_csv_cell_to_node (field, row[i]));
    }
  json_node_take_object (node, object);

  return node;
}

static gpointer
read_row (const BbTable       *table,
          GPtrArray           *fields,
          GStrv                row,
          const BbJsonReading *reading,
          GError             **error)
{
  g_autoptr (JsonNode) node = NULL;
  gpointer record = NULL;

  if (g_strv_length (row) != fields->len)
    {
      g_set_error (error, BB_EXCHANGE_ERROR, BB_EXCHANGE_ERROR_UNREADABLE, "not CSV: %u cells, the first line has %u",
                   g_strv_length (row), fields->len);
      return NULL;
    }

  node = row_to_node (fields, row);
  record = bb_record_new (table);
  if (bb_json_read_record (table, node, reading, record, error))
    return record;

  bb_record_free (table, record);
  return NULL;
}

/**
 * bb_csv_read:
 * @table: the records' table
 * @text: a text as bb_csv_write() makes it; columns may be in any order, and those of optional fields left out
 * @length: its length in bytes
 * @resolve: finds what a reference names
 * @take: what to do with each record, before the next one is read: one may refer to those before it
 * @data: for @resolve and @take
 * @error: return location for a #GError; its message names the row and the column
 *
 * Reads records from CSV. An empty cell empties an optional field and leaves a required one at its default. Limits
 * and what is missing are not looked at, as in bb_json_read_record().
 *
 * Returns: %FALSE on failure, also that of @take
 */
gboolean
bb_csv_read (const BbTable *table,
             const char    *text,
             gsize          length,
             BbJsonResolve  resolve,
             BbCsvTake      take,
             gpointer       data,
             GError       **error)
{
  const BbJsonReading reading = { .resolve = resolve, .data = data, .null_is_none = TRUE, .exchanged = TRUE };
  g_autoptr (GPtrArray) rows = bb_csv_split (text, length, error);
  g_autoptr (GPtrArray) fields = NULL;

  if (rows == NULL)
    return FALSE;
  if (rows->len == 0)
    {
      g_set_error_literal (error, BB_EXCHANGE_ERROR, BB_EXCHANGE_ERROR_UNREADABLE, "not CSV: an empty text");
      return FALSE;
    }
  fields = read_header (table, rows->pdata[0], error);
  if (fields == NULL)
    return FALSE;

  for (guint i = 1; i < rows->len; i++)
    {
      gpointer record = read_row (table, fields, rows->pdata[i], &reading, error);

      if (record == NULL || !take (record, i - 1, rows->len - 1, data, error))
        {
          g_prefix_error (error, "row %u: ", i + 1);
          return FALSE;
        }
    }

  return TRUE;
}
