/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-store"

#include "bb-book-private.h"

#include <glib/gi18n-lib.h>

/* Why the database refused a record, in words that a person can act on. */

static gboolean
query_key (BbBook      *self,
           const char  *sql,
           const char  *text,
           gint64       key,
           gint64      *found,
           GError     **error)
{
  g_autoptr (BbStatement) statement = bb_db_prepare (self->db, sql, error);
  BbStep step = BB_STEP_ERROR;

  *found = 0;
  if (statement == NULL)
    return FALSE;

  bb_statement_bind_integer (statement, 1, key);
  if (text != NULL)
    bb_statement_bind_text (statement, 2, text);
  step = bb_statement_step (statement, error);
  if (step == BB_STEP_ROW)
    *found = bb_statement_get_integer (statement, 0);

  return step != BB_STEP_ERROR;
}

/* Says which of a record's references leads nowhere, after the database said that one does. */
static void
name_missing_reference (BbBook         *self,
                        const BbTable  *table,
                        gconstpointer   record,
                        GError        **error)
{
  for (guint i = 0; i < table->n_fields; i++)
    {
      const BbField *field = &table->fields[i];
      g_autofree char *sql = NULL;
      gint64 key = 0;
      gint64 found = 0;

      if (field->kind != BB_KIND_REFERENCE || !bb_field_is_set (field, record))
        continue;

      key = bb_field_get_integer (field, record);
      sql = g_strdup_printf ("SELECT id FROM %s WHERE id = ?1", field->target->name);
      if (!query_key (self, sql, NULL, key, &found, NULL) || found != 0)
        continue;

      g_clear_error (error);
      _bb_book_set_missing (field->target, key, error);
      g_prefix_error (error, "%s: ", field->name);
      return;
    }
}

static void
name_taken_code (BbBook         *self,
                 const BbTable  *table,
                 gconstpointer   record,
                 GError        **error)
{
  const BbField *code = bb_table_find_field (table, "code");
  gint64 id = bb_field_get_integer (bb_table_find_field (table, "id"), record);
  g_autofree char *sql = g_strdup_printf ("SELECT id FROM %s WHERE id <> ?1 AND code = ?2", table->name);
  gint64 found = 0;

  if (code == NULL || !query_key (self, sql, bb_field_get_text (code, record), id, &found, NULL) || found == 0)
    return;

  g_clear_error (error);
  g_set_error (error, BB_STORE_ERROR, BB_STORE_ERROR_EXISTS, _("code: The code “%s” is taken. Choose another."),
               bb_field_get_text (code, record));
}

/**
 * _bb_book_name_cause:
 * @self: a book
 * @table: the record's table
 * @record: a record that the database refused
 * @error: (inout): what the database said
 *
 * Says of an error which code is taken, or which reference leads nowhere: the database only says that one does.
 */
void
_bb_book_name_cause (BbBook         *self,
                     const BbTable  *table,
                     gconstpointer   record,
                     GError        **error)
{
  if (error == NULL)
    return;

  if (g_error_matches (*error, BB_STORE_ERROR, BB_STORE_ERROR_NOT_FOUND))
    name_missing_reference (self, table, record, error);
  else if (g_error_matches (*error, BB_STORE_ERROR, BB_STORE_ERROR_EXISTS))
    name_taken_code (self, table, record, error);
}

/**
 * _bb_book_set_missing:
 * @table: a table of the book
 * @id: a key that is not in it
 * @error: return location for a #GError
 *
 * Says that there is no such record.
 */
void
_bb_book_set_missing (const BbTable  *table,
                      gint64          id,
                      GError        **error)
{
  g_autofree char *key = g_strdup_printf ("%" G_GINT64_FORMAT, id);

  /* Translators: a kind of record and its key or code, like "Blank 17". */
  g_set_error (error, BB_STORE_ERROR, BB_STORE_ERROR_NOT_FOUND, _("%s %s is not in this book."), _(table->title), key);
}
