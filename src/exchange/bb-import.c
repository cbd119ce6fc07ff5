/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-exchange"

#include "bb-exchange.h"

#include <glib/gi18n-lib.h>

#include "bb-error.h"
#include "bb-exchange-watch.h"
#include "bb-intake-private.h"
#include "bb-json.h"

/* A book file whose format was checked. */
typedef struct {
  JsonObject *file;
  guint done;
  guint total;
} File;

static gboolean
take_node (BbIntake       *intake,
           const BbTable  *table,
           JsonNode       *node,
           GError        **error)
{
  const BbJsonReading reading = {
    .resolve = bb_codes_resolve, .data = intake->codes, .null_is_none = TRUE, .exchanged = TRUE,
  };
  gpointer record = bb_record_new (table);
  gboolean done = bb_json_read_record (table, node, &reading, record, error) &&
                  _bb_intake_take (intake, table, record, error);

  bb_record_free (table, record);

  return done;
}

/* Values are named by their path; what the book itself complains about is a sentence. */
static void
name_item (const BbTable *table,
           guint          index,
           GError        *reason,
           GError       **error)
{
  const char *joint = reason->domain == BB_MODEL_ERROR || reason->domain == BB_EXCHANGE_ERROR ? "." : ": ";

  g_propagate_prefixed_error (error, reason, "%s[%u]%s", table->name, index, joint);
}

static gboolean
take_list (File           *self,
           BbIntake       *intake,
           const BbTable  *table,
           JsonArray      *list,
           GError        **error)
{
  for (guint i = 0; i < json_array_get_length (list); i++)
    {
      JsonNode *node = json_array_get_element (list, i);
      GError *reason = NULL;

      if (!_bb_exchange_watch (intake->watch, self->done, self->total, error))
        return FALSE;
      if (!JSON_NODE_HOLDS_OBJECT (node))
        {
          g_set_error (error, BB_MODEL_ERROR, BB_MODEL_ERROR_VALUE, "%s[%u]: is not an object", table->name, i);
          return FALSE;
        }
      if (!take_node (intake, table, node, &reason))
        {
          name_item (table, i, reason, error);
          return FALSE;
        }
      self->done++;
    }

  return TRUE;
}

static gboolean
take_file (BbIntake  *intake,
           gpointer   data,
           GError   **error)
{
  File *self = data;
  guint n_tables = 0;
  const BbTable * const *tables = bb_book_tables (&n_tables);

  intake->total = self->total;
  for (guint i = 0; i < n_tables; i++)
    if (bb_book_table_is_exchanged (tables[i]) && json_object_has_member (self->file, tables[i]->name) &&
        !take_list (self, intake, tables[i], json_object_get_array_member (self->file, tables[i]->name), error))
      return FALSE;

  return TRUE;
}

static gboolean
refuse_format (GError    **error,
               const char *message)
{
  g_set_error_literal (error, BB_EXCHANGE_ERROR, BB_EXCHANGE_ERROR_FORMAT, message);
  return FALSE;
}

static gboolean
check_format (JsonNode *node,
              GError  **error)
{
  JsonObject *file = JSON_NODE_HOLDS_OBJECT (node) ? json_node_get_object (node) : NULL;
  JsonNode *format = file != NULL ? json_object_get_member (file, "format") : NULL;
  JsonNode *version = file != NULL ? json_object_get_member (file, "version") : NULL;

  if (format == NULL || !JSON_NODE_HOLDS_VALUE (format) ||
      g_strcmp0 (json_node_get_string (format), BB_EXCHANGE_FORMAT) != 0)
    return refuse_format (error, _("This is no book written by Blankbook: its format is not \"blankbook-book\"."));
  if (version == NULL || !JSON_NODE_HOLDS_VALUE (version) || json_node_get_value_type (version) != G_TYPE_INT64)
    return refuse_format (error, _("This is no book written by Blankbook: it does not tell its version."));
  if (json_node_get_int (version) != BB_EXCHANGE_VERSION)
    return refuse_format (error, _("This file was written by a newer Blankbook. Bring this one up to date."));

  return TRUE;
}

static gboolean
check_lists (File    *self,
             GError **error)
{
  JsonObjectIter iter;
  const char *key = NULL;
  JsonNode *node = NULL;

  json_object_iter_init_ordered (&iter, self->file);
  while (json_object_iter_next_ordered (&iter, &key, &node))
    {
      const BbTable *table = bb_book_find_table (key);
      g_autofree char *quote = bb_message_quote (key, -1);

      if (g_str_equal (key, "format") || g_str_equal (key, "version") || g_str_equal (key, "about"))
        continue;
      if (table == NULL || !bb_book_table_is_exchanged (table))
        {
          g_set_error (error, BB_MODEL_ERROR, BB_MODEL_ERROR_KEY, "%s: unknown key, a book has no such list", quote);
          return FALSE;
        }
      if (!JSON_NODE_HOLDS_ARRAY (node))
        {
          g_set_error (error, BB_MODEL_ERROR, BB_MODEL_ERROR_VALUE, "%s: is not a list", quote);
          return FALSE;
        }
      self->total += json_array_get_length (json_node_get_array (node));
    }

  return TRUE;
}

/**
 * bb_exchange_import:
 * @book: a book
 * @text: a book file; see the top of bb-exchange.h
 * @length: its length in bytes, at most %BB_EXCHANGE_BYTES
 * @watch: (nullable): how to follow and stop the work
 * @imported: (out) (optional): what was done
 * @error: return location for a #GError
 *
 * Takes the records of a file into a book, all of them or, after any error, none. What the book holds already, the
 * same in every field, is passed over; another record of the same code is refused. That a revision is proven which the
 * book has on trial is passed over too: the book knows better. A revision that comes without its
 * state becomes a draft. The message names table, item and key, like `blank[3].mass_g_per_m2: …`.
 *
 * Returns: %FALSE with %BB_EXCHANGE_ERROR_UNREADABLE, %BB_EXCHANGE_ERROR_TOO_LARGE, %BB_EXCHANGE_ERROR_FORMAT,
 *   %BB_EXCHANGE_ERROR_CONFLICT, an error of the domains %BB_MODEL_ERROR or %BB_STORE_ERROR, or %G_IO_ERROR_CANCELLED
 */
gboolean
bb_exchange_import (BbBook                *book,
                    const char            *text,
                    gsize                  length,
                    const BbExchangeWatch *watch,
                    BbImported            *imported,
                    GError               **error)
{
  g_autoptr (JsonNode) node = NULL;
  File self = { .file = NULL };

  g_return_val_if_fail (BB_IS_BOOK (book) && text != NULL, FALSE);

  node = bb_json_parse (text, length, error);
  if (node == NULL || !check_format (node, error))
    return FALSE;
  self.file = json_node_get_object (node);

  return check_lists (&self, error) && _bb_intake_run (book, take_file, &self, watch, imported, error);
}
