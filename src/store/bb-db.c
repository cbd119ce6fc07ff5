/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-store"

#include "bb-db-private.h"

#include <glib/gi18n-lib.h>

#include "bb-store-error.h"

/* How long a write waits for another program's. */
#define PATIENCE_MS 5000

typedef struct {
  int option;
  int value;
} Config;

/* Set and not inherited: builds of SQLite differ in what they start with. */
static const Config configs[] = {
  { SQLITE_DBCONFIG_DEFENSIVE, 1 },
  { SQLITE_DBCONFIG_TRUSTED_SCHEMA, 0 },
  { SQLITE_DBCONFIG_ENABLE_LOAD_EXTENSION, 0 },
  { SQLITE_DBCONFIG_DQS_DDL, 0 },
  { SQLITE_DBCONFIG_DQS_DML, 0 },
  { SQLITE_DBCONFIG_ENABLE_FKEY, 1 },
  { SQLITE_DBCONFIG_ENABLE_TRIGGER, 1 },
  { SQLITE_DBCONFIG_ENABLE_VIEW, 1 },
  { SQLITE_DBCONFIG_WRITABLE_SCHEMA, 0 },
  { SQLITE_DBCONFIG_LEGACY_ALTER_TABLE, 0 },
};

typedef struct {
  const char *set;
  const char *get;
  const char *value;
} Pragma;

/*
 * WAL stands first: it alone can be refused, by a folder that can't hold the file beside the book, and is of no use to
 * who only reads. Temporary data is
 * what a save inside a transaction may have to undo: kept in a file it costs an import most of its time.
 */
static const Pragma pragmas[] = {
  { "PRAGMA journal_mode = WAL", "PRAGMA journal_mode", "wal" },
  { "PRAGMA synchronous = FULL", "PRAGMA synchronous", "2" },
  { "PRAGMA foreign_keys = ON", "PRAGMA foreign_keys", "1" },
  { "PRAGMA recursive_triggers = ON", "PRAGMA recursive_triggers", "1" },
  { "PRAGMA trusted_schema = OFF", "PRAGMA trusted_schema", "0" },
  { "PRAGMA cell_size_check = ON", "PRAGMA cell_size_check", "1" },
  { "PRAGMA mmap_size = 0", "PRAGMA mmap_size", "0" },
  { "PRAGMA temp_store = MEMORY", "PRAGMA temp_store", "2" },
};

/**
 * _bb_db_set_error:
 * @self: a database whose last call failed
 * @error: return location for a #GError
 *
 * Says what went wrong.
 */
void
_bb_db_set_error (BbDb    *self,
                  GError **error)
{
  bb_store_error_set_sqlite (error, sqlite3_extended_errcode (self->handle), sqlite3_errmsg (self->handle));
}

static gboolean
configure (BbDb    *self,
           GError **error)
{
  for (guint i = 0; i < G_N_ELEMENTS (configs); i++)
    {
      int now = -1;
      int code = sqlite3_db_config (self->handle, configs[i].option, configs[i].value, &now);

      if (code != SQLITE_OK || now != configs[i].value)
        {
          g_set_error (error, BB_STORE_ERROR, BB_STORE_ERROR_IO,
                       _("This build of SQLite does not take setting %d, so the book stays closed."),
                       configs[i].option);
          return FALSE;
        }
    }

  return TRUE;
}

static int
open_file (BbDb       *self,
           const char *path,
           BbAccess    access)
{
  int flags = SQLITE_OPEN_NOMUTEX | SQLITE_OPEN_EXRESCODE;
  g_autofree char *address = NULL;

  self->access = access;
  if (access == BB_ACCESS_WRITE)
    return sqlite3_open_v2 (path, &self->handle, flags | SQLITE_OPEN_READWRITE, NULL);

  flags |= SQLITE_OPEN_READONLY;
  self->frozen = bb_frozen_new (path);
  if (self->frozen != NULL)
    address = bb_frozen_dup_address (self->frozen);
  if (address != NULL)
    return sqlite3_open_v2 (address, &self->handle, flags | SQLITE_OPEN_URI, NULL);

  return sqlite3_open_v2 (path, &self->handle, flags, NULL);
}

static BbDb *
open_handle (const char  *path,
             BbAccess     access,
             GError     **error)
{
  BbDb *self = g_new0 (BbDb, 1);
  int code = open_file (self, path, access);

  self->statements = g_hash_table_new (g_str_hash, g_str_equal);
  self->levels = g_array_new (FALSE, FALSE, sizeof (BbLevel));

  if (code != SQLITE_OK)
    bb_store_error_set_sqlite (error, code, sqlite3_errstr (code));
  else if (configure (self, error))
    {
      bb_db_set_patience (self, PATIENCE_MS);
      return self;
    }

  bb_db_close (self, TRUE, NULL);

  return NULL;
}

/**
 * bb_db_open:
 * @path: absolute path of a file that is there
 * @access: whether the file may be written at all
 * @error: return location for a #GError
 *
 * Opens a database for the calling thread. Nothing is read or written yet: see bb_db_settle().
 *
 * Returns: (transfer full) (nullable): the database; close it with bb_db_close()
 */
