/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "run.h"

#include <glib/gstdio.h>
#include <string.h>

#include "bb-exchange.h"

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

void
set_up (Fixture       *self,
        gconstpointer  data)
{
  g_autofree char *demo = NULL;
  gsize length = 0;

  self->folder = g_dir_make_tmp ("blankbook-cli-XXXXXX", NULL);
  self->book = g_build_filename (self->folder, "demo.book", NULL);
  if (!g_file_test (data, G_FILE_TEST_EXISTS))
    g_assert_true (bb_exchange_make_demo (data, NULL, NULL, NULL));
  g_assert_true (g_file_get_contents (data, &demo, &length, NULL));
  g_assert_true (g_file_set_contents (self->book, demo, (gssize) length, NULL));
}

void
tear_down (Fixture       *self,
           gconstpointer  data)
{
  g_autoptr (GDir) dir = g_dir_open (self->folder, 0, NULL);
  const char *base = NULL;

  (void) data;
  while ((base = g_dir_read_name (dir)) != NULL)
    {
      g_autofree char *path = g_build_filename (self->folder, base, NULL);

      g_unlink (path);
    }
  g_rmdir (self->folder);
  g_free (self->folder);
  g_free (self->book);
}

void
assert_told (const Answer *answer,
             const char   *part)
{
  g_test_message ("%s%s", answer->out, answer->err);
  g_assert_cmpstr (answer->err, ==, "");
  g_assert_cmpint (answer->status, ==, 0);
  g_assert_nonnull (strstr (answer->out, part));
}

JsonNode *
parse (const Answer *answer)
{
  g_autoptr (GError) error = NULL;
  JsonNode *node = bb_json_parse (answer->out, strlen (answer->out), &error);

  g_assert_cmpstr (answer->err, ==, "");
  g_assert_no_error (error);
  g_assert_cmpint (answer->status, ==, 0);

  return node;
}
