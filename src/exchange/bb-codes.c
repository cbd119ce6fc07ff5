/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bb-codes.h"

#include <glib/gi18n-lib.h>

#include "bb-error.h"
#include "bb-exchange-error.h"

struct _BbCodes {
  BbBook *book;
  GHashTable *codes;
  GHashTable *ids;
};

/* Both tables are of all kinds of records, so that a key carries the name of its table. */
static char *
id_key (const BbTable *table,
        gint64         id)
{
  return g_strdup_printf ("%s/%" G_GINT64_FORMAT, table->name, id);
}

static char *
code_key (const BbTable *table,
          const char    *code)
{
  return g_strdup_printf ("%s/%s", table->name, code);
}

/**
 * bb_codes_new:
 * @book: (transfer none): a book, which has to outlive the result
 *
 * Returns: (transfer full): a translator for the records of @book
 */
BbCodes *
bb_codes_new (BbBook *book)
{
  BbCodes *self = g_new0 (BbCodes, 1);

  self->book = book;
  self->codes = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, g_free);
  self->ids = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, g_free);

  return self;
}

/**
 * bb_codes_free:
 * @self: (transfer full): a translator
 */
void
bb_codes_free (BbCodes *self)
{
  g_hash_table_unref (self->codes);
  g_hash_table_unref (self->ids);
  g_free (self);
}

/**
 * bb_codes_add:
 * @self: a translator
 * @table: the record's table
 * @record: a record with its key; nothing happens if its table has no codes
 *
 * Remembers a record, so that it need not be looked up.
 */
void
bb_codes_add (BbCodes       *self,
              const BbTable *table,
              gconstpointer  record)
{
  const BbField *code_field = bb_table_find_field (table, "code");
  gint64 id = bb_field_get_integer (bb_table_find_field (table, "id"), record);
  const char *code = code_field != NULL ? bb_field_get_text (code_field, record) : NULL;

  if (code == NULL)
    return;
  g_hash_table_insert (self->codes, id_key (table, id), g_strdup (code));
  g_hash_table_insert (self->ids, code_key (table, code), g_memdup2 (&id, sizeof id));
}

static gboolean
remember (BbCodes       *self,
          const BbTable *table,
          gpointer       record)
{
  if (record == NULL)
    return FALSE;
  bb_codes_add (self, table, record);
  bb_record_free (table, record);

  return TRUE;
}

/**
 * bb_codes_name:
 * @field: a field that refers to another record
 * @id: the key of that record
 * @codes: (type BbCodes): a translator
 * @error: return location for a #GError
 *
 * A #BbJsonName.
 *
 * Returns: (transfer full) (nullable): the record's code, or %NULL with an error as bb_book_load()
 */
char *
bb_codes_name (const BbField *field,
               gint64         id,
               gpointer       codes,
               GError       **error)
{
  BbCodes *self = codes;
  g_autofree char *key = id_key (field->target, id);

  if (!g_hash_table_contains (self->codes, key) &&
      !remember (self, field->target, bb_book_load (self->book, field->target, id, error)))
    return NULL;

  return g_strdup (g_hash_table_lookup (self->codes, key));
}

/**
 * bb_codes_resolve:
 * @field: a field that refers to another record
 * @code: the code of that record
 * @id: (out): where to put its key
 * @codes: (type BbCodes): a translator
 * @error: return location for a #GError
 *
 * A #BbJsonResolve.
 *
 * Returns: %FALSE with %BB_MODEL_ERROR_VALUE if there is no such record, or another error
 */
gboolean
bb_codes_resolve (const BbField *field,
                  const char    *code,
                  gint64        *id,
                  gpointer       codes,
                  GError       **error)
{
  BbCodes *self = codes;
  g_autofree char *key = code_key (field->target, code);
  g_autoptr (GError) reason = NULL;

  if (!g_hash_table_contains (self->ids, key) &&
      !remember (self, field->target, bb_book_load_by_code (self->book, field->target, code, &reason)))
    {
      g_autofree char *quote = bb_message_quote (code, -1);

      if (g_error_matches (reason, BB_STORE_ERROR, BB_STORE_ERROR_NOT_FOUND))
        /* Translators: the name of a kind of record, like "Blank", and a code that no such record has. */
        g_set_error (error, BB_MODEL_ERROR, BB_MODEL_ERROR_VALUE, _("There is no %s with the code '%s'."),
                     _(field->target->title), quote);
      else
        g_propagate_error (error, g_steal_pointer (&reason));
      return FALSE;
    }
  *id = *(gint64 *) g_hash_table_lookup (self->ids, key);

  return TRUE;
}