BbDb *
bb_db_open (const char  *path,
            BbAccess     access,
            GError     **error)
{
  /* SQLite would read "file:…" as an address. */
  g_return_val_if_fail (g_path_is_absolute (path), NULL);

  return open_handle (path, access, error);
}

/**
 * bb_db_open_memory:
 * @error: return location for a #GError
 *
 * Returns: (transfer full) (nullable): an empty database that is gone when it is closed
 */
BbDb *
bb_db_open_memory (GError **error)
{
  return open_handle (":memory:", BB_ACCESS_WRITE, error);
}

/**
 * bb_db_settle:
 * @self: a database that was found to be a book
 * @error: return location for a #GError
 *
 * Puts in place what makes a write last and a hostile file harmless, and makes sure that it is.
 *
 * Returns: %FALSE if a setting did not hold
 */
gboolean
bb_db_settle (BbDb    *self,
              GError **error)
{
  for (guint i = self->access == BB_ACCESS_WRITE ? 0 : 1; i < G_N_ELEMENTS (pragmas); i++)
    {
      g_autoptr (BbStatement) get = NULL;

      if (!bb_db_run_script (self, pragmas[i].set, error))
        return FALSE;

      get = bb_db_prepare (self, pragmas[i].get, error);
      if (get == NULL)
        return FALSE;

      switch (bb_statement_step (get, error))
        {
        case BB_STEP_ROW:
          if (g_strcmp0 (bb_statement_get_text (get, 0), pragmas[i].value) == 0)
            continue;
          break;
        case BB_STEP_ERROR:
          return FALSE;
        case BB_STEP_DONE:
        default:
          break;
        }

      g_set_error (error, BB_STORE_ERROR, BB_STORE_ERROR_IO,
                   _("The book stays closed: “%s” does not hold here."), pragmas[i].set);
      return FALSE;
    }

  return TRUE;
}

/**
 * bb_db_close:
 * @self: (transfer full): a database
 * @untouched: %TRUE to leave what another program did not finish where it is
 * @error: return location for a #GError
 *
 * Closes the database; an open transaction is rolled back. The memory is freed in any case.
 *
 * Returns: %FALSE if something kept it open
 */
gboolean
bb_db_close (BbDb      *self,
             gboolean   untouched,
             GError   **error)
{
  GHashTableIter iter;
  gpointer statement = NULL;
  int code = SQLITE_OK;

  while (self->levels->len > 0)
    bb_db_rollback (self);

  g_hash_table_iter_init (&iter, self->statements);
  while (g_hash_table_iter_next (&iter, NULL, &statement))
    _bb_statement_free (statement);
  g_clear_pointer (&self->statements, g_hash_table_unref);

  if (untouched)
    sqlite3_db_config (self->handle, SQLITE_DBCONFIG_NO_CKPT_ON_CLOSE, 1, NULL);

  code = sqlite3_close (self->handle);
  if (code != SQLITE_OK)
    {
      bb_store_error_set_sqlite (error, code, sqlite3_errstr (code));
      sqlite3_close_v2 (self->handle);
    }

  g_clear_object (&self->cancellable);
  g_clear_pointer (&self->frozen, bb_frozen_free);
  g_array_unref (self->levels);
  g_free (self);

  return code == SQLITE_OK;
}

/**
 * bb_db_set_patience:
 * @self: a database
 * @milliseconds: how long a write waits for another program's
 */
void
bb_db_set_patience (BbDb  *self,
                    guint  milliseconds)
{
  sqlite3_busy_timeout (self->handle, (int) milliseconds);
}

static int
progress_cb (gpointer data)
{
  return g_cancellable_is_cancelled (data) ? 1 : 0;
}

/**
 * bb_db_set_cancellable:
 * @self: a database
 * @cancellable: (nullable): what stops the statements from now on
 */
void
bb_db_set_cancellable (BbDb         *self,
                       GCancellable *cancellable)
{
  g_set_object (&self->cancellable, cancellable);
  sqlite3_progress_handler (self->handle, 1000, cancellable != NULL ? progress_cb : NULL, cancellable);
}

/**
 * bb_db_run_script:
 * @self: a database
 * @sql: statements, one after the other
 * @error: return location for a #GError
 *
 * Returns: %FALSE at the first statement that failed
 */
gboolean
bb_db_run_script (BbDb        *self,
                  const char  *sql,
                  GError     **error)
{
  if (!_bb_db_is_whole (self, error))
    return FALSE;
  if (sqlite3_exec (self->handle, sql, NULL, NULL, NULL) == SQLITE_OK)
    return TRUE;

  _bb_db_set_error (self, error);

  return FALSE;
}

/**
 * bb_db_query_integer:
 * @self: a database
 * @sql: a statement that gives one number
 * @value: (out): the number; 0 where there is no row
 * @error: return location for a #GError
 *
 * Returns: %FALSE if the statement failed
 */
gboolean
bb_db_query_integer (BbDb        *self,
                     const char  *sql,
                     gint64      *value,
                     GError     **error)
{
  g_autoptr (BbStatement) statement = bb_db_prepare (self, sql, error);
  BbStep step = BB_STEP_ERROR;

  *value = 0;
  if (statement == NULL)
    return FALSE;

  step = bb_statement_step (statement, error);
  if (step == BB_STEP_ROW)
    *value = bb_statement_get_integer (statement, 0);

  return step != BB_STEP_ERROR;
}
