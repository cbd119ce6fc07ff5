/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-store"

#include "bb-book-private.h"

#include <glib/gi18n-lib.h>

#include "bb-canonical.h"

/*
 * Records that are a part of another and are counted within it: the revisions of a recipe, the lines of a job, the
 * runs of a line. Their code is the whole's code and their number.
 */

static char *
dup_owner_code (BbBook         *self,
                const BbField  *owner,
                gint64          id,
                GError        **error)
{
  gpointer record = bb_book_load (self, owner->target, id, error);
  char *code = NULL;

  if (record == NULL)
    {
      g_prefix_error (error, "%s: ", owner->name);
      return NULL;
    }
  code = g_strdup (bb_field_get_text (bb_table_find_field (owner->target, "code"), record));
  bb_record_free (owner->target, record);

  return code;
}

/**
 * _bb_book_complete:
 * @self: a book
 * @table: the record's table
 * @record: a record
 * @error: return location for a #GError
 *
 * Gives a record what follows from the rest: a part its code, if it has none, and a record with a seal its seal.
 *
 * Returns: %FALSE with %BB_STORE_ERROR_NOT_FOUND where there is no such whole, or another error
 */
gboolean
_bb_book_complete (BbBook         *self,
                   const BbTable  *table,
                   gpointer        record,
                   GError        **error)
{
  const BbField *owner = bb_table_find_owner (table);
  const BbField *code = bb_table_find_field (table, "code");
  const BbField *number = bb_table_find_field (table, "number");
  const BbField *seal = bb_table_find_field (table, "seal");

  if (owner != NULL && code != NULL && number != NULL && !bb_field_is_set (code, record))
    {
      g_autofree char *whole = dup_owner_code (self, owner, bb_field_get_integer (owner, record), error);
      g_autofree char *text = NULL;

      if (whole == NULL)
        return FALSE;
      text = bb_part_make_code (whole, bb_field_get_integer (number, record));
      bb_field_set_text (code, record, text);
    }

  if (seal != NULL)
    {
      g_autofree char *text = NULL;

      bb_field_clear (seal, record);
      text = bb_record_seal (table, record);
      bb_field_set_text (seal, record, text);
    }

  return TRUE;
}

static const BbTable *
find_counted_parts (const BbTable *table)
{
  if (table == &bb_recipe_table)
    return &bb_revision_table;

  return table == &bb_job_table ? &bb_job_line_table : NULL;
}

/**
 * _bb_book_rename_parts:
 * @self: a book, within a transaction
 * @table: the record's table
 * @record: a record that was just changed
 * @error: return location for a #GError
 *
 * Gives a recipe's drafts, or a job's lines, its code, where that has changed. A part in use has forbidden the change
 * before.
 *
 * Returns: %FALSE with an error
 */
gboolean
_bb_book_rename_parts (BbBook         *self,
                       const BbTable  *table,
                       gconstpointer   record,
                       GError        **error)
{
  const BbTable *parts = find_counted_parts (table);
  g_autoptr (GPtrArray) records = NULL;

  if (parts == NULL)
    return TRUE;

  records = bb_book_load_referring (self, parts, table,
                                    bb_field_get_integer (bb_table_find_field (table, "id"), record), error);
  for (guint i = 0; records != NULL && i < records->len; i++)
    {
      gpointer part = g_ptr_array_index (records, i);
      const BbField *code = bb_table_find_field (parts, "code");
      const char *whole = bb_field_get_text (bb_table_find_field (table, "code"), record);
      g_autofree char *text = bb_part_make_code (whole, bb_field_get_integer (bb_table_find_field (parts, "number"),
                                                                              part));

      if (g_str_equal (text, bb_field_get_text (code, part)))
        continue;
      bb_field_clear (code, part);
      if (!_bb_book_save_within (self, parts, part, error))
        return FALSE;
    }

  return records != NULL;
}

/**
 * _bb_book_find_next_number:
 * @self: a book
 * @table: a table of parts that are counted
 * @owner: the key of the whole
 * @number: (out): the number of the next part
 * @error: return location for a #GError
 *
 * Returns: %FALSE with an error
 */
gboolean
_bb_book_find_next_number (BbBook         *self,
                           const BbTable  *table,
                           gint64          owner,
                           gint64         *number,
                           GError        **error)
{
  g_autofree char *sql = g_strdup_printf ("SELECT COALESCE (MAX (number), 0) + 1 FROM %s WHERE %s = ?1", table->name,
                                          bb_table_find_owner (table)->name);
  g_autoptr (BbStatement) statement = bb_db_prepare (self->db, sql, error);

  if (statement == NULL)
    return FALSE;

  bb_statement_bind_integer (statement, 1, owner);
  if (bb_statement_step (statement, error) != BB_STEP_ROW)
    return FALSE;
  *number = bb_statement_get_integer (statement, 0);

  return TRUE;
}

/**
 * _bb_record_copy_derived:
 * @table: the records' table
 * @from: a record
 * @to: another
 *
 * Copies what the program sets and no person enters.
 */
void
_bb_record_copy_derived (const BbTable *table,
                         gconstpointer  from,
                         gpointer       to)
{
  for (guint i = 0; i < table->n_fields; i++)
    if (table->fields[i].derived)
      bb_field_copy (&table->fields[i], from, to);
}

/**
 * _bb_book_keep_derived:
 * @self: a book
 * @table: the record's table
 * @record: a record with a key, as a form left it
 * @error: return location for a #GError
 *
 * Makes what a person does not enter what is stored, whatever the record in hand says.
 *
 * Returns: %FALSE with an error
 */
gboolean
_bb_book_keep_derived (BbBook         *self,
                       const BbTable  *table,
                       gpointer        record,
                       GError        **error)
{
  gpointer stored = bb_book_load (self, table, bb_field_get_integer (bb_table_find_field (table, "id"), record), error);

  if (stored == NULL)
    return FALSE;
  _bb_record_copy_derived (table, stored, record);
  bb_record_free (table, stored);

  return TRUE;
}
