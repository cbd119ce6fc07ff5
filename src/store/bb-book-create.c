/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-store"

/* For fsync and link: the build asks for plain C17. */
#define _POSIX_C_SOURCE 200809L

#include "bb-book-private.h"

#include <errno.h>
#include <fcntl.h>
#include <glib/gstdio.h>
#include <unistd.h>

#include "bb-clean-close.h"
#include "bb-migrate.h"

/*
 * A new book is made under a name of its own beside the one it shall have, and gets that when it is whole: a program
 * that is ended on the way leaves nothing that looks like a book.
 */

static void
remove_files (const char *path)
{
  const char * const endings[] = { "", "-wal", "-shm" };

  for (guint i = 0; i < G_N_ELEMENTS (endings); i++)
    {
      g_autofree char *name = g_strconcat (path, endings[i], NULL);

      g_unlink (name);
    }
}

/* An empty file beside @path that only its owner may read. */
static char *
make_file_beside (const char *path,
                  GError    **error)
{
  g_autofree char *folder = g_path_get_dirname (path);
  g_autofree char *base = g_path_get_basename (path);
  g_autofree char *name = g_strdup_printf (".%s-XXXXXX", base);
  g_autofree char *beside = g_build_filename (folder, name, NULL);
  const int file = g_mkstemp_full (beside, O_RDWR | O_CLOEXEC, 0600);

  if (file < 0)
    {
      _bb_book_set_errno (error, errno);
      return NULL;
    }
  close (file);

  return g_steal_pointer (&beside);
}

static gboolean
write_book (const char  *path,
            BbBookFunc   fill,
            gpointer     data,
            GError     **error)
{
  BbDb *db = bb_db_open (path, BB_ACCESS_WRITE, error);
  g_autoptr (BbBook) book = NULL;

  if (db == NULL)
    return FALSE;

  book = _bb_book_new (path, db, BB_ACCESS_WRITE);
  if (!bb_db_settle (db, error) || !bb_book_migrate (db, error) || (fill != NULL && !fill (book, data, error)))
    return FALSE;

  /* Not bb_book_close(), which would note that the file of this name was closed. */
  return bb_db_close (g_steal_pointer (&book->db), FALSE, error);
}

/* So that the new name is there after a power cut, too. */
static void
sync_folder (const char *path)
{
  g_autofree char *folder = g_path_get_dirname (path);
  const int file = g_open (folder, O_RDONLY | O_CLOEXEC, 0);

  if (file < 0)
    return;
  if (fsync (file) != 0)
    g_debug ("%s: %s", folder, g_strerror (errno));
  close (file);
}

/* Never over what is there already. A file system without links leaves a moment in which it can come to be there. */
static gboolean
move_file (const char *from,
           const char *to,
           GError    **error)
{
  if (link (from, to) == 0)
    g_unlink (from);
  else if (errno == EEXIST || g_file_test (to, G_FILE_TEST_EXISTS))
    return _bb_book_set_errno (error, EEXIST);
  else if (g_rename (from, to) != 0)
    return _bb_book_set_errno (error, errno);
  sync_folder (to);

  return TRUE;
}

/**
 * bb_book_make:
 * @path: where the book shall be
 * @fill: (nullable): what writes into the book, in transactions of its own; the book is lent to it
 * @data: data for @fill
 * @error: return location for a #GError
 *
 * Makes a book that only its owner may read, whole or not at all, even if the program is ended on the way.
 *
 * Returns: %FALSE with %BB_STORE_ERROR_EXISTS where there is a file already, %BB_STORE_ERROR_IO, or the error of @fill;
 *   nothing is left then
 */
gboolean
bb_book_make (const char  *path,
              BbBookFunc   fill,
              gpointer     data,
              GError     **error)
{
  g_autofree char *absolute = NULL;
  g_autofree char *beside = NULL;
  g_autoptr (GError) local = NULL;
  gboolean done = FALSE;

  g_return_val_if_fail (path != NULL, FALSE);

  absolute = g_canonicalize_filename (path, NULL);
  if (g_file_test (absolute, G_FILE_TEST_EXISTS))
    _bb_book_set_errno (&local, EEXIST);
  else
    beside = make_file_beside (absolute, &local);
  if (beside == NULL)
    {
      _bb_book_name_file (absolute, &local);
      g_propagate_error (error, g_steal_pointer (&local));
      return FALSE;
    }

  done = write_book (beside, fill, data, error);
  if (done && !move_file (beside, absolute, error))
    done = _bb_book_name_file (absolute, error) != NULL;
  if (done)
    bb_clean_close_note (absolute);
  else
    remove_files (beside);

  return done;
}

/**
 * bb_book_create:
 * @path: where the book shall be
 * @error: return location for a #GError
 *
 * Makes an empty book that only its owner may read, and opens it for the calling thread.
 *
 * Returns: (transfer full) (nullable): the book, or %NULL with %BB_STORE_ERROR_EXISTS where there is a file already,
 *   or %BB_STORE_ERROR_IO; nothing is left then
 */
BbBook *
bb_book_create (const char  *path,
                GError     **error)
{
  g_return_val_if_fail (path != NULL, NULL);

  return bb_book_make (path, NULL, NULL, error) ? bb_book_open (path, error) : NULL;
}
