/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bb-json-write.h"

#include "bb-canonical.h"
#include "bb-json.h"

/* A field left out is read as its default, so that one emptied by hand has to say so. */
static gboolean
is_written (const BbField *field,
            gconstpointer  record)
{
  return bb_json_is_exchanged (field) && (bb_field_is_set (field, record) || field->fallback.set);
}

static gboolean
append_reference (GString       *out,
                  const BbField *field,
                  gconstpointer  record,
                  BbJsonName     name,
                  gpointer       data,
                  GError       **error)
{
  g_autofree char *code = name (field, bb_field_get_integer (field, record), data, error);

  if (code == NULL)
    return FALSE;
  bb_json_append_string (out, code);

  return TRUE;
}

/**
 * bb_json_append_exchanged:
 * @out: where to write
 * @table: the record's table
 * @record: a record
 * @name: tells the code of what a reference points to
 * @data: for @name
 * @error: return location for a #GError
 *
 * Appends a record as files exchange it: like bb_record_to_json(), but without what belongs to one book, and with
 * the code of another record in place of its key. bb_json_read_record() with `exchanged` and `null_is_none` reads
 * an equal record from it.
 *
 * Returns: %TRUE on success
 */
gboolean
bb_json_append_exchanged (GString       *out,
                          const BbTable *table,
                          gconstpointer  record,
                          BbJsonName     name,
                          gpointer       data,
                          GError       **error)
{
  gboolean first = TRUE;

  g_string_append_c (out, '{');
  for (guint i = 0; i < table->n_fields; i++)
    {
      const BbField *field = &table->fields[i];

      if (!is_written (field, record))
        continue;
      if (!first)
        g_string_append_c (out, ',');
      first = FALSE;
      bb_json_append_string (out, field->name);
      g_string_append_c (out, ':');
      if (field->kind != BB_KIND_REFERENCE)
        bb_json_append_field (out, field, record, BB_SCOPE_ALL);
      else if (!append_reference (out, field, record, name, data, error))
        return FALSE;
    }
  g_string_append_c (out, '}');

  return TRUE;
}
