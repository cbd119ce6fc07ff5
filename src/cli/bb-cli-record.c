/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bb-cli-record.h"

#include <glib/gi18n-lib.h>

#include "bb-csv.h"
#include "bb-moment.h"

struct _BbCliFields {
  const BbTable *table;
  GArray *entries;
  GPtrArray *strings;
  const BbField **fields;
  char **values;
};

/* What the help shows for a value; a choice shows its words. */
static char *
make_placeholder (const BbField *field)
{
  g_autoptr (GString) words = g_string_new (NULL);

  switch ((int) field->kind)
    {
    case BB_KIND_NUMBER:
    case BB_KIND_INTEGER:
      return g_strdup (_("NUMBER"));
    case BB_KIND_DATE:
      return g_strdup (_("DATE"));
    case BB_KIND_REFERENCE:
      return g_strdup (_("CODE"));
    case BB_KIND_CHOICE:
      for (guint i = 0; i < field->choices->n_items; i++)
        g_string_append_printf (words, "%s%s", i > 0 ? "|" : "", field->choices->items[i].key);
      return g_strdup (words->str);
    default:
      return g_strdup (_("TEXT"));
    }
}

/* The unit is part of a field's name, and so of its option's. */
static char *
make_name (const BbField *field)
{
  return g_strdelimit (g_strdup (field->name), "_", '-');
}

/* Options hold their words as borrowed text. */
static const char *
keep (BbCliFields *self,
      char        *text)
{
  g_ptr_array_add (self->strings, text);
  return text;
}

/**
 * bb_cli_fields_new:
 * @table: a table
 * @given: the field that is given without an option
 *
 * Returns: (transfer full): options for the fields of @table that a person enters
 */
BbCliFields *
bb_cli_fields_new (const BbTable *table,
                   const char    *given)
{
  BbCliFields *self = g_new0 (BbCliFields, 1);
  guint n = 0;

  self->table = table;
  self->entries = g_array_new (TRUE, TRUE, sizeof (GOptionEntry));
  self->strings = g_ptr_array_new_with_free_func (g_free);
  self->fields = g_new0 (const BbField *, table->n_fields);
  self->values = g_new0 (char *, table->n_fields);

  for (guint i = 0; i < table->n_fields; i++)
    {
      const BbField *field = &table->fields[i];
      GOptionEntry entry = { .arg = G_OPTION_ARG_STRING, .arg_data = &self->values[n] };

      if (field->derived || field->kind == BB_KIND_LIST || g_str_equal (field->name, given))
        continue;
      entry.long_name = keep (self, make_name (field));
      entry.description = field->help;
      entry.arg_description = keep (self, make_placeholder (field));
      g_array_append_val (self->entries, entry);
      self->fields[n++] = field;
    }

  return self;
}

/**
 * bb_cli_fields_free:
 * @self: (transfer full): options
 */
void
bb_cli_fields_free (BbCliFields *self)
{
  for (guint i = 0; i < self->table->n_fields; i++)
    g_free (self->values[i]);
  g_free (self->values);
  g_free (self->fields);
  g_ptr_array_unref (self->strings);
  g_array_unref (self->entries);
  g_free (self);
}

/**
 * bb_cli_fields_get_entries:
 * @self: options
 *
 * Returns: (transfer none): the options for bb_cli_parse_options()
 */
const GOptionEntry *
bb_cli_fields_get_entries (BbCliFields *self)
{
  return (const GOptionEntry *) (gpointer) self->entries->data;
}

/**
 * bb_cli_fields_read:
 * @self: options, after the command line was read
 * @codes: finds the records that codes stand for
 * @record: a record of their table
 * @error: return location for a #GError
 *
 * Puts what was given into a record; a date that is required and was not given is now.
 *
 * Returns: %FALSE with %BB_MODEL_ERROR where a value is not allowed; the message names the field
 */
gboolean
bb_cli_fields_read (BbCliFields *self,
                    BbCodes     *codes,
                    gpointer     record,
                    GError     **error)
{
  const BbJsonReading reading = { .resolve = bb_codes_resolve, .data = codes, .exchanged = TRUE };
  g_autoptr (JsonNode) node = json_node_new (JSON_NODE_OBJECT);

  json_node_take_object (node, json_object_new ());
  for (guint i = 0; i < self->table->n_fields && self->fields[i] != NULL; i++)
    {
      if (self->values[i] == NULL && self->fields[i]->kind == BB_KIND_DATE && self->fields[i]->required)
        self->values[i] = bb_dup_now ();
      if (self->values[i] != NULL)
        json_object_set_member (json_node_get_object (node), self->fields[i]->name,
                                bb_csv_cell_to_node (self->fields[i], self->values[i]));
    }

  return bb_json_read_record (self->table, node, &reading, record, error);
}
