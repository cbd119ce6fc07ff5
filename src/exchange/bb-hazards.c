/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bb-hazards.h"

#include <json-glib/json-glib.h>

struct _BbHazards
{
  JsonNode *root;
  JsonObject *statements;
};

/**
 * bb_hazards_new:
 * @json: the statements' file
 * @error: return location for a #GError
 *
 * Returns: (transfer full): the statements, or %NULL if @json is something else
 */
BbHazards *
bb_hazards_new (GBytes  *json,
                GError **error)
{
  g_autoptr (JsonParser) parser = json_parser_new ();
  g_autoptr (BbHazards) self = g_new0 (BbHazards, 1);
  gsize size = 0;
  const char *text = g_bytes_get_data (json, &size);

  if (!json_parser_load_from_data (parser, text, (gssize) size, error))
    return NULL;

  self->root = json_parser_steal_root (parser);
  if (self->root != NULL && JSON_NODE_HOLDS_OBJECT (self->root))
    {
      JsonNode *statements = json_object_get_member (json_node_get_object (self->root), "statements");

      if (statements != NULL && JSON_NODE_HOLDS_OBJECT (statements))
        self->statements = json_node_get_object (statements);
    }
  if (self->statements == NULL)
    {
      g_set_error_literal (error, JSON_PARSER_ERROR, JSON_PARSER_ERROR_INVALID_DATA,
                           "The file of hazard statements has no statements.");
      return NULL;
    }

  return g_steal_pointer (&self);
}

/**
 * bb_hazards_free:
 * @self: (transfer full) (nullable): the statements
 */
void
bb_hazards_free (BbHazards *self)
{
  if (self == NULL)
    return;

  g_clear_pointer (&self->root, json_node_unref);
  g_free (self);
}

/**
 * bb_hazards_find:
 * @self: the statements
 * @code: a code, like `H319` or `P305+P351+P338`
 * @languages: the languages that a person reads, best first, ended by %NULL
 *
 * Returns: (transfer none) (nullable): the wording in the first language that it exists in, else in English;
 *   %NULL for a code that is not known
 */
const char *
bb_hazards_find (BbHazards          *self,
                 const char         *code,
                 const char * const *languages)
{
  JsonObject *statement = NULL;

  if (!json_object_has_member (self->statements, code))
    return NULL;

  statement = json_object_get_object_member (self->statements, code);
  for (guint i = 0; languages != NULL && languages[i] != NULL; i++)
    {
      g_autofree char *language = g_strndup (languages[i], 2);

      if (json_object_has_member (statement, language))
        return json_object_get_string_member (statement, language);
    }

  return json_object_get_string_member_with_default (statement, "en", NULL);
}

/**
 * bb_hazards_split:
 * @codes: (nullable): codes as a person writes them, separated by spaces, commas or semicolons
 *
 * Returns: (transfer full): the codes, one by one
 */
GStrv
bb_hazards_split (const char *codes)
{
  g_autoptr (GStrvBuilder) builder = g_strv_builder_new ();
  g_auto (GStrv) parts = g_strsplit_set (codes != NULL ? codes : "", " ,;\t\n", -1);

  for (guint i = 0; parts[i] != NULL; i++)
    if (*parts[i] != '\0')
      g_strv_builder_add (builder, parts[i]);

  return g_strv_builder_end (builder);
}
