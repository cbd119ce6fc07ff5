/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-tests"
#define _GNU_SOURCE

#include "stage-private.h"

#include <errno.h>
#include <signal.h>
#include <stdio.h>
#include <unistd.h>

/**
 * stage_get_patience:
 *
 * Returns: the seconds that a step may take before a test says that it failed
 */
double
stage_get_patience (void)
{
#ifdef __SANITIZE_ADDRESS__
  return 120;
#else
  return 40;
#endif
}

/**
 * stage_pause:
 * @milliseconds: how long
 *
 * Lets time pass between two looks at a program; what a test waits for is a condition, never a time.
 */
void
stage_pause (guint milliseconds)
{
  g_usleep (milliseconds * 1000ul);
}

/**
 * stage_new:
 * @size: size of the virtual display, as `1440x900`
 *
 * Starts a virtual display, a message bus and an accessibility registry. Ends the test where one can't be had.
 *
 * Returns: (transfer full): a stage without a program
 */
Stage *
stage_new (const char *size)
{
  Stage *self = g_new0 (Stage, 1);

  _stage_start_servers (self, size);

  return self;
}

static void
stop (GSubprocess **process)
{
  if (*process != NULL)
    {
      g_subprocess_send_signal (*process, SIGTERM);
      g_subprocess_wait (*process, NULL, NULL);
    }
  g_clear_object (process);
}

static void
remove_all (GFile *file)
{
  g_autoptr (GFileEnumerator) children = NULL;
  GFile *child = NULL;

  children = g_file_enumerate_children (file, "standard::name", G_FILE_QUERY_INFO_NOFOLLOW_SYMLINKS, NULL, NULL);
  while (children != NULL && g_file_enumerator_iterate (children, NULL, &child, NULL, NULL) && child != NULL)
    remove_all (child);

  g_file_delete (file, NULL, NULL);
}

/**
 * stage_free:
 * @self: (transfer full): a stage
 *
 * Ends everything that the stage started, and removes its folder.
 */
void
stage_free (Stage *self)
{
  g_autoptr (GFile) folder = g_file_new_for_path (self->folder);

  stop (&self->program);
  stop (&self->registry);
  if (self->bus != NULL)
    g_dbus_connection_close_sync (self->bus, NULL, NULL);
  g_clear_object (&self->bus);
  stop (&self->daemon);
  g_clear_pointer (&self->glass, glass_free);
  stop (&self->display);
  remove_all (folder);
  g_strfreev (self->environment);
  g_free (self->folder);
  g_free (self);
}

/**
 * stage_get_folder:
 * @self: a stage
 *
 * Returns: (transfer none): a folder that is removed with the stage
 */
const char *
stage_get_folder (Stage *self)
{
  return self->folder;
}

/**
 * stage_build_path:
 * @self: a stage
 * @name: a name within the stage's folder
 *
 * Returns: (transfer full): the path
 */
char *
stage_build_path (Stage      *self,
                  const char *name)
{
  return g_build_filename (self->folder, name, NULL);
}

/**
 * stage_get_glass:
 * @self: a stage
 *
 * Returns: (transfer none): its display
 */
Glass *
stage_get_glass (Stage *self)
{
  return self->glass;
}

/**
 * stage_get_bus:
 * @self: a stage
 *
 * Returns: (transfer none): its message and accessibility bus
 */
GDBusConnection *
stage_get_bus (Stage *self)
{
  return self->bus;
}

/**
 * stage_set_variable:
 * @self: a stage
 * @name: a variable of the environment
 * @value: its value
 *
 * Holds for all programs that start later.
 */
void
stage_set_variable (Stage      *self,
                    const char *name,
                    const char *value)
{
  self->environment = g_environ_setenv (self->environment, name, value, TRUE);
}

/**
 * stage_start:
 * @self: a stage without a running program
 * @argv: the program and its arguments
 *
 * Starts the program under test. What it prints is kept for stage_dup_log().
 */
void
stage_start (Stage              *self,
             const char * const *argv)
{
  g_autofree char *log = NULL;

  g_assert_null (self->program);
  log = g_strdup_printf ("program-%u.log", ++self->runs);
  self->program = _stage_spawn (self, argv, log, -1);
}

