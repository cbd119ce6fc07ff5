/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-picture-file"

#include "bb-picture-file.h"

#include <glib/gi18n-lib.h>

#include "bb-scan.h"

/* A task's data is the file's name, once that is known. */

static void
loaded_cb (GObject      *source,
           GAsyncResult *result,
           gpointer      data)
{
  g_autoptr (GTask) task = data;
  GError *error = NULL;
  GBytes *content = g_file_load_bytes_finish (G_FILE (source), result, NULL, &error);

  if (content != NULL)
    g_task_return_pointer (task, content, (GDestroyNotify) g_bytes_unref);
  else
    g_task_return_error (task, error);
}

static gboolean
check (GFileInfo  *info,
       GError    **error)
{
  if (g_file_info_get_file_type (info) != G_FILE_TYPE_REGULAR)
    {
      g_set_error_literal (error, G_IO_ERROR, G_IO_ERROR_NOT_REGULAR_FILE,
                           _("This is not a file that holds a picture."));
      return FALSE;
    }
  if (g_file_info_get_size (info) > BB_PICTURE_BYTES)
    {
      g_set_error (error, G_IO_ERROR, G_IO_ERROR_FAILED,
                   _("This file is larger than the %d megabytes that a picture in the book can have."),
                   BB_PICTURE_BYTES / (1024 * 1024));
      return FALSE;
    }

  return TRUE;
}

static void
known_cb (GObject      *source,
          GAsyncResult *result,
          gpointer      data)
{
  g_autoptr (GTask) task = data;
  GError *error = NULL;
  g_autoptr (GFileInfo) info = g_file_query_info_finish (G_FILE (source), result, &error);
  GCancellable *cancellable = g_task_get_cancellable (task);

  if (info == NULL || !check (info, &error))
    {
      g_task_return_error (task, error);
      return;
    }

  g_task_set_task_data (task, g_strdup (g_file_info_get_display_name (info)), g_free);
  g_file_load_bytes_async (G_FILE (source), cancellable, loaded_cb, g_steal_pointer (&task));
}

/**
 * bb_picture_file_load_async:
 * @file: a file that a person chose or dropped
 * @cancellable: (nullable): stops the reading
 * @callback: called with what is in it
 * @data: for @callback
 *
 * Reads a file that is to become a picture in the book, after a look at whether it can.
 */
void
bb_picture_file_load_async (GFile               *file,
                            GCancellable        *cancellable,
                            GAsyncReadyCallback  callback,
                            gpointer             data)
{
  g_return_if_fail (G_IS_FILE (file));

  g_file_query_info_async (file,
                           G_FILE_ATTRIBUTE_STANDARD_SIZE "," G_FILE_ATTRIBUTE_STANDARD_TYPE ","
                           G_FILE_ATTRIBUTE_STANDARD_DISPLAY_NAME,
                           G_FILE_QUERY_INFO_NONE, G_PRIORITY_DEFAULT, cancellable, known_cb,
                           g_task_new (file, cancellable, callback, data));
}

/**
 * bb_picture_file_load_finish:
 * @result: what the callback was given
 * @name: (out) (transfer full): the file's name, as it can be shown; left alone with an error
 * @error: return location for a #GError
 *
 * Returns: (transfer full) (nullable): the bytes of the file; %NULL where it can't be read, is no file, or is larger
 *   than a picture in the book may be
 */
GBytes *
bb_picture_file_load_finish (GAsyncResult  *result,
                             char         **name,
                             GError       **error)
{
  GBytes *content = NULL;

  g_return_val_if_fail (G_IS_TASK (result) && name != NULL, NULL);

  content = g_task_propagate_pointer (G_TASK (result), error);
  if (content != NULL)
    *name = g_strdup (g_task_get_task_data (G_TASK (result)));

  return content;
}
