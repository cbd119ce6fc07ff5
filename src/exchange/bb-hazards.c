/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bb-hazards.h"

#include <glib/gi18n-lib.h>
#include <json-glib/json-glib.h>

#include "bb-hazard-code.h"

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

/* Precautions fill whole cards; what the stuff does is what has to be known while it is poured. */
static gboolean
is_hazard (const char *code)
{
  return *code != 'P';
}

/**
 * bb_hazards_describe:
 * @self: the statements
 * @codes: (nullable): codes as a person writes them
 * @languages: the languages that a person reads, best first, ended by %NULL
 *
 * Returns: (transfer full) (nullable): the hazard statements among them, a line each, to stand beside a step;
 *   %NULL where there is none
 */
char *
bb_hazards_describe (BbHazards          *self,
                     const char         *codes,
                     const char * const *languages)
{
  g_auto (GStrv) list = bb_hazard_codes_split (codes);
  g_autoptr (GString) text = g_string_new (NULL);

  for (guint i = 0; list[i] != NULL; i++)
    {
      const char *wording = NULL;

      if (!is_hazard (list[i]))
        continue;
      wording = bb_hazards_find (self, list[i], languages);
      g_string_append_printf (text, "%s%s  %s", text->len > 0 ? "\n" : "", list[i],
                              wording != NULL ? wording : _("Not in our list: read the safety data sheet."));
    }

  return text->len > 0 ? g_strdup (text->str) : NULL;
}
