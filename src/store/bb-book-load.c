/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-store"

#include "bb-book-private.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#include "bb-canonical.h"
#include "bb-record-sql.h"

/**
 * _bb_record_check_seal:
 * @table: the record's table
 * @record: a record as it was read
 * @error: return location for a #GError
 *
 * Returns: %FALSE with %BB_STORE_ERROR_DAMAGED if the record has a seal, and that does not fit
 */
gboolean
_bb_record_check_seal (const BbTable  *table,
                       gconstpointer   record,
                       GError        **error)
{
  const BbField *field = bb_table_find_field (table, "seal");
  g_autofree char *seal = NULL;

  if (field == NULL)
    return TRUE;

  seal = bb_record_seal (table, record);
  if (g_strcmp0 (seal, bb_field_get_text (field, record)) == 0)
    return TRUE;

  g_set_error (error, BB_STORE_ERROR, BB_STORE_ERROR_DAMAGED,
               _("Revision %s is not as it was written: its seal does not fit. Go back to a copy of the book."),
               bb_field_get_text (bb_table_find_field (table, "code"), record));
  return FALSE;
}

/* Reads the record of the row that a statement has, lists and seal included. */
static gpointer
read_record (BbBook         *self,
             const BbTable  *table,
             BbStatement    *statement,
             GError        **error)
{
  gpointer record = bb_record_new (table);

  if (bb_record_read (table, record, statement, error) &&
      bb_record_read_lists (table, record, self->db, error) &&
      _bb_record_check_seal (table, record, error))
    return record;

  bb_record_free (table, record);

  return NULL;
}

/* A record and its lists are rows of several tables, which have to be of the same moment. */
static gboolean
begin_reading (BbBook         *self,
               const BbTable  *table,
               GError        **error)
{
  return !bb_table_has_lists (table) || bb_db_begin (self->db, BB_ACCESS_READ, error);
}

static gpointer
end_reading (BbBook         *self,
             const BbTable  *table,
             gpointer        record,
             GError        **error)
{
  if (!bb_table_has_lists (table))
    return record;
  if (bb_db_commit (self->db, record != NULL ? error : NULL))
    return record;

  bb_record_free (table, record);

  return NULL;
}

/* The first record, or nothing with *missing set where there is none. */
static gpointer
load_first (BbBook         *self,
            const BbTable  *table,
            const char     *rest,
            gint64          key,
            const char     *text,
            gboolean       *missing,
            GError        **error)
{
  g_autofree char *sql = bb_sql_select (table, rest);
  g_autoptr (BbStatement) statement = bb_db_prepare (self->db, sql, error);
  BbStep step = BB_STEP_ERROR;

  *missing = FALSE;
  if (statement == NULL)
    return NULL;

  if (text != NULL)
    bb_statement_bind_text (statement, 1, text);
  else
    bb_statement_bind_integer (statement, 1, key);
  step = bb_statement_step (statement, error);
  *missing = step == BB_STEP_DONE;

  return step == BB_STEP_ROW ? read_record (self, table, statement, error) : NULL;
}

/**
 * _bb_book_load_where:
 * @self: a book
 * @table: a table of the book
 * @rest: what follows the table's name in the statement
 * @key: what ?1 in @rest stands for
 * @error: return location for a #GError
 *
 * Returns: (transfer full) (nullable): the first record; %NULL with %BB_STORE_ERROR_NOT_FOUND, which names @key, or
 *   another error
 */
gpointer
_bb_book_load_where (BbBook         *self,
                     const BbTable  *table,
                     const char     *rest,
                     gint64          key,
                     GError        **error)
{
  gpointer record = NULL;
  gboolean missing = FALSE;

  if (!begin_reading (self, table, error))
    return NULL;
  record = load_first (self, table, rest, key, NULL, &missing, error);
  if (missing)
    _bb_book_set_missing (table, key, error);

  return end_reading (self, table, record, error);
}

/**
 * bb_book_load:
 * @self: a book
 * @table: a table of the book
 * @id: a record's key
 * @error: return location for a #GError
 *
 * Returns: (transfer full) (nullable): the record, withdrawn or not; free it with bb_record_free(). %NULL with
 *   %BB_STORE_ERROR_NOT_FOUND, %BB_STORE_ERROR_DAMAGED where a revision's seal does not fit, or another error
 */
gpointer
bb_book_load (BbBook         *self,
              const BbTable  *table,
              gint64          id,
              GError        **error)
{
  g_return_val_if_fail (BB_BOOK_IS_USABLE (self), NULL);

  return _bb_book_load_where (self, table, "WHERE id = ?1", id, error);
}

/**
 * bb_book_load_by_code:
 * @self: a book
 * @table: a table of the book whose records have codes
 * @code: a record's code
 * @error: return location for a #GError
 *
 * Returns: (transfer full) (nullable): the record, withdrawn or not; %NULL with an error as bb_book_load()
 */
gpointer
bb_book_load_by_code (BbBook         *self,
                      const BbTable  *table,
                      const char     *code,
                      GError        **error)
{
  gpointer record = NULL;
  gboolean missing = FALSE;

  g_return_val_if_fail (BB_BOOK_IS_USABLE (self) && code != NULL, NULL);
  g_return_val_if_fail (bb_table_find_field (table, "code") != NULL, NULL);

  if (!begin_reading (self, table, error))
    return NULL;
  record = load_first (self, table, "WHERE code = ?1", 0, code, &missing, error);
  if (missing)
    g_set_error (error, BB_STORE_ERROR, BB_STORE_ERROR_NOT_FOUND, _("%s %s is not in this book."), _(table->title),
                 code);

  return end_reading (self, table, record, error);
}

