/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-store"

#include "bb-record-sql.h"

#include <glib/gi18n-lib.h>

#include "bb-book.h"
#include "bb-error.h"
#include "bb-statements.h"

static void
bind_field (const BbField *field,
            gconstpointer  record,
            BbStatement   *statement,
            int            index)
{
  if (!bb_field_is_set (field, record))
    {
      bb_statement_bind_null (statement, index);
      return;
    }

  switch ((int) field->kind)
    {
    case BB_KIND_NUMBER:
      bb_statement_bind_number (statement, index, bb_field_get_number (field, record));
      break;
    case BB_KIND_INTEGER:
    case BB_KIND_REFERENCE:
      bb_statement_bind_integer (statement, index, bb_field_get_integer (field, record));
      break;
    case BB_KIND_FLAG:
      bb_statement_bind_integer (statement, index, bb_field_get_choice (field, record));
      break;
    default:
      bb_statement_bind_text (statement, index, bb_field_get_text (field, record));
      break;
    }
}

/**
 * bb_record_bind:
 * @table: the record's table
 * @record: a record
 * @scope: which columns
 * @statement: a statement that takes those columns of @table from ?1
 *
 * Returns: how many parameters were set
 */
guint
bb_record_bind (const BbTable *table,
                gconstpointer  record,
                BbColumns      scope,
                BbStatement   *statement)
{
  guint n = 0;

  for (guint i = 0; i < table->n_fields; i++)
    if (bb_field_is_column (&table->fields[i], scope))
      bind_field (&table->fields[i], record, statement, (int) ++n);

  return n;
}

static gboolean
read_choice (const BbField *field,
             gpointer       record,
             const char    *key,
             GError       **error)
{
  bb_field_set_text (field, record, key);
  if (bb_field_is_set (field, record))
    return TRUE;

  g_set_error (error, BB_STORE_ERROR, BB_STORE_ERROR_DAMAGED,
               _("The book is damaged: %s is “%s”, which this program does not know."), field->name, key);
  return FALSE;
}

static gboolean
read_field (const BbField *field,
            gpointer       record,
            BbStatement   *statement,
            int            column,
            GError       **error)
{
  bb_field_clear (field, record);
  if (bb_statement_is_null (statement, column))
    return TRUE;

  switch ((int) field->kind)
    {
    case BB_KIND_NUMBER:
      bb_field_set_number (field, record, bb_statement_get_number (statement, column));
      return TRUE;
    case BB_KIND_INTEGER:
    case BB_KIND_REFERENCE:
      bb_field_set_integer (field, record, bb_statement_get_integer (statement, column));
      return TRUE;
    case BB_KIND_FLAG:
      bb_field_set_choice (field, record, (int) bb_statement_get_integer (statement, column));
      return TRUE;
    case BB_KIND_CHOICE:
      return read_choice (field, record, bb_statement_get_text (statement, column), error);
    default:
      bb_field_set_text (field, record, bb_statement_get_text (statement, column));
      return TRUE;
    }
}

/**
 * bb_record_read:
 * @table: the record's table
 * @record: a record
 * @statement: a statement that has a row of the columns of @table
 * @error: return location for a #GError
 *
 * Replaces every field of @record that is a column.
 *
 * Returns: %FALSE with %BB_STORE_ERROR_DAMAGED if the row has a word that is none of its choices
 */
gboolean
bb_record_read (const BbTable *table,
                gpointer       record,
                BbStatement   *statement,
                GError       **error)
{
  int column = 0;

  for (guint i = 0; i < table->n_fields; i++)
    if (bb_field_is_column (&table->fields[i], BB_COLUMNS_ALL) &&
        !read_field (&table->fields[i], record, statement, column++, error))
      return FALSE;

  return TRUE;
}

/**
 * bb_table_has_lists:
 * @table: a table
 *
 * Returns: %TRUE if a record takes more than one row to store
 */
gboolean
bb_table_has_lists (const BbTable *table)
{
  for (guint i = 0; i < table->n_fields; i++)
    if (table->fields[i].kind == BB_KIND_LIST)
      return TRUE;

  return FALSE;
}

static gboolean
read_list (const BbTable *table,
           const BbField *list,
           gpointer       record,
           BbDb          *db,
           GError       **error)
{
  g_autofree char *sql = bb_sql_list_select (table, list);
  g_autoptr (BbStatement) statement = bb_db_prepare (db, sql, error);
  BbStep step = BB_STEP_ROW;

  if (statement == NULL)
    return FALSE;

  bb_field_clear (list, record);
  bb_statement_bind_integer (statement, 1,
                             bb_field_get_integer (bb_table_find_field (table, "id"), record));
  while ((step = bb_statement_step (statement, error)) == BB_STEP_ROW)
    if (!bb_record_read (list->item, bb_field_append_item (list, record), statement, error))
      return FALSE;

  return step == BB_STEP_DONE;
}

/**
 * bb_record_read_lists:
 * @table: the record's table
 * @record: a record whose columns were read
 * @db: the database
 * @error: return location for a #GError
 *
 * Returns: %FALSE if one of the record's lists could not be read
 */
