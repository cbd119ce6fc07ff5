/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-model"

#include "bb-canonical.h"

#include <glib/gprintf.h>

/**
 * bb_number_to_text:
 * @value: a finite number
 *
 * Writes a number with as few digits as read back to the same double, and always with a decimal point
 * where it has one: the locale has no say.
 *
 * Returns: (transfer full): the text
 */
char *
bb_number_to_text (double value)
{
  char buffer[G_ASCII_DTOSTR_BUF_SIZE];

  g_return_val_if_fail (isfinite (value), g_strdup ("null"));

  /* Minus nothing is nothing. */
  if (value == 0.0)
    return g_strdup ("0");

  for (int digits = 15; digits <= 17; digits++)
    {
      char format[8];

      g_snprintf (format, sizeof format, "%%.%dg", digits);
      g_ascii_formatd (buffer, sizeof buffer, format, value);
      if (g_ascii_strtod (buffer, NULL) == value)
        break;
    }

  return g_strdup (buffer);
}

/**
 * bb_json_append_string:
 * @out: where to write
 * @text: valid UTF-8
 *
 * Appends @text as a JSON string.
 */
void
bb_json_append_string (GString    *out,
                       const char *text)
{
  g_string_append_c (out, '"');
  for (const char *p = text; *p != '\0'; p++)
    switch (*p)
      {
      case '"':
        g_string_append (out, "\\\"");
        break;
      case '\\':
        g_string_append (out, "\\\\");
        break;
      case '\n':
        g_string_append (out, "\\n");
        break;
      case '\t':
        g_string_append (out, "\\t");
        break;
      case '\r':
        g_string_append (out, "\\r");
        break;
      default:
        if ((guchar) *p < 0x20 || *p == 0x7f)
          g_string_append_printf (out, "\\u%04x", (guint) (guchar) *p);
        else
          g_string_append_c (out, *p);
        break;
      }
  g_string_append_c (out, '"');
}

static void
append_number (GString *out,
               double   value)
{
  g_autofree char *text = bb_number_to_text (value);

  g_string_append (out, text);
}

/* A choice beyond its set, which validation refuses, has no word. */
static void
append_text (GString    *out,
             const char *text)
{
  if (text != NULL)
    bb_json_append_string (out, text);
  else
    g_string_append (out, "null");
}

static void
append_record (GString       *out,
               const BbTable *table,
               gconstpointer  record,
               BbTextScope    scope)
{
  gboolean first = TRUE;

  g_string_append_c (out, '{');
  for (guint i = 0; i < table->n_fields; i++)
    {
      const BbField *field = &table->fields[i];

      if (scope != BB_SCOPE_OUTPUT && !bb_field_is_set (field, record))
        continue;
      if (scope == BB_SCOPE_SEALED && field->unsealed)
        continue;

      if (!first)
        g_string_append_c (out, ',');
      first = FALSE;
      bb_json_append_string (out, field->name);
      g_string_append_c (out, ':');
      bb_json_append_field (out, field, record, scope);
    }
  g_string_append_c (out, '}');
}

static void
append_array (GString       *out,
              const BbField *field,
              gconstpointer  record,
              BbTextScope    scope)
{
  const GArray *array = bb_field_get_array (field, record);

  g_string_append_c (out, '[');
  for (guint i = 0; array != NULL && i < array->len; i++)
    {
      if (i > 0)
        g_string_append_c (out, ',');
      if (field->kind == BB_KIND_NUMBERS)
        append_number (out, g_array_index (array, double, i));
      else
        append_record (out, field->item, array->data + i * field->item->size, scope);
    }
  g_string_append_c (out, ']');
}

static void
append_texts (GString *out,
              GStrv    texts)
{
  g_string_append_c (out, '[');
  for (guint i = 0; texts != NULL && texts[i] != NULL; i++)
    {
      if (i > 0)
        g_string_append_c (out, ',');
      bb_json_append_string (out, texts[i]);
    }
  g_string_append_c (out, ']');
}

/**
 * bb_json_append_field:
 * @out: where to write
 * @field: a field
 * @record: a record of the field's table
 * @scope: what of nested records to write
 *
 * Appends the JSON value of one field; `null` where there is none, `[]` for a list without items unless its field says
 * otherwise.
 */
void
bb_json_append_field (GString       *out,
                      const BbField *field,
                      gconstpointer  record,
                      BbTextScope    scope)
{
  if (field->absent_is_null && BB_FIELD_IN (field, gpointer, record) == NULL)
    {
      g_string_append (out, "null");
      return;
    }
  if (field->kind == BB_KIND_LIST || field->kind == BB_KIND_NUMBERS)
    {
      append_array (out, field, record, scope);
      return;
    }
  if (field->kind == BB_KIND_TEXTS)
    {
      append_texts (out, BB_FIELD_IN (field, GStrv, record));
      return;
    }
  if (!bb_field_is_set (field, record))
    {
      g_string_append (out, "null");
      return;
    }

  switch ((int) field->kind)
    {
    case BB_KIND_NUMBER:
      append_number (out, bb_field_get_number (field, record));
      break;
    case BB_KIND_INTEGER:
    case BB_KIND_REFERENCE:
      g_string_append_printf (out, "%" G_GINT64_FORMAT, bb_field_get_integer (field, record));
      break;
    case BB_KIND_FLAG:
      g_string_append (out, bb_field_get_choice (field, record) == 1 ? "true" : "false");
      break;
    case BB_KIND_OBJECT:
      append_record (out, field->item, BB_FIELD_IN (field, gpointer, record), scope);
      break;
    default:
      append_text (out, bb_field_get_text (field, record));
      break;
    }
}

/**
 * bb_record_to_json:
 * @table: the record's table
 * @record: a record
 * @scope: which fields to write
 *
 * Writes a record as one line of JSON, keys in the table's order, numbers by bb_number_to_text(). Equal
 * records have equal texts, byte for byte.
 *
 * Returns: (transfer full): the text
 */
char *
bb_record_to_json (const BbTable *table,
                   gconstpointer  record,
                   BbTextScope    scope)
{
  GString *out = g_string_new (NULL);

  append_record (out, table, record, scope);

  return g_string_free (out, FALSE);
}

/**
 * bb_record_seal:
 * @table: the record's table
 * @record: a record
 *
 * Returns: (transfer full): the SHA-256 of the record's canonical text, in hexadecimal: what a seal covers
 */
char *
bb_record_seal (const BbTable *table,
                gconstpointer  record)
{
  g_autofree char *text = bb_record_to_json (table, record, BB_SCOPE_SEALED);

  return g_compute_checksum_for_string (G_CHECKSUM_SHA256, text, -1);
}
