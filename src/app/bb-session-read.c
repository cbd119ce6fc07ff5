/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-session"

#include "bb-session-private.h"

/* @result is made on the reading thread, and taken on the one that asked. */
typedef struct {
  BbReadFunc func;
  gpointer data;
  GDestroyNotify free_data;
  gpointer result;
  GDestroyNotify free_result;
} Reading;

static void
reading_free (gpointer data)
{
  Reading *self = data;

  if (self->data != NULL && self->free_data != NULL)
    self->free_data (self->data);
  if (self->result != NULL)
    self->free_result (self->result);
  g_free (self);
}

static gboolean
read_book (BbBook   *book,
           gpointer  data,
           GError  **error)
{
  Reading *self = data;

  self->result = self->func (book, self->data, error);

  return self->result != NULL;
}

static void
read_cb (GObject      *source,
         GAsyncResult *result,
         gpointer      data)
{
  g_autoptr (GTask) task = data;
  Reading *reading = bb_book_thread_get_data (BB_BOOK_THREAD (source), result);
  GError *error = NULL;

  if (bb_book_thread_run_finish (BB_BOOK_THREAD (source), result, &error))
    g_task_return_pointer (task, g_steal_pointer (&reading->result), reading->free_result);
  else
    g_task_return_error (task, error);
}

/**
 * bb_session_read_async:
 * @self: a session
 * @func: what to read, on the reading thread, after all that was asked to be written before; it can write nothing
 * @data: (transfer full) (nullable): a snapshot that @func alone uses
 * @free_data: (nullable): frees @data
 * @free_result: frees what @func returned where nobody takes it
 * @cancellable: (nullable): drops the result, and ends the reading
 * @callback: called on this thread when it is read
 * @user_data: for @callback
 *
 * Reads what takes longer than a frame off the main loop, by a connection of its own: what is written meanwhile, here
 * or by another program, does not wait for it, and is not seen by it.
 */
void
bb_session_read_async (BbSession           *self,
                       BbReadFunc           func,
                       gpointer             data,
                       GDestroyNotify       free_data,
                       GDestroyNotify       free_result,
                       GCancellable        *cancellable,
                       GAsyncReadyCallback  callback,
                       gpointer             user_data)
{
  Reading *reading = NULL;

  g_return_if_fail (BB_IS_SESSION (self) && func != NULL && free_result != NULL);

  reading = g_new0 (Reading, 1);
  reading->func = func;
  reading->data = data;
  reading->free_data = free_data;
  reading->free_result = free_result;
  _bb_session_read_within (self, read_book, reading, reading_free, cancellable, read_cb,
                           g_task_new (self, cancellable, callback, user_data));
}

/**
 * bb_session_read_finish:
 * @self: a session
 * @result: what the callback was given
 * @error: return location for a #GError
 *
 * Returns: (transfer full) (nullable): what was read; %NULL with the error of the function that read, or with
 *   %G_IO_ERROR_CANCELLED
 */
gpointer
bb_session_read_finish (BbSession     *self,
                        GAsyncResult  *result,
                        GError       **error)
{
  g_return_val_if_fail (g_task_is_valid (result, self), NULL);

  return g_task_propagate_pointer (G_TASK (result), error);
}