gboolean
bb_record_read_lists (const BbTable *table,
                      gpointer       record,
                      BbDb          *db,
                      GError       **error)
{
  for (guint i = 0; i < table->n_fields; i++)
    if (table->fields[i].kind == BB_KIND_LIST && !read_list (table, &table->fields[i], record, db, error))
      return FALSE;

  return TRUE;
}

/* 1 if the stored list is the same already, 0 if not, -1 with an error. */
static int
list_is_stored (const BbTable *table,
                const BbField *list,
                gconstpointer  record,
                gint64         id,
                BbDb          *db,
                GError       **error)
{
  gpointer stored = bb_record_new (table);
  int same = -1;

  bb_field_set_integer (bb_table_find_field (table, "id"), stored, id);
  if (read_list (table, list, stored, db, error))
    same = bb_field_equal (list, stored, record) ? 1 : 0;
  bb_record_free (table, stored);

  return same;
}

static gboolean
write_list (const BbTable *table,
            const BbField *list,
            gconstpointer  record,
            gint64         id,
            BbDb          *db,
            GError       **error)
{
  const GArray *array = bb_field_get_array (list, record);
  g_autofree char *delete_sql = bb_sql_list_delete (table, list);
  g_autofree char *insert_sql = bb_sql_list_insert (table, list);
  g_autoptr (BbStatement) delete = bb_db_prepare (db, delete_sql, error);
  g_autoptr (BbStatement) insert = delete != NULL ? bb_db_prepare (db, insert_sql, error) : NULL;

  if (insert == NULL)
    return FALSE;

  bb_statement_bind_integer (delete, 1, id);
  if (!bb_statement_run (delete, error))
    return FALSE;

  for (guint i = 0; array != NULL && i < array->len; i++)
    {
      int n = (int) bb_record_bind (list->item, array->data + i * list->item->size, BB_COLUMNS_ALL, insert);

      bb_statement_bind_integer (insert, n + 1, id);
      bb_statement_bind_integer (insert, n + 2, i);
      if (!bb_statement_run (insert, error))
        return FALSE;
      bb_statement_rewind (insert);
    }

  return TRUE;
}

/**
 * bb_record_write_lists:
 * @table: the record's table
 * @record: a record
 * @id: its key
 * @db: the database, within a transaction
 * @error: return location for a #GError
 *
 * Replaces the stored lists of a record, where they differ: a list that may not be changed can be saved as it is.
 *
 * Returns: %FALSE if one could not be written
 */
gboolean
bb_record_write_lists (const BbTable *table,
                       gconstpointer  record,
                       gint64         id,
                       BbDb          *db,
                       GError       **error)
{
  for (guint i = 0; i < table->n_fields; i++)
    {
      const BbField *list = &table->fields[i];
      int same = list->kind == BB_KIND_LIST ? list_is_stored (table, list, record, id, db, error) : 1;

      if (same < 0 || (same == 0 && !write_list (table, list, record, id, db, error)))
        return FALSE;
    }

  return TRUE;
}

static gboolean
check_kind (const BbField *field,
            gint64         id,
            BbDb          *db,
            GError       **error)
{
  const BbField *kind = bb_table_find_field (field->target, "kind");
  g_autofree char *sql = g_strdup_printf ("SELECT kind FROM %s WHERE id = ?1", field->target->name);
  g_autoptr (BbStatement) statement = bb_db_prepare (db, sql, error);
  const char *wanted = bb_choices_get_key (kind->choices, (int) field->among.value);
  const char *found = NULL;

  if (statement == NULL)
    return FALSE;

  bb_statement_bind_integer (statement, 1, id);
  switch (bb_statement_step (statement, error))
    {
    case BB_STEP_ROW:
      found = bb_statement_get_text (statement, 0);
      if (g_strcmp0 (found, wanted) == 0)
        return TRUE;
      /* Translators: the name of a field, then two kinds of a record, like "Cover sheet" and "Pretreat". */
      g_set_error (error, BB_MODEL_ERROR, BB_MODEL_ERROR_VALUE,
                   _("%s: The record is of the kind '%s', and has to be '%s'."), field->name,
                   bb_choices_get_title (kind->choices, bb_choices_find (kind->choices, found)),
                   bb_choices_get_title (kind->choices, (int) field->among.value));
      return FALSE;
    case BB_STEP_DONE:
      /* That there is no such record, the database says. */
      return TRUE;
    case BB_STEP_ERROR:
    default:
      return FALSE;
    }
}

/**
 * bb_record_check_kinds:
 * @table: the record's table
 * @record: a record
 * @db: the database
 * @error: return location for a #GError
 *
 * Some references are to one kind of record only, as a revision's pretreat is to a supply that is one.
 *
 * Returns: %FALSE with %BB_MODEL_ERROR_VALUE where the record refers to one of another kind, or another error
 */
gboolean
bb_record_check_kinds (const BbTable  *table,
                       gconstpointer   record,
                       BbDb           *db,
                       GError        **error)
{
  for (guint i = 0; i < table->n_fields; i++)
    {
      const BbField *field = &table->fields[i];

      if (field->among.set && bb_field_is_set (field, record) &&
          !check_kind (field, bb_field_get_integer (field, record), db, error))
        return FALSE;
    }

  return TRUE;
}
