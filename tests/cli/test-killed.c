/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <glib/gstdio.h>
#include <signal.h>
#include <string.h>

#include "run.h"

/* A book that was not finished when the program ended must not look like one: it is there whole, or not at all. */

#define KILLS 24

static GSubprocess *
start_demo (const char *path)
{
  g_autoptr (GError) error = NULL;
  const GSubprocessFlags flags = G_SUBPROCESS_FLAGS_STDOUT_SILENCE | G_SUBPROCESS_FLAGS_STDERR_SILENCE;
  GSubprocess *process = g_subprocess_new (flags, &error, g_getenv ("BB_CLI"), "book", "demo", path, NULL);

  g_assert_no_error (error);

  return process;
}

/* What the whole demo shop has, and how long it takes to make it. */
static char *
make_whole (const char *path,
            gint64     *duration)
{
  const gint64 start = g_get_monotonic_time ();
  g_autoptr (GSubprocess) process = start_demo (path);
  g_autoptr (Answer) list = NULL;

  g_assert_true (g_subprocess_wait_check (process, NULL, NULL));
  *duration = g_get_monotonic_time () - start;
  list = run_cli ("", 0, "export", "--book", path, NULL);
  g_assert_cmpint (list->status, ==, 0);
  g_assert_cmpuint (strlen (list->out), >, 10000);

  return g_steal_pointer (&list->out);
}

static void
assert_whole (const char *path,
              const char *whole)
{
  g_autoptr (Answer) check = run_cli ("", 0, "book", "check", path, NULL);
  g_autoptr (Answer) list = run_cli ("", 0, "export", "--book", path, NULL);

  g_assert_cmpstr (check->err, ==, "");
  g_assert_cmpint (check->status, ==, 0);
  g_assert_cmpstr (list->out, ==, whole);
}

static void
clear_folder (const char *folder)
{
  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);
  const char *name = NULL;

  while ((name = g_dir_read_name (dir)) != NULL)
    {
      g_autofree char *path = g_build_filename (folder, name, NULL);

      g_assert_cmpint (g_unlink (path), ==, 0);
    }
}

static void
test_demo_is_whole_or_not_there (void)
{
  g_autofree char *folder = g_dir_make_tmp ("blankbook-killed-XXXXXX", NULL);
  g_autofree char *path = g_build_filename (folder, "demo.book", NULL);
  gint64 duration = 0;
  g_autofree char *whole = make_whole (path, &duration);
  guint n_missing = 0;

  for (guint i = 0; i < KILLS; i++)
    {
      g_autoptr (GSubprocess) process = NULL;

      clear_folder (folder);
      process = start_demo (path);
      g_usleep ((gulong) (duration * i / KILLS));
      g_subprocess_send_signal (process, SIGKILL);
      g_assert_true (g_subprocess_wait (process, NULL, NULL));
      if (g_file_test (path, G_FILE_TEST_EXISTS))
        assert_whole (path, whole);
      else
        n_missing++;
    }
  g_test_message ("%u of %u were not there", n_missing, KILLS);
  g_assert_cmpuint (n_missing, >, KILLS / 4);
  clear_folder (folder);
  g_rmdir (folder);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, G_TEST_OPTION_ISOLATE_DIRS, NULL);

  g_test_add_func ("/cli/killed/demo-is-whole-or-not-there", test_demo_is_whole_or_not_there);

  return g_test_run ();
}
