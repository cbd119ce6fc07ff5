/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-store"

/* For st_mtim: the build asks for plain C17. */
#define _POSIX_C_SOURCE 200809L

#include "bb-frozen.h"

#include <glib/gi18n-lib.h>
#include <glib/gstdio.h>
#include <sys/stat.h>
#include <unistd.h>

#include "bb-book.h"

/*
 * Whoever reads a book marks in a file beside it what they read, so that nobody writes over that. Where no file can be
 * put beside the book it can only be read as one that nobody changes (https://www.sqlite.org/wal.html#readonly), and
 * whether that holds has to be looked after here: who may write there could do so all the same.
 */
struct _BbFrozen {
  char *path;
  struct stat book;
};

static gboolean
can_hold_files (const char *path)
{
  g_autofree char *folder = g_path_get_dirname (path);

  return g_access (folder, W_OK) == 0;
}

/**
 * bb_file_can_be_written:
 * @path: absolute path of a book
 *
 * Returns: whether its file may be written, and the files that have to stand beside it
 */
gboolean
bb_file_can_be_written (const char *path)
{
  return g_access (path, W_OK) == 0 && can_hold_files (path);
}

/**
 * bb_frozen_new:
 * @path: absolute path of a book that is to be read only
 *
 * Returns: (transfer full) (nullable): what the file is like now; %NULL where it can be read while others write it:
 *   files can be put beside it, or are there
 */
BbFrozen *
bb_frozen_new (const char *path)
{
  g_autofree char *log = g_strconcat (path, "-wal", NULL);
  BbFrozen *self = NULL;
  struct stat book;

  if (can_hold_files (path) || g_file_test (log, G_FILE_TEST_EXISTS) || stat (path, &book) != 0)
    return NULL;

  self = g_new0 (BbFrozen, 1);
  self->path = g_strdup (path);
  self->book = book;

  return self;
}

/**
 * bb_frozen_free:
 * @self: (transfer full): what a file was like
 */
void
bb_frozen_free (BbFrozen *self)
{
  g_free (self->path);
  g_free (self);
}

/**
 * bb_frozen_dup_address:
 * @self: what a file was like
 *
 * Returns: (transfer full) (nullable): the file's address, by which the database takes it to be unchanging
 */
char *
bb_frozen_dup_address (const BbFrozen *self)
{
  g_autofree char *address = g_filename_to_uri (self->path, NULL, NULL);

  return address != NULL ? g_strconcat (address, "?immutable=1", NULL) : NULL;
}

/**
 * bb_frozen_holds:
 * @self: what a file was like
 * @error: return location for a #GError
 *
 * Returns: %TRUE if the file is as it was; %FALSE with %BB_STORE_ERROR_BUSY, or %BB_STORE_ERROR_IO where it is gone
 */
gboolean
bb_frozen_holds (const BbFrozen  *self,
                 GError         **error)
{
  struct stat now;

  if (stat (self->path, &now) != 0)
    {
      g_set_error_literal (error, BB_STORE_ERROR, BB_STORE_ERROR_IO,
                           _("There is no such file. Was the book moved, or is its disk not there?"));
      return FALSE;
    }
  if (now.st_dev == self->book.st_dev && now.st_ino == self->book.st_ino && now.st_size == self->book.st_size &&
      now.st_mtim.tv_sec == self->book.st_mtim.tv_sec && now.st_mtim.tv_nsec == self->book.st_mtim.tv_nsec)
    return TRUE;

  g_set_error_literal (error, BB_STORE_ERROR, BB_STORE_ERROR_BUSY,
                       _("Another program has changed this book since it was opened: close it, and open it again."));
  return FALSE;
}
