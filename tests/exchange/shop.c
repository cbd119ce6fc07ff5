/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "shop.h"

#include <glib/gstdio.h>
#include <string.h>
#include <unistd.h>

BbBook *
make_book (Fixture    *self,
           const char *name)
{
  g_autofree char *path = g_build_filename (self->folder, name, NULL);
  g_autoptr (GError) error = NULL;
  BbBook *book = bb_book_create (path, &error);

  g_assert_no_error (error);

  return book;
}

void
set_up (Fixture       *self,
        gconstpointer  data)
{
  g_autofree char *path = NULL;
  g_autofree char *demo = NULL;
  gsize length = 0;

  self->folder = g_dir_make_tmp ("blankbook-exchange-XXXXXX", NULL);
  if (data == NULL)
    {
      self->book = make_book (self, "shop.book");
      return;
    }

  path = g_build_filename (self->folder, "shop.book", NULL);
  if (!g_file_test (data, G_FILE_TEST_EXISTS))
    g_assert_true (bb_exchange_make_demo (data, NULL, NULL, NULL));
  g_assert_true (g_file_get_contents (data, &demo, &length, NULL));
  g_assert_true (g_file_set_contents (path, demo, (gssize) length, NULL));
  self->book = bb_book_open (path, NULL);
  g_assert_nonnull (self->book);
}

void
tear_down (Fixture       *self,
           gconstpointer  data)
{
  g_autoptr (GDir) dir = g_dir_open (self->folder, 0, NULL);
  const char *base = NULL;

  (void) data;
  g_assert_finalize_object (self->book);
  while ((base = g_dir_read_name (dir)) != NULL)
    {
      g_autofree char *path = g_build_filename (self->folder, base, NULL);

      g_unlink (path);
    }
  g_rmdir (self->folder);
  g_free (self->folder);
}

char *
load_demo (void)
{
  g_autofree char *path = g_test_build_filename (G_TEST_DIST, "..", "data", "demo-shop.json", NULL);
  g_autoptr (GError) error = NULL;
  char *text = NULL;

  g_file_get_contents (path, &text, NULL, &error);
  g_assert_no_error (error);

  return text;
}

BbImported
import (BbBook     *book,
        const char *text)
{
  BbImported imported = { 0, 0 };
  g_autoptr (GError) error = NULL;

  bb_exchange_import (book, text, strlen (text), NULL, &imported, &error);
  g_assert_no_error (error);

  return imported;
}

char *
export (BbBook *book)
{
  g_autoptr (GError) error = NULL;
  char *text = bb_exchange_export (book, NULL, 0, NULL, &error);

  g_assert_no_error (error);

  return text;
}

guint
count (BbBook        *book,
       const BbTable *table)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GPtrArray) records = bb_book_load_all (book, table, TRUE, &error);

  g_assert_no_error (error);

  return records->len;
}

void
assert_empty (BbBook *book)
{
  guint n_tables = 0;
  const BbTable * const *tables = bb_book_tables (&n_tables);

  for (guint t = 0; t < n_tables; t++)
    g_assert_cmpuint (count (book, tables[t]), ==, 0);
}

/* Runs tests in folders of their own; the demo shop's book is made once, by the first test that wants it. */
int
run_tests (int    argc,
           char **argv,
           void (*add) (const char *demo))
{
  g_autofree char *demo = g_strdup_printf ("%s/blankbook-exchange-%d.book", g_get_tmp_dir (), (int) getpid ());
  int status = 0;

  g_test_init (&argc, &argv, G_TEST_OPTION_ISOLATE_DIRS, NULL);
  add (demo);
  status = g_test_run ();
  g_unlink (demo);

  return status;
}