static gboolean
collect (BbBook         *self,
         const BbTable  *table,
         BbStatement    *statement,
         GPtrArray      *records,
         GError        **error)
{
  BbStep step = BB_STEP_ROW;

  while ((step = bb_statement_step (statement, error)) == BB_STEP_ROW)
    {
      gpointer record = read_record (self, table, statement, error);

      if (record == NULL)
        return FALSE;
      g_ptr_array_add (records, record);
    }

  return step == BB_STEP_DONE;
}

/**
 * _bb_book_load_many:
 * @self: a book
 * @table: a table of the book
 * @rest: what follows the table's name in the statement
 * @key: what ?1 in @rest stands for, where it has that
 * @error: return location for a #GError
 *
 * Returns: (transfer full) (nullable): the records; the array frees them. %NULL with an error
 */
GPtrArray *
_bb_book_load_many (BbBook         *self,
                    const BbTable  *table,
                    const char     *rest,
                    gint64          key,
                    GError        **error)
{
  g_autofree char *sql = bb_sql_select (table, rest);
  g_autoptr (GPtrArray) records = g_ptr_array_new_with_free_func (table->free_record);
  g_autoptr (BbStatement) statement = bb_db_prepare (self->db, sql, error);
  gboolean done = FALSE;

  if (statement == NULL || !bb_db_begin (self->db, BB_ACCESS_READ, error))
    return NULL;

  if (strstr (rest, "?1") != NULL)
    bb_statement_bind_integer (statement, 1, key);
  done = collect (self, table, statement, records, error);
  bb_statement_rewind (statement);
  if (!bb_db_commit (self->db, done ? error : NULL) || !done)
    return NULL;

  return g_steal_pointer (&records);
}

/**
 * bb_book_load_all:
 * @self: a book
 * @table: a table of the book
 * @with_withdrawn: whether records that are out of use are wanted too
 * @error: return location for a #GError
 *
 * Returns: (transfer full) (nullable) (element-type gpointer): the records, in the order in which they were added;
 *   the array frees them. %NULL with an error
 */
GPtrArray *
bb_book_load_all (BbBook         *self,
                  const BbTable  *table,
                  gboolean        with_withdrawn,
                  GError        **error)
{
  gboolean narrow = !with_withdrawn && bb_table_find_field (table, "withdrawn_at") != NULL;

  g_return_val_if_fail (BB_BOOK_IS_USABLE (self), NULL);

  return _bb_book_load_many (self, table, narrow ? "WHERE withdrawn_at IS NULL ORDER BY id" : "ORDER BY id", 0, error);
}

/* A condition that holds for the records that refer to the record ?1 of another table; NULL where none can. */
static char *
make_referring_sql (const BbTable *table,
                    const BbTable *target)
{
  g_autoptr (GString) rest = g_string_new (NULL);

  for (guint i = 0; i < table->n_fields; i++)
    if (table->fields[i].kind == BB_KIND_REFERENCE && table->fields[i].target == target)
      g_string_append_printf (rest, "%s %s = ?1", rest->len == 0 ? "WHERE" : " OR", table->fields[i].name);

  return rest->len > 0 ? g_strdup (rest->str) : NULL;
}

/**
 * bb_book_load_referring:
 * @self: a book
 * @table: the table whose records are wanted
 * @target: the table that they refer to
 * @id: the key of a record of @target
 * @error: return location for a #GError
 *
 * Loads the records that refer to another: a recipe's revisions, a revision's wash tests, where a supply is used.
 *
 * Returns: (transfer full) (nullable) (element-type gpointer): the records, withdrawn ones too, in the order in which
 *   they were added; the array frees them, and may be empty. %NULL with an error
 */
GPtrArray *
bb_book_load_referring (BbBook         *self,
                        const BbTable  *table,
                        const BbTable  *target,
                        gint64          id,
                        GError        **error)
{
  g_autofree char *referring = NULL;
  g_autofree char *rest = NULL;

  g_return_val_if_fail (BB_BOOK_IS_USABLE (self), NULL);

  referring = make_referring_sql (table, target);
  g_return_val_if_fail (referring != NULL, NULL);
  rest = g_strconcat (referring, " ORDER BY id", NULL);

  return _bb_book_load_many (self, table, rest, id, error);
}

/**
 * bb_book_count_referring:
 * @self: a book
 * @table: the table whose records are counted
 * @target: the table that they refer to
 * @id: the key of a record of @target
 * @error: return location for a #GError
 *
 * Returns: how many records bb_book_load_referring() would load, or -1 with an error
 */
gint64
bb_book_count_referring (BbBook         *self,
                         const BbTable  *table,
                         const BbTable  *target,
                         gint64          id,
                         GError        **error)
{
  g_autofree char *referring = NULL;
  g_autofree char *sql = NULL;
  g_autoptr (BbStatement) statement = NULL;

  g_return_val_if_fail (BB_BOOK_IS_USABLE (self), -1);

  referring = make_referring_sql (table, target);
  g_return_val_if_fail (referring != NULL, -1);
  sql = g_strdup_printf ("SELECT COUNT(*) FROM %s %s", table->name, referring);
  statement = bb_db_prepare (self->db, sql, error);
  if (statement == NULL)
    return -1;
  bb_statement_bind_integer (statement, 1, id);

  return bb_statement_step (statement, error) == BB_STEP_ROW ? bb_statement_get_integer (statement, 0) : -1;
}
