/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bb-cli.h"

#include <errno.h>
#include <glib/gi18n-lib.h>
#include <stdio.h>
#include <string.h>

#include "bb-error.h"
#include "bb-exchange-error.h"
#include "bb-image-error.h"
#include "bb-json.h"

#define BLOCK 65536

/* A message is one line, whatever a file or a key brought into it. */
static void
make_one_line (char *message)
{
  for (char *p = message; *p != '\0'; p++)
    if (g_ascii_iscntrl (*p))
      *p = ' ';
}

/**
 * bb_cli_fail:
 * @status: the exit status
 * @format: the message, as for printf()
 * @...: its arguments
 *
 * Writes one line to standard error.
 *
 * Returns: @status
 */
BbCliStatus
bb_cli_fail (BbCliStatus status,
             const char *format,
             ...)
{
  g_autofree char *message = NULL;
  va_list arguments;

  va_start (arguments, format);
  message = g_strdup_vprintf (format, arguments);
  va_end (arguments);
  make_one_line (message);
  g_printerr ("blankbook-cli: %s\n", message);

  return status;
}

/**
 * bb_cli_fail_by_error:
 * @error: what went wrong
 * @file: (nullable): the file that was read, or %NULL for standard input
 *
 * Writes one line to standard error: the message, and the file's name where the file itself is at fault.
 *
 * Returns: %BB_CLI_USAGE for a value that is refused, %BB_CLI_UNREADABLE for a file that can't be read or decoded,
 *   else %BB_CLI_FAILED
 */
BbCliStatus
bb_cli_fail_by_error (const GError *error,
                      const char   *file)
{
  g_autofree char *name = file != NULL ? g_filename_display_name (file) : g_strdup (_("standard input"));

  if (error->domain == BB_MODEL_ERROR)
    return bb_cli_fail (BB_CLI_USAGE, "%s", error->message);
  /* The message names the picture, which is not the file that named it. */
  if (error->domain == BB_IMAGE_ERROR)
    return bb_cli_fail (BB_CLI_UNREADABLE, "%s", error->message);
  if (error->domain == G_FILE_ERROR ||
      g_error_matches (error, BB_EXCHANGE_ERROR, BB_EXCHANGE_ERROR_UNREADABLE) ||
      g_error_matches (error, BB_EXCHANGE_ERROR, BB_EXCHANGE_ERROR_TOO_LARGE) ||
      g_error_matches (error, BB_EXCHANGE_ERROR, BB_EXCHANGE_ERROR_FORMAT))
    return bb_cli_fail (BB_CLI_UNREADABLE, "%s: %s", name, error->message);

  return bb_cli_fail (BB_CLI_FAILED, "%s", error->message);
}

/**
 * bb_cli_write:
 * @text: the result, valid UTF-8
 *
 * Writes a result to standard output as it is, whatever the locale, and sees to it that it arrived.
 *
 * Returns: %BB_CLI_OK, or %BB_CLI_FAILED after a message
 */
BbCliStatus
bb_cli_write (const char *text)
{
  gsize length = strlen (text);

  if (fwrite (text, 1, length, stdout) != length || fflush (stdout) != 0)
    return bb_cli_fail (BB_CLI_FAILED, _("The result could not be written: %s"), g_strerror (errno));

  return BB_CLI_OK;
}

/**
 * bb_cli_answer:
 * @answer: (nullable): the result, or %NULL where there is none
 * @error: (nullable): why there is none
 *
 * Writes what a command found, or why it found nothing.
 *
 * Returns: %BB_CLI_OK, or %BB_CLI_FAILED after a message
 */
BbCliStatus
bb_cli_answer (const char   *answer,
               const GError *error)
{
  return answer != NULL ? bb_cli_write (answer) : bb_cli_fail (BB_CLI_FAILED, "%s", error->message);
}

/**
 * bb_cli_write_new_file:
 * @path: the name of a new file
 * @data: what to write
 * @length: how many bytes
 * @error: return location for a #GError
 *
 * Writes a file, unless there is one of that name: it may be anything.
 *
 * Returns: %TRUE on success
 */
gboolean
bb_cli_write_new_file (const char  *path,
                       const void  *data,
                       gsize        length,
                       GError     **error)
{
  g_autoptr (GFile) file = g_file_new_for_commandline_arg (path);
  g_autoptr (GFileOutputStream) stream = g_file_create (file, G_FILE_CREATE_NONE, NULL, error);

  return stream != NULL && g_output_stream_write_all (G_OUTPUT_STREAM (stream), data, length, NULL, NULL, error) &&
         g_output_stream_close (G_OUTPUT_STREAM (stream), NULL, error);
}

static gboolean
read_stream (FILE    *stream,
             GString *out,
             GError **error)
{
  char block[BLOCK];
  gsize n = 0;

  while ((n = fread (block, 1, sizeof block, stream)) > 0)
    {
      g_string_append_len (out, block, (gssize) n);
      if (out->len > BB_EXCHANGE_BYTES)
        {
          g_set_error (error, BB_EXCHANGE_ERROR, BB_EXCHANGE_ERROR_TOO_LARGE,
                       _("it is larger than the limit of %d bytes"), BB_EXCHANGE_BYTES);
          return FALSE;
        }
    }
  if (ferror (stream))
    {
      int code = errno;

      g_set_error_literal (error, G_FILE_ERROR, (int) g_file_error_from_errno (code), g_strerror (code));
      return FALSE;
    }

  return TRUE;
}

/**
 * bb_cli_read_input:
 * @path: (nullable): a file, or %NULL for standard input
 * @text: (out) (transfer full): what it holds
 * @length: (out): how many bytes
 * @error: return location for a #GError; its message does not name the file
 *
 * Reads a whole file of at most %BB_EXCHANGE_BYTES.
 *
 * Returns: %TRUE on success
 */
gboolean
bb_cli_read_input (const char *path,
                   char      **text,
                   gsize      *length,
                   GError    **error)
{
  g_autoptr (GString) out = g_string_new (NULL);
  FILE *stream = path != NULL ? fopen (path, "rb") : stdin;
  gboolean done = FALSE;

  if (stream == NULL)
    {
      int code = errno;

      g_set_error_literal (error, G_FILE_ERROR, (int) g_file_error_from_errno (code), g_strerror (code));
      return FALSE;
    }

  done = read_stream (stream, out, error);
  if (path != NULL)
    fclose (stream);
  if (!done)
    return FALSE;

  *length = out->len;
  *text = g_string_free (g_steal_pointer (&out), FALSE);

  return TRUE;
}
