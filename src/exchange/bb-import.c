/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-exchange"

#include "bb-exchange.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#include "bb-codes.h"
#include "bb-csv.h"
#include "bb-error.h"
#include "bb-exchange-watch.h"
#include "bb-json.h"
#include "bb-known.h"

typedef struct {
  BbBook *book;
  BbCodes *codes;
  GHashTable *stateless;
  JsonObject *file;
  const BbTable *table;
  const char *csv;
  gsize csv_length;
  const BbExchangeWatch *watch;
  guint done;
  guint total;
  BbImported imported;
} Import;

/* A part that is counted, like a recipe's revision, is known by the whole's code and its number: they must agree. */
static gboolean
check_part_code (Import         *self,
                 const BbTable  *table,
                 gconstpointer   record,
                 GError        **error)
{
  const BbField *owner = bb_table_find_owner (table);
  const BbField *code = bb_table_find_field (table, "code");
  const BbField *number = bb_table_find_field (table, "number");
  g_autofree char *whole = NULL;
  g_autofree char *wanted = NULL;
  g_autofree char *quote = NULL;

  if (owner == NULL || number == NULL || code == NULL || !bb_field_is_set (owner, record) ||
      !bb_field_is_set (number, record) || !bb_field_is_set (code, record))
    return TRUE;

  whole = bb_codes_name (owner, bb_field_get_integer (owner, record), self->codes, error);
  if (whole == NULL)
    return FALSE;
  wanted = bb_part_make_code (whole, bb_field_get_integer (number, record));
  if (g_str_equal (bb_field_get_text (code, record), wanted))
    return TRUE;

  quote = bb_message_quote (bb_field_get_text (code, record), -1);
  g_set_error (error, BB_MODEL_ERROR, BB_MODEL_ERROR_VALUE, "code: %s does not fit %s and number, it has to be %s",
               quote, owner->name, wanted);
  return FALSE;
}

static void
note_state (Import        *self,
            const BbTable *table,
            gconstpointer  record)
{
  if (table == &bb_revision_table)
    {
      const BbRevision *revision = record;

      g_hash_table_insert (self->stateless, g_memdup2 (&revision->id, sizeof revision->id),
                           g_strdup (revision->made_at));
    }
  else if (table == &bb_standing_table)
    g_hash_table_remove (self->stateless, &((const BbStanding *) record)->revision);
}

/* A revision that the book has on trial is not proven by what a file says of it: it was, and is so no longer, or came
 * in without what a proof needs. */
static gboolean
is_proof_of_old (const BbTable *table,
                 gconstpointer  known,
                 gconstpointer  record)
{
  return table == &bb_standing_table && ((const BbStanding *) known)->state == BB_STATE_ON_TRIAL &&
         ((const BbStanding *) record)->state == BB_STATE_PROVEN;
}

/* Takes one record in: adds it, or finds that the book has the same. */
static gboolean
take_record (Import        *self,
             const BbTable *table,
             gpointer       record,
             GError       **error)
{
  gpointer known = NULL;
  gboolean done = FALSE;

  if (!bb_known_find (self->book, table, record, &known, error))
    return FALSE;

  if (known != NULL)
    {
      done = is_proof_of_old (table, known, record) || bb_known_check_same (table, known, record, error);
      bb_record_free (table, known);
      self->imported.n_same += done ? 1 : 0;
      return done;
    }

  if (!check_part_code (self, table, record, error) || !bb_book_save (self->book, table, record, error))
    return FALSE;
  bb_codes_add (self->codes, table, record);
  note_state (self, table, record);
  self->imported.n_added++;

  return TRUE;
}

