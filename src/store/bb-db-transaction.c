/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-store"

#include "bb-db-private.h"

#include <glib/gi18n-lib.h>

#include "bb-store-error.h"

#define SAVEPOINT_ROLLBACK "ROLLBACK TO SAVEPOINT level; RELEASE SAVEPOINT level"

static gboolean
run (BbDb        *self,
     const char  *sql,
     GError     **error)
{
  g_autoptr (BbStatement) statement = bb_db_prepare (self, sql, error);

  return statement != NULL && bb_statement_run (statement, error);
}

/**
 * _bb_db_is_whole:
 * @self: a database
 * @error: return location for a #GError
 *
 * A full disk and some other failures make SQLite roll the whole transaction back by itself. What was meant to be
 * part of it must not be written alone then.
 *
 * Returns: %FALSE if a transaction is open that SQLite has ended
 */
gboolean
_bb_db_is_whole (BbDb    *self,
                 GError **error)
{
  if (self->levels->len == 0 || !sqlite3_get_autocommit (self->handle))
    return TRUE;

  g_set_error_literal (error, BB_STORE_ERROR, BB_STORE_ERROR_IO,
                       _("Nothing was saved: a step before this one failed."));
  return FALSE;
}

/**
 * bb_db_begin:
 * @self: a database
 * @access: what for
 * @error: return location for a #GError
 *
 * Begins a transaction, or one within another. End it with bb_db_commit() or bb_db_rollback().
 *
 * Returns: %FALSE if it did not begin; %BB_STORE_ERROR_BUSY if another program is writing
 */
gboolean
bb_db_begin (BbDb      *self,
             BbAccess   access,
             GError   **error)
{
  BbLevel level = BB_LEVEL_OUTERMOST;
  const char *sql = access == BB_ACCESS_WRITE ? "BEGIN IMMEDIATE" : "BEGIN";

  if (self->levels->len > 0)
    {
      level = access == BB_ACCESS_WRITE ? BB_LEVEL_SAVEPOINT : BB_LEVEL_JOINED;
      sql = access == BB_ACCESS_WRITE ? "SAVEPOINT level" : NULL;
    }

  if (!_bb_db_is_whole (self, error) || (sql != NULL && !run (self, sql, error)))
    return FALSE;

  g_array_append_val (self->levels, level);

  return TRUE;
}

/**
 * bb_db_commit:
 * @self: a database within a transaction
 * @error: return location for a #GError
 *
 * Ends the innermost transaction. If that fails, it is rolled back.
 *
 * Returns: %FALSE if nothing of it was kept
 */
gboolean
bb_db_commit (BbDb    *self,
              GError **error)
{
  BbLevel level = 0;
  const char *sql = NULL;

  g_return_val_if_fail (self->levels->len > 0, FALSE);

  level = g_array_index (self->levels, BbLevel, self->levels->len - 1);
  if (level != BB_LEVEL_JOINED)
    sql = level == BB_LEVEL_OUTERMOST ? "COMMIT" : "RELEASE SAVEPOINT level";

  if (!_bb_db_is_whole (self, error) || (sql != NULL && !run (self, sql, error)))
    {
      bb_db_rollback (self);
      return FALSE;
    }

  g_array_set_size (self->levels, self->levels->len - 1);

  return TRUE;
}

/**
 * bb_db_rollback:
 * @self: a database within a transaction
 *
 * Undoes the innermost transaction.
 */
void
bb_db_rollback (BbDb *self)
{
  BbLevel level = 0;

  g_return_if_fail (self->levels->len > 0);

  level = g_array_index (self->levels, BbLevel, self->levels->len - 1);
  if (level != BB_LEVEL_JOINED && !sqlite3_get_autocommit (self->handle) &&
      sqlite3_exec (self->handle, level == BB_LEVEL_OUTERMOST ? "ROLLBACK" : SAVEPOINT_ROLLBACK, NULL, NULL, NULL) !=
        SQLITE_OK && !sqlite3_get_autocommit (self->handle))
    {
      /* What can't be undone alone is undone with all around it. */
      sqlite3_exec (self->handle, "ROLLBACK", NULL, NULL, NULL);
      g_critical ("The book could not undo a change: %s", sqlite3_errmsg (self->handle));
    }

  g_array_set_size (self->levels, self->levels->len - 1);
}

/**
 * bb_db_get_depth:
 * @self: a database
 *
 * Returns: how many transactions are open, one within the other
 */
guint
bb_db_get_depth (BbDb *self)
{
  return self->levels->len;
}
