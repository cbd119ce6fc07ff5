/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-store"

#include "bb-migrate.h"

#include <glib/gi18n-lib.h>
#include <stdlib.h>

#include "bb-book-index.h"
#include "bb-store-error.h"
#include "migrations.h"

#define FOLDER "/io/blankbook/Blankbook/migrations"

/* "BkBk": tells the book from other SQLite files (https://www.sqlite.org/pragma.html#pragma_application_id). */
#define APPLICATION_ID 0x426b426b

typedef struct {
  guint first;
  guint latest;
  guint count;
} Range;

static Range
find_range (void)
{
  g_auto (GStrv) names = g_resource_enumerate_children (bb_migrations_get_resource (), FOLDER,
                                                        G_RESOURCE_LOOKUP_FLAGS_NONE, NULL);
  Range range = { .first = G_MAXUINT };

  for (guint i = 0; names != NULL && names[i] != NULL; i++)
    {
      guint version = (guint) strtoul (names[i], NULL, 10);

      range.first = MIN (range.first, version);
      range.latest = MAX (range.latest, version);
      range.count++;
    }

  return range;
}

/**
 * bb_migrations_get_first:
 *
 * Returns: the version of the oldest book that can be brought to the latest, less one
 */
guint
bb_migrations_get_first (void)
{
  return find_range ().first;
}

/**
 * bb_migrations_get_latest:
 *
 * Returns: the version of the book that this program works with
 */
guint
bb_migrations_get_latest (void)
{
  return find_range ().latest;
}

/**
 * bb_migrations_get_count:
 *
 * Returns: how many migrations there are
 */
guint
bb_migrations_get_count (void)
{
  return find_range ().count;
}

/**
 * bb_migrations_dup_script:
 * @version: the version that it leads to
 *
 * Returns: (transfer full) (nullable): the migration's statements
 */
char *
bb_migrations_dup_script (guint version)
{
  g_autofree char *prefix = g_strdup_printf ("%04u-", version);
  GResource *resource = bb_migrations_get_resource ();
  g_auto (GStrv) names = g_resource_enumerate_children (resource, FOLDER, G_RESOURCE_LOOKUP_FLAGS_NONE, NULL);

  for (guint i = 0; names != NULL && names[i] != NULL; i++)
    if (g_str_has_prefix (names[i], prefix))
      {
        g_autofree char *path = g_build_path ("/", FOLDER, names[i], NULL);
        g_autoptr (GBytes) bytes = g_resource_lookup_data (resource, path, G_RESOURCE_LOOKUP_FLAGS_NONE, NULL);

        return bytes != NULL ? g_strndup (g_bytes_get_data (bytes, NULL), g_bytes_get_size (bytes)) : NULL;
      }

  return NULL;
}

/**
 * bb_book_identify:
 * @db: a database that was just opened
 * @version: (out): the version of the book
 * @error: return location for a #GError
 *
 * Finds out whether a file is a book that this program can open, without changing it.
 *
 * Returns: %FALSE with %BB_STORE_ERROR_NOT_A_BOOK, %BB_STORE_ERROR_NEWER or what reading it came to
 */
gboolean
bb_book_identify (BbDb    *db,
                  guint   *version,
                  GError **error)
{
  gint64 application = 0;
  gint64 number = 0;

  *version = 0;
  if (!bb_db_query_integer (db, "PRAGMA application_id", &application, error) ||
      !bb_db_query_integer (db, "PRAGMA user_version", &number, error))
    return FALSE;

  if (application != APPLICATION_ID)
    {
      g_set_error_literal (error, BB_STORE_ERROR, BB_STORE_ERROR_NOT_A_BOOK,
                           _("This file is not a book of Blankbook."));
      return FALSE;
    }
  if (number > (gint64) bb_migrations_get_latest ())
    {
      g_set_error_literal (error, BB_STORE_ERROR, BB_STORE_ERROR_NEWER,
                           _("This book was made by a newer Blankbook. Install that version to open it; "
                             "the book was left as it is."));
      return FALSE;
    }
  if (number < (gint64) bb_migrations_get_first ())
    {
      g_set_error (error, BB_STORE_ERROR, BB_STORE_ERROR_DAMAGED,
                   _("The book is damaged (%s). Go back to a copy of it."), "user_version");
      return FALSE;
    }
  *version = (guint) number;

  return TRUE;
}

static gboolean
apply (BbDb    *db,
       guint    version,
       GError **error)
{
  g_autofree char *script = bb_migrations_dup_script (version);
  g_autofree char *mark = g_strdup_printf ("PRAGMA application_id = %d; PRAGMA user_version = %u",
                                           APPLICATION_ID, version);

  g_return_val_if_fail (script != NULL, FALSE);

  return bb_db_run_script (db, script, error) && bb_db_run_script (db, mark, error);
}

static gboolean
migrate_once (BbDb     *db,
              gboolean *finished,
              GError  **error)
{
  gint64 version = 0;

  /* Another program may have done it since we looked. */
  if (!bb_db_query_integer (db, "PRAGMA user_version", &version, error))
    return FALSE;

  *finished = version >= (gint64) bb_migrations_get_latest ();
  if (*finished)
    return TRUE;

  /* The words that records are found by are the program's: no migration writes them. */
  return apply (db, (guint) version + 1, error) &&
         (version + 1 < (gint64) bb_migrations_get_latest () || bb_search_rebuild (db, error));
}

/**
 * bb_book_migrate:
 * @db: an empty database, or a book of this or an earlier version
 * @error: return location for a #GError
 *
 * Brings a book to the latest version, each step and its number in one transaction.
 *
 * Returns: %FALSE if a step failed; those before it hold
 */
gboolean
bb_book_migrate (BbDb    *db,
                 GError **error)
{
  gboolean finished = FALSE;

  while (!finished)
    {
      if (!bb_db_begin (db, BB_ACCESS_WRITE, error))
        return FALSE;
      if (!migrate_once (db, &finished, error))
        {
          bb_db_rollback (db);
          return FALSE;
        }
      if (!bb_db_commit (db, error))
        return FALSE;
    }

  return TRUE;
}
