/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-exchange"

#include "bb-known.h"

#include <glib/gi18n-lib.h>

#include "bb-exchange-error.h"
#include "bb-json.h"

/* By what a record is known that has no code: what it belongs to, and where there are several of these, further
 * fields; of what belongs to nothing, there is one in a book. */
typedef struct {
  const BbTable *table;
  const char *owner;
  const char *which[2];
} Identity;

static const Identity identities[] = {
  { &bb_shop_table, NULL, { NULL } },
  { &bb_standing_table, "revision", { NULL } },
  { &bb_signature_table, "revision", { "signed_at" } },
  { &bb_reading_table, "wash_test", { "cycles" } },
  { &bb_scan_table, "wash_test", { "subject", "cycles" } },
  { &bb_annotation_table, "run", { "number" } },
  { &bb_lot_entry_table, "lot", { "number" } },
};

static const Identity *
find_identity (const BbTable *table)
{
  for (guint i = 0; i < G_N_ELEMENTS (identities); i++)
    if (identities[i].table == table)
      return &identities[i];

  return NULL;
}

static gboolean
find_by_code (BbBook        *book,
              const BbTable *table,
              const char    *code,
              gpointer      *known,
              GError       **error)
{
  g_autoptr (GError) reason = NULL;

  *known = bb_book_load_by_code (book, table, code, &reason);
  if (*known != NULL || g_error_matches (reason, BB_STORE_ERROR, BB_STORE_ERROR_NOT_FOUND))
    return TRUE;

  g_propagate_error (error, g_steal_pointer (&reason));
  return FALSE;
}

static GPtrArray *
load_siblings (BbBook         *book,
               const Identity *identity,
               gconstpointer   record,
               GError        **error)
{
  const BbField *owner = NULL;

  if (identity->owner == NULL)
    return bb_book_load_all (book, identity->table, TRUE, error);
  owner = bb_table_find_field (identity->table, identity->owner);

  return bb_book_load_referring (book, identity->table, owner->target, bb_field_get_integer (owner, record), error);
}

static gboolean
is_same (const Identity *identity,
         gconstpointer   known,
         gconstpointer   record)
{
  for (guint i = 0; i < G_N_ELEMENTS (identity->which) && identity->which[i] != NULL; i++)
    if (!bb_field_equal (bb_table_find_field (identity->table, identity->which[i]), known, record))
      return FALSE;

  return TRUE;
}

static gboolean
find_by_owner (BbBook         *book,
               const Identity *identity,
               gconstpointer   record,
               gpointer       *known,
               GError        **error)
{
  g_autoptr (GPtrArray) siblings = load_siblings (book, identity, record, error);

  for (guint i = 0; siblings != NULL && i < siblings->len; i++)
    if (is_same (identity, siblings->pdata[i], record))
      {
        *known = bb_record_copy (identity->table, siblings->pdata[i]);
        break;
      }

  return siblings != NULL;
}

/**
 * bb_known_find:
 * @book: a book
 * @table: the record's table
 * @record: a record from a file
 * @known: (out) (nullable): where to put the record of the book that is known by the same code, to be freed by
 *   bb_record_free(), or %NULL if there is none
 * @error: return location for a #GError
 *
 * Finds what the book already holds in place of a record. A record without a code is known by what it belongs to: a
 * standing by its revision, a signature by its revision and moment, a reading and a scan by their specimen and
 * cycles, a remark and an entry of a lot by their numbers.
 *
 * Returns: %FALSE with an error of the book
 */
gboolean
bb_known_find (BbBook        *book,
               const BbTable *table,
               gconstpointer  record,
               gpointer      *known,
               GError       **error)
{
  const BbField *code = bb_table_find_field (table, "code");
  const Identity *identity = find_identity (table);

  *known = NULL;
  if (code != NULL)
    return !bb_field_is_set (code, record) ||
           find_by_code (book, table, bb_field_get_text (code, record), known, error);

  g_return_val_if_fail (identity != NULL, FALSE);

  return find_by_owner (book, identity, record, known, error);
}

/**
 * bb_known_check_same:
 * @table: the records' table
 * @known: a record of the book
 * @record: a record from a file
 * @error: return location for a #GError
 *
 * Returns: %TRUE if both hold the same in every field that is exchanged; else %FALSE with
 *   %BB_EXCHANGE_ERROR_CONFLICT, and the message names the first key that differs
 */
gboolean
bb_known_check_same (const BbTable *table,
                     gconstpointer  known,
                     gconstpointer  record,
                     GError       **error)
{
  const BbField *code = bb_table_find_field (table, "code");

  for (guint i = 0; i < table->n_fields; i++)
    {
      const BbField *field = &table->fields[i];

      if (!bb_json_is_exchanged (field) || bb_field_equal (field, known, record))
        continue;
      if (code != NULL)
        g_set_error (error, BB_EXCHANGE_ERROR, BB_EXCHANGE_ERROR_CONFLICT,
                     _("%s: the book already holds %s with another value."), field->name,
                     bb_field_get_text (code, known));
      else
        g_set_error (error, BB_EXCHANGE_ERROR, BB_EXCHANGE_ERROR_CONFLICT,
                     _("%s: the book already holds this record with another value."), field->name);
      return FALSE;
    }

  return TRUE;
}