static gboolean
take_node (Import        *self,
           const BbTable *table,
           JsonNode      *node,
           GError       **error)
{
  const BbJsonReading reading = {
    .resolve = bb_codes_resolve, .data = self->codes, .null_is_none = TRUE, .exchanged = TRUE,
  };
  gpointer record = bb_record_new (table);
  gboolean done = bb_json_read_record (table, node, &reading, record, error) &&
                  take_record (self, table, record, error);

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
take_list (Import        *self,
           const BbTable *table,
           JsonArray     *list,
           GError       **error)
{
  for (guint i = 0; i < json_array_get_length (list); i++)
    {
      JsonNode *node = json_array_get_element (list, i);
      GError *reason = NULL;

      if (!_bb_exchange_watch (self->watch, self->done, self->total, error))
        return FALSE;
      if (!JSON_NODE_HOLDS_OBJECT (node))
        {
          g_set_error (error, BB_MODEL_ERROR, BB_MODEL_ERROR_VALUE, "%s[%u]: is not an object", table->name, i);
          return FALSE;
        }
      if (!take_node (self, table, node, &reason))
        {
          name_item (table, i, reason, error);
          return FALSE;
        }
      self->done++;
    }

  return TRUE;
}

/* A revision that came without its state is a draft. */
static gboolean
add_drafts (Import  *self,
            GError **error)
{
  GHashTableIter iter;
  gpointer id = NULL;
  gpointer made_at = NULL;

  g_hash_table_iter_init (&iter, self->stateless);
  while (g_hash_table_iter_next (&iter, &id, &made_at))
    {
      g_autoptr (BbStanding) standing = bb_standing_new ();

      standing->revision = *(gint64 *) id;
      standing->since = g_strdup (made_at);
      if (!bb_book_save (self->book, &bb_standing_table, standing, error))
        return FALSE;
    }

  return TRUE;
}

static gboolean
import_file (BbBook   *book,
             gpointer  data,
             GError  **error)
{
  Import *self = data;
  guint n_tables = 0;
  const BbTable * const *tables = bb_book_tables (&n_tables);

  (void) book;
  for (guint i = 0; i < n_tables; i++)
    if (bb_book_table_is_exchanged (tables[i]) && json_object_has_member (self->file, tables[i]->name) &&
        !take_list (self, tables[i], json_object_get_array_member (self->file, tables[i]->name), error))
      return FALSE;

  return add_drafts (self, error) && _bb_exchange_watch (self->watch, self->total, self->total, error);
}

static gboolean
resolve_row (const BbField *field,
             const char    *code,
             gint64        *id,
             gpointer       data,
             GError       **error)
{
  const Import *self = data;

  return bb_codes_resolve (field, code, id, self->codes, error);
}

static gboolean
take_row (gpointer   record,
          guint      done,
          guint      total,
          gpointer   data,
          GError   **error)
{
  Import *self = data;
  gboolean taken = _bb_exchange_watch (self->watch, done, total, error) &&
                   take_record (self, self->table, record, error);

  bb_record_free (self->table, record);
  self->total = total;

  return taken;
}

static gboolean
import_rows (BbBook   *book,
             gpointer  data,
             GError  **error)
{
  Import *self = data;

  (void) book;

  return bb_csv_read (self->table, self->csv, self->csv_length, resolve_row, take_row, self, error) &&
         add_drafts (self, error) && _bb_exchange_watch (self->watch, self->total, self->total, error);
}

static gboolean
run_import (Import     *self,
            BbBookFunc  func,
            BbImported *imported,
            GError    **error)
{
  g_autoptr (BbCodes) codes = bb_codes_new (self->book);
  g_autoptr (GHashTable) stateless = g_hash_table_new_full (g_int64_hash, g_int64_equal, g_free, g_free);
  gboolean done = FALSE;

  self->codes = codes;
  self->stateless = stateless;
  bb_book_set_importing (self->book, TRUE);
  done = bb_book_in_transaction (self->book, func, self, error);
  bb_book_set_importing (self->book, FALSE);
  if (done && imported != NULL)
    *imported = self->imported;

  return done;
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
check_lists (Import  *self,
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
  Import self = { .book = book, .watch = watch };

  g_return_val_if_fail (BB_IS_BOOK (book) && text != NULL, FALSE);

  node = bb_json_parse (text, length, error);
  if (node == NULL || !check_format (node, error))
    return FALSE;
  self.file = json_node_get_object (node);

  return check_lists (&self, error) && run_import (&self, import_file, imported, error);
}

/**
 * bb_exchange_import_csv:
 * @book: a book
 * @table: the table of the records
 * @text: CSV as bb_csv_write() makes it
 * @length: its length in bytes, at most %BB_EXCHANGE_BYTES
 * @watch: (nullable): how to follow and stop the work
 * @imported: (out) (optional): what was done
 * @error: return location for a #GError
 *
 * Like bb_exchange_import(), for the records of one table. The message names row and column, like `row 4: name: …`.
 *
 * Returns: %FALSE with an error as bb_exchange_import()
 */
gboolean
bb_exchange_import_csv (BbBook                *book,
                        const BbTable         *table,
                        const char            *text,
                        gsize                  length,
                        const BbExchangeWatch *watch,
                        BbImported            *imported,
                        GError               **error)
{
  Import self = { .book = book, .table = table, .csv = text, .csv_length = length, .watch = watch };

  g_return_val_if_fail (BB_IS_BOOK (book) && text != NULL, FALSE);
  g_return_val_if_fail (bb_book_table_is_exchanged (table), FALSE);

  return run_import (&self, import_rows, imported, error);
}
