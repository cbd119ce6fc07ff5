/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-store"

/* For st_mtim: the build asks for plain C17. */
#define _POSIX_C_SOURCE 200809L

#include "bb-clean-close.h"

#include <glib/gstdio.h>
#include <sys/stat.h>

/*
 * A file that this program closed itself, and that nobody has touched since, is opened without looking at every page
 * of it. What the file was like is noted outside the book: a note inside it could not tell that the book was copied,
 * restored or written by another program since, and would cost a write at each opening. Losing the note costs one
 * check, no more.
 */

static char *
dup_note_path (const char *path)
{
  g_autofree char *name = g_compute_checksum_for_string (G_CHECKSUM_SHA256, path, -1);

  return g_build_filename (g_get_user_cache_dir (), "blankbook", "closed", name, NULL);
}

static char *
describe (const char *path)
{
  g_autofree char *log = g_strconcat (path, "-wal", NULL);
  struct stat book;
  struct stat wal;

  /* What is still in the log was not closed, or is open elsewhere. */
  if (stat (path, &book) != 0 || (stat (log, &wal) == 0 && wal.st_size > 0))
    return NULL;

  return g_strdup_printf ("%" G_GUINT64_FORMAT " %" G_GUINT64_FORMAT " %" G_GINT64_FORMAT
                          " %" G_GINT64_FORMAT ".%09ld %" G_GINT64_FORMAT ".%09ld\n",
                          (guint64) book.st_dev, (guint64) book.st_ino, (gint64) book.st_size,
                          (gint64) book.st_mtim.tv_sec, book.st_mtim.tv_nsec,
                          (gint64) book.st_ctim.tv_sec, book.st_ctim.tv_nsec);
}

/**
 * bb_clean_close_holds:
 * @path: absolute path of a book
 *
 * Returns: %TRUE if this program closed the file, and nothing has touched it since
 */
gboolean
bb_clean_close_holds (const char *path)
{
  g_autofree char *note_path = dup_note_path (path);
  g_autofree char *noted = NULL;
  g_autofree char *now = describe (path);

  return now != NULL && g_file_get_contents (note_path, &noted, NULL, NULL) && g_str_equal (noted, now);
}

/**
 * bb_clean_close_note:
 * @path: absolute path of a book that was just closed
 *
 * Notes what the file is like, unless it is still open elsewhere.
 */
void
bb_clean_close_note (const char *path)
{
  g_autofree char *note_path = dup_note_path (path);
  g_autofree char *folder = g_path_get_dirname (note_path);
  g_autofree char *now = describe (path);

  /* Without the note the next opening checks the book: no reason to trouble anyone. */
  if (now == NULL || g_mkdir_with_parents (folder, 0700) != 0 ||
      !g_file_set_contents_full (note_path, now, -1, G_FILE_SET_CONTENTS_NONE, 0600, NULL))
    g_debug ("No note of how %s was closed", path);
}