/**
 * stage_is_running:
 * @self: a stage
 *
 * Returns: whether the program under test runs
 */
gboolean
stage_is_running (Stage *self)
{
  return self->program != NULL && g_subprocess_get_identifier (self->program) != NULL;
}

/**
 * stage_wait_end:
 * @self: a stage with a program
 *
 * Waits until the program has ended by itself, and fails the test where it does not or is ended by a signal.
 *
 * Returns: its exit status
 */
int
stage_wait_end (Stage *self)
{
  const gint64 limit = g_get_monotonic_time () + (gint64) (stage_get_patience () * G_USEC_PER_SEC);
  int status = -1;

  while (stage_is_running (self))
    {
      if (g_get_monotonic_time () > limit)
        stage_fail (self, "The program does not end");
      stage_pause (10);
    }
  g_subprocess_wait (self->program, NULL, NULL);
  if (!g_subprocess_get_if_exited (self->program))
    stage_fail (self, "The program was ended by signal %d", g_subprocess_get_term_sig (self->program));

  status = g_subprocess_get_exit_status (self->program);
  g_clear_object (&self->program);

  return status;
}

/**
 * stage_dup_log:
 * @self: a stage
 *
 * Returns: (transfer full): what the last program printed so far
 */
char *
stage_dup_log (Stage *self)
{
  g_autofree char *name = g_strdup_printf ("program-%u.log", self->runs);
  g_autofree char *path = stage_build_path (self, name);
  char *text = NULL;

  return g_file_get_contents (path, &text, NULL, NULL) ? text : g_strdup ("");
}

/**
 * stage_run:
 * @self: a stage
 * @argv: a command that ends by itself
 * @output: (out) (optional): what it printed on standard output
 *
 * Runs a command in the stage's environment.
 *
 * Returns: its exit status
 */
int
stage_run (Stage              *self,
           const char * const *argv,
           char              **output)
{
  g_autoptr (GSubprocessLauncher) launcher = g_subprocess_launcher_new (G_SUBPROCESS_FLAGS_STDOUT_PIPE);
  g_autoptr (GSubprocess) process = NULL;
  g_autoptr (GError) error = NULL;

  g_subprocess_launcher_set_environ (launcher, self->environment);
  process = g_subprocess_launcher_spawnv (launcher, argv, &error);
  if (process == NULL || !g_subprocess_communicate_utf8 (process, NULL, NULL, output, NULL, &error))
    stage_fail (self, "%s: %s", argv[0], error->message);
  if (!g_subprocess_get_if_exited (process))
    stage_fail (self, "%s was ended by a signal", argv[0]);

  return g_subprocess_get_exit_status (process);
}

/* Where the test runner keeps logs, a failure leaves a picture of the display too. */
static void
keep_picture (Stage *self)
{
  const char *folder = g_getenv ("BLANKBOOK_FAILURES");
  g_autofree char *name = NULL;
  g_autofree char *path = NULL;
  GlassWindow window = 0;

  if (folder == NULL || self->glass == NULL)
    return;
  window = glass_find_window (self->glass);
  name = g_strdup_printf ("failure-%s.png", program_invocation_short_name);
  path = g_build_filename (folder, name, NULL);
  if (window != 0 && glass_save_png (self->glass, window, path))
    fprintf (stderr, "The window at that moment: %s\n", path);
}

/**
 * stage_fail:
 * @self: a stage
 * @format: what did not happen, as for printf()
 * @...: arguments of @format
 *
 * Says what failed and what the program printed, ends everything, and ends the test.
 */
void
stage_fail (Stage      *self,
            const char *format,
            ...)
{
  g_autofree char *message = NULL;
  g_autofree char *log = stage_dup_log (self);
  va_list arguments;

  va_start (arguments, format);
  message = g_strdup_vprintf (format, arguments);
  va_end (arguments);

  fprintf (stderr, "%s\n", message);
  if (*log != '\0')
    fprintf (stderr, "The program printed:\n%s\n", log);
  keep_picture (self);
  stage_free (self);
  printf ("Bail out! %s\n", message);
  fflush (NULL);
  _exit (1);
}
