/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-store"

#include "bb-db-private.h"

#include "bb-store-error.h"

/*
 * @failure: the first failure of a bind; reported by the next step
 */
struct _BbStatement {
  BbDb *db;
  sqlite3_stmt *handle;
  char *sql;
  int failure;
  gboolean lent;
};

/**
 * bb_db_prepare:
 * @self: a database
 * @sql: one statement
 * @error: return location for a #GError
 *
 * Lends the prepared statement of this text. One text is lent once at a time.
 *
 * Returns: (transfer full) (nullable): the statement; give it back with bb_statement_release()
 */
BbStatement *
bb_db_prepare (BbDb        *self,
               const char  *sql,
               GError     **error)
{
  BbStatement *statement = g_hash_table_lookup (self->statements, sql);

  if (self->frozen != NULL && !bb_frozen_holds (self->frozen, error))
    return NULL;

  if (statement == NULL)
    {
      sqlite3_stmt *handle = NULL;

      if (sqlite3_prepare_v3 (self->handle, sql, -1, SQLITE_PREPARE_PERSISTENT, &handle, NULL) != SQLITE_OK)
        {
          _bb_db_set_error (self, error);
          return NULL;
        }

      statement = g_new0 (BbStatement, 1);
      statement->db = self;
      statement->handle = handle;
      statement->sql = g_strdup (sql);
      g_hash_table_insert (self->statements, statement->sql, statement);
    }

  g_return_val_if_fail (!statement->lent, NULL);
  statement->lent = TRUE;

  return statement;
}

/**
 * _bb_statement_free:
 * @self: (transfer full): a statement, lent or not
 */
void
_bb_statement_free (BbStatement *self)
{
  sqlite3_finalize (self->handle);
  g_free (self->sql);
  g_free (self);
}

/**
 * bb_statement_rewind:
 * @self: a statement
 *
 * Makes the statement ready to run again, without parameters.
 */
void
bb_statement_rewind (BbStatement *self)
{
  /* Says once more what the last step said. */
  sqlite3_reset (self->handle);
  sqlite3_clear_bindings (self->handle);
  self->failure = SQLITE_OK;
}

/**
 * bb_statement_release:
 * @self: (transfer full): a statement
 *
 * Gives a statement back. Texts that were read from it are gone.
 */
void
bb_statement_release (BbStatement *self)
{
  bb_statement_rewind (self);
  self->lent = FALSE;
}

static void
note (BbStatement *self,
      int          code)
{
  if (self->failure == SQLITE_OK)
    self->failure = code;
}

/**
 * bb_statement_bind_null:
 * @self: a statement
 * @index: a parameter, from 1
 *
 * Sets a parameter to nothing. As with every bind, a failure is reported by the next step.
 */
void
bb_statement_bind_null (BbStatement *self,
                        int          index)
{
  note (self, sqlite3_bind_null (self->handle, index));
}

/**
 * bb_statement_bind_integer:
 * @self: a statement
 * @index: a parameter, from 1
 * @value: its value
 */
void
bb_statement_bind_integer (BbStatement *self,
                           int          index,
                           gint64       value)
{
  note (self, sqlite3_bind_int64 (self->handle, index, value));
}

/**
 * bb_statement_bind_number:
 * @self: a statement
 * @index: a parameter, from 1
 * @value: its value
 */
void
bb_statement_bind_number (BbStatement *self,
                          int          index,
                          double       value)
{
  note (self, sqlite3_bind_double (self->handle, index, value));
}

/**
 * bb_statement_bind_text:
 * @self: a statement
 * @index: a parameter, from 1
 * @value: (nullable): its value, copied
 */
void
bb_statement_bind_text (BbStatement *self,
                        int          index,
                        const char  *value)
{
  note (self, sqlite3_bind_text (self->handle, index, value, -1, SQLITE_TRANSIENT));
}

/**
 * bb_statement_bind_bytes:
 * @self: a statement
 * @index: a parameter, from 1
 * @value: its value, which has to live until the statement is released
 */
void
bb_statement_bind_bytes (BbStatement *self,
                         int          index,
                         GBytes      *value)
{
  gsize length = 0;
  gconstpointer data = g_bytes_get_data (value, &length);

  note (self, sqlite3_bind_blob64 (self->handle, index, data, length, SQLITE_STATIC));
}

/**
 * bb_statement_step:
 * @self: a statement
 * @error: return location for a #GError
 *
 * Returns: whether there is a row, none, or an error
 */
BbStep
bb_statement_step (BbStatement *self,
                   GError     **error)
{
  if (self->failure != SQLITE_OK)
    {
      bb_store_error_set_sqlite (error, self->failure, sqlite3_errstr (self->failure));
      return BB_STEP_ERROR;
    }
  if (!_bb_db_is_whole (self->db, error))
    return BB_STEP_ERROR;

  switch (sqlite3_step (self->handle))
    {
    case SQLITE_ROW:
      return BB_STEP_ROW;
    case SQLITE_DONE:
      return BB_STEP_DONE;
    default:
      _bb_db_set_error (self->db, error);
      return BB_STEP_ERROR;
    }
}

/**
 * bb_statement_run:
 * @self: a statement whose rows do not matter
 * @error: return location for a #GError
 *
 * Returns: %FALSE if the statement failed
 */
gboolean
bb_statement_run (BbStatement *self,
                  GError     **error)
{
  BbStep step = BB_STEP_ROW;

  while (step == BB_STEP_ROW)
    step = bb_statement_step (self, error);

  return step == BB_STEP_DONE;
}

/**
 * bb_statement_is_null:
 * @self: a statement that has a row
 * @column: a column, from 0
 *
 * Returns: %TRUE if there is no value
 */
gboolean
bb_statement_is_null (BbStatement *self,
                      int          column)
{
  return sqlite3_column_type (self->handle, column) == SQLITE_NULL;
}

/**
 * bb_statement_get_integer:
 * @self: a statement that has a row
 * @column: a column, from 0
 *
 * Returns: the value; 0 where there is none
 */
gint64
bb_statement_get_integer (BbStatement *self,
                          int          column)
{
  return sqlite3_column_int64 (self->handle, column);
}

/**
 * bb_statement_get_number:
 * @self: a statement that has a row
 * @column: a column, from 0
 *
 * Returns: the value; 0 where there is none
 */
double
bb_statement_get_number (BbStatement *self,
                         int          column)
{
  return sqlite3_column_double (self->handle, column);
}

/**
 * bb_statement_get_text:
 * @self: a statement that has a row
 * @column: a column, from 0
 *
 * Returns: (nullable) (transfer none): the value, until the next step; %NULL where there is none
 */
const char *
bb_statement_get_text (BbStatement *self,
                       int          column)
{
  return (const char *) sqlite3_column_text (self->handle, column);
}

/**
 * bb_statement_dup_bytes:
 * @self: a statement that has a row
 * @column: a column, from 0
 *
 * Returns: (transfer full): a copy of the value; empty where there is none
 */
GBytes *
bb_statement_dup_bytes (BbStatement *self,
                        int          column)
{
  gconstpointer data = sqlite3_column_blob (self->handle, column);

  return g_bytes_new (data, (gsize) sqlite3_column_bytes (self->handle, column));
}
