/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bb-save.h"

#include <glib/gstdio.h>
#include <string.h>

#include "app-helpers.h"

typedef struct {
  char *folder;
  char *path;
  GFile *file;
} Fixture;

static void
set_up (Fixture       *self,
        gconstpointer  data)
{
  (void) data;
  self->folder = g_dir_make_tmp ("save-XXXXXX", NULL);
  self->path = g_build_filename (self->folder, "labels.pdf", NULL);
  self->file = g_file_new_for_path (self->path);
}

/* The folder is empty again once the one file is gone: nothing was left beside it. */
static void
tear_down (Fixture       *self,
           gconstpointer  data)
{
  (void) data;
  g_unlink (self->path);
  g_assert_cmpint (g_rmdir (self->folder), ==, 0);
  g_free (self->folder);
  g_free (self->path);
  g_object_unref (self->file);
}

static void
assert_holds (Fixture    *self,
              const char *wanted)
{
  g_autofree char *text = NULL;

  g_assert_true (g_file_get_contents (self->path, &text, NULL, NULL));
  g_assert_cmpstr (text, ==, wanted);
}

static gboolean
write_text (const BbSave  *save,
            const char    *text,
            GError       **error)
{
  g_autoptr (GBytes) bytes = g_bytes_new (text, strlen (text));

  return bb_save_write (save, bytes, NULL, error);
}

static void
test_written (Fixture       *self,
              gconstpointer  data)
{
  g_autoptr (BbSave) save = bb_save_new (self->file, FALSE);
  g_autoptr (BbSave) again = NULL;
  g_autoptr (GError) error = NULL;

  (void) data;
  g_assert_true (write_text (save, "first", &error));
  g_assert_no_error (error);
  assert_holds (self, "first");

  again = bb_save_new (self->file, FALSE);
  g_assert_true (write_text (again, "second", &error));
  g_assert_no_error (error);
  assert_holds (self, "second");
}

/* Nobody was asked whether to replace what was not there when the file was named. */
static void
test_came_since (Fixture       *self,
                 gconstpointer  data)
{
  g_autoptr (BbSave) save = bb_save_new (self->file, FALSE);
  g_autoptr (GError) error = NULL;
  g_autofree char *wanted = g_strdup_printf ("%s exists already: choose another name.", self->path);

  (void) data;
  g_assert_true (g_file_set_contents (self->path, "somebody else's", -1, NULL));
  g_assert_false (write_text (save, "ours", &error));
  g_assert_error (error, G_IO_ERROR, G_IO_ERROR_EXISTS);
  g_assert_cmpstr (error->message, ==, wanted);
  assert_holds (self, "somebody else's");
}

/* What is told names the file that was named, and not the one beside it. */
static void
test_no_folder (Fixture       *self,
                gconstpointer  data)
{
  g_autoptr (GFile) file = g_file_get_child (self->file, "labels.pdf");
  g_autoptr (BbSave) save = bb_save_new (file, FALSE);
  g_autoptr (GError) error = NULL;

  (void) data;
  g_assert_false (write_text (save, "ours", &error));
  g_assert_error (error, G_IO_ERROR, G_IO_ERROR_NOT_FOUND);
  g_assert_nonnull (strstr (error->message, g_file_peek_path (file)));
  g_assert_null (strstr (error->message, ".blankbook-"));
}

static void
test_for_owner (Fixture       *self,
                gconstpointer  data)
{
  g_autoptr (BbSave) save = bb_save_new (self->file, TRUE);
  GStatBuf status;

  (void) data;
  g_assert_true (write_text (save, "who bought what", NULL));
  g_assert_cmpint (g_stat (self->path, &status), ==, 0);
  g_assert_cmpuint (status.st_mode & 0777, ==, 0600);
}

static GBytes *
make (gpointer   data,
      GError   **error)
{
  if (data == NULL)
    g_set_error_literal (error, G_IO_ERROR, G_IO_ERROR_FAILED, "There is no ink.");

  return data != NULL ? g_bytes_new (data, strlen (data)) : NULL;
}

static void
done_cb (GObject      *source,
         GAsyncResult *result,
         gpointer      data)
{
  char **said = data;

  (void) source;
  *said = bb_save_run_finish (result);
}

static gboolean
is_said (gpointer data)
{
  return *(char **) data != NULL;
}

static char *
run (Fixture    *self,
     const char *text)
{
  char *said = NULL;

  bb_save_run_async (bb_save_new (self->file, FALSE), make, g_strdup (text), g_free, done_cb, &said);
  helper_wait_until (is_said, &said);

  return said;
}

static void
test_run (Fixture       *self,
          gconstpointer  data)
{
  g_autofree char *saved = run (self, "labels");
  g_autofree char *refused = run (self, NULL);
  g_autofree char *wanted = g_strdup_printf ("Saved as %s.", self->path);

  (void) data;
  g_assert_cmpstr (saved, ==, wanted);
  g_assert_cmpstr (refused, ==, "It was not saved: There is no ink.");
  assert_holds (self, "labels");
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, G_TEST_OPTION_ISOLATE_DIRS, NULL);

#define ADD(path, func) g_test_add (path, Fixture, NULL, set_up, func, tear_down)
  ADD ("/save/written", test_written);
  ADD ("/save/came-since", test_came_since);
  ADD ("/save/no-folder", test_no_folder);
  ADD ("/save/for-owner", test_for_owner);
  ADD ("/save/run", test_run);
#undef ADD

  return g_test_run ();
}
