/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "run.h"

#include <string.h>

static char *
to_text (GBytes *bytes)
{
  return g_bytes_get_size (bytes) > 0 ? g_strndup (g_bytes_get_data (bytes, NULL), g_bytes_get_size (bytes))
                                      : g_strdup ("");
}

/* Runs the built program with what follows @length as its arguments, @input on its standard input. */
Answer *
run_cli (const char *input,
         gssize      length,
         ...)
{
  g_autoptr (GPtrArray) arguments = g_ptr_array_new ();
  g_autoptr (GSubprocessLauncher) launcher = NULL;
  g_autoptr (GSubprocess) process = NULL;
  g_autofree char *path = g_build_filename (g_get_user_cache_dir (), "input", NULL);
  g_autoptr (GBytes) out = NULL;
  g_autoptr (GBytes) err = NULL;
  g_autoptr (GError) error = NULL;
  Answer *answer = g_new0 (Answer, 1);
  const char *argument = NULL;
  va_list list;

  g_assert_nonnull (g_getenv ("BB_CLI"));
  g_ptr_array_add (arguments, (gpointer) g_getenv ("BB_CLI"));
  va_start (list, length);
  while ((argument = va_arg (list, const char *)) != NULL)
    g_ptr_array_add (arguments, (gpointer) argument);
  va_end (list);
  g_ptr_array_add (arguments, NULL);

  /* From a file and not by a pipe, which breaks where a program refuses before it has read everything: its right. */
  g_assert_cmpint (g_mkdir_with_parents (g_get_user_cache_dir (), 0700), ==, 0);
  g_file_set_contents (path, input, length, &error);
  g_assert_no_error (error);
  launcher = g_subprocess_launcher_new (G_SUBPROCESS_FLAGS_STDOUT_PIPE | G_SUBPROCESS_FLAGS_STDERR_PIPE);
  g_subprocess_launcher_set_stdin_file_path (launcher, path);
  /* The test's own folders, which are not those of the person who runs it. */
  g_subprocess_launcher_setenv (launcher, "XDG_DATA_HOME", g_get_user_data_dir (), TRUE);
  g_subprocess_launcher_setenv (launcher, "XDG_CACHE_HOME", g_get_user_cache_dir (), TRUE);
  process = g_subprocess_launcher_spawnv (launcher, (const char * const *) arguments->pdata, &error);
  g_assert_no_error (error);
  g_subprocess_communicate (process, NULL, NULL, &out, &err, &error);
  g_assert_no_error (error);

  g_assert_true (g_subprocess_get_if_exited (process));
  answer->status = g_subprocess_get_exit_status (process);
  answer->out = to_text (out);
  answer->err = to_text (err);

  return answer;
}

void
answer_free (Answer *self)
{
  g_free (self->out);
  g_free (self->err);
  g_free (self);
}

/* The contract of a refusal: nothing on standard output, one line on standard error. */
void
assert_refused (const Answer *answer,
                int           status,
                const char   *part)
{
  g_test_message ("%d: %s", answer->status, answer->err);
  g_assert_cmpint (answer->status, ==, status);
  g_assert_cmpstr (answer->out, ==, "");
  g_assert_true (g_str_has_prefix (answer->err, "blankbook-cli: "));
  g_assert_true (g_str_has_suffix (answer->err, "\n"));
  g_assert_true (strchr (answer->err, '\n') == answer->err + strlen (answer->err) - 1);
  g_assert_nonnull (strstr (answer->err, part));
}
