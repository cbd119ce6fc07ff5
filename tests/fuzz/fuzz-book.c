/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-test"

#include <glib/gstdio.h>
#include <string.h>

#include "bb-book.h"
#include "bb-migrate.h"
#include "bb-records.h"
#include "fuzz.h"

/*
 * A book in which bytes were changed: it opens or is refused, and what can be loaded of it is loaded or refused. An
 * input is a list of changes to the newest golden book of tests/store: an offset of 3 bytes, a length of one, and the
 * bytes that stand there instead.
 */

static GBytes *
load_golden (void)
{
  const char *sources = g_getenv ("G_TEST_SRCDIR");
  g_autofree char *name = g_strdup_printf ("golden-%u.book", bb_migrations_get_latest ());
  g_autofree char *path = NULL;
  char *data = NULL;
  gsize length = 0;
  g_autoptr (GError) error = NULL;

  if (sources == NULL)
    g_error ("G_TEST_SRCDIR has to name the folder of the tests");
  path = g_build_filename (sources, "store", name, NULL);
  g_file_get_contents (path, &data, &length, &error);
  g_assert_no_error (error);

  return g_bytes_new_take (data, length);
}

static void
change (guint8       *book,
        gsize         book_length,
        const guint8 *data,
        gsize         length)
{
  while (length >= 4)
    {
      gsize offset = ((gsize) data[0] << 16 | (gsize) data[1] << 8 | data[2]) % book_length;
      gsize n = MIN (data[3], length - 4);

      memcpy (book + offset, data + 4, MIN (n, book_length - offset));
      data += 4 + n;
      length -= 4 + n;
    }
}

static void
check_error (const GError *error)
{
  fuzz_check_message (error);
  g_assert_true (error->domain == BB_STORE_ERROR);
}

static void
load_all (BbBook *book)
{
  guint n_tables = 0;
  const BbTable * const *tables = bb_book_tables (&n_tables);

  for (guint i = 0; i < n_tables; i++)
    {
      g_autoptr (GError) error = NULL;
      g_autoptr (GPtrArray) records = bb_book_load_all (book, tables[i], TRUE, &error);

      if (records == NULL)
        check_error (error);
    }
}

static gboolean
look (const char *path)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (BbBook) book = bb_book_open (path, &error);
  g_autoptr (GPtrArray) findings = NULL;

  if (book == NULL)
    {
      check_error (error);
      return FALSE;
    }
  load_all (book);
  findings = bb_book_check (book, NULL, &error);
  if (findings == NULL)
    check_error (error);
  g_clear_error (&error);
  if (!bb_book_close (book, &error))
    check_error (error);

  return TRUE;
}

gboolean
fuzz_one (const guint8 *data,
          gsize         length)
{
  g_autoptr (GBytes) golden = load_golden ();
  gsize book_length = 0;
  g_autofree guint8 *book = g_bytes_unref_to_data (g_steal_pointer (&golden), &book_length);
  g_autofree char *folder = g_dir_make_tmp ("fuzz-book-XXXXXX", NULL);
  g_autofree char *path = g_build_filename (folder, "a.book", NULL);
  g_autoptr (GDir) dir = NULL;
  const char *base = NULL;
  gboolean opened = FALSE;

  change (book, book_length, data, length);
  g_assert_true (g_file_set_contents_full (path, (const char *) book, (gssize) book_length, G_FILE_SET_CONTENTS_NONE,
                                           0600, NULL));
  opened = look (path);

  dir = g_dir_open (folder, 0, NULL);
  while ((base = g_dir_read_name (dir)) != NULL)
    {
      g_autofree char *file = g_build_filename (folder, base, NULL);

      g_remove (file);
    }
  g_rmdir (folder);

  return opened;
}
