/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-exchange"

#include "bb-json.h"

#include <string.h>

#include "bb-json-scan.h"

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
