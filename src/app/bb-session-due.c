/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-session"

#include "bb-session-due.h"

#include "bb-evidence-load.h"
#include "bb-session-private.h"

typedef struct {
  char *today;
  GPtrArray *lines;
} Work;

static void
work_free (gpointer data)
{
  Work *self = data;

  g_free (self->today);
  g_clear_pointer (&self->lines, g_ptr_array_unref);
  g_free (self);
}

static gboolean
read_due (BbBook   *book,
          gpointer  data,
          GError  **error)
{
  Work *self = data;

  self->lines = bb_due_load (book, self->today, error);

  return self->lines != NULL;
}

static void
due_read_cb (GObject      *source,
             GAsyncResult *result,
             gpointer      data)
{
  g_autoptr (GTask) task = data;
  GError *error = NULL;
  Work *work = bb_writer_get_data (BB_WRITER (source), result);

  if (bb_writer_run_finish (BB_WRITER (source), result, &error))
    g_task_return_pointer (task, g_steal_pointer (&work->lines), (GDestroyNotify) g_ptr_array_unref);
  else
    g_task_return_error (task, error);
}

/**
 * bb_session_load_due_async:
 * @self: a session
 * @cancellable: (nullable): drops the result, and the reading where it has not begun
 * @callback: what to call with it
 * @data: for @callback
 *
 * Finds out what has to be read today, off the main loop: in a large book that takes a moment.
 */
void
bb_session_load_due_async (BbSession           *self,
                           GCancellable        *cancellable,
                           GAsyncReadyCallback  callback,
                           gpointer             data)
{
  Work *work = NULL;

  g_return_if_fail (BB_IS_SESSION (self));

  work = g_new0 (Work, 1);
  work->today = bb_dup_today ();
  _bb_session_write_quietly (self, read_due, work, work_free, cancellable, due_read_cb,
                             g_task_new (self, cancellable, callback, data));
}

/**
 * bb_session_load_due_finish:
 * @self: a session
 * @result: what the callback was given
 * @error: return location for a #GError
 *
 * Returns: (transfer full) (nullable) (element-type BbDueLine): as bb_due_load(); %NULL with an error
 */
GPtrArray *
bb_session_load_due_finish (BbSession     *self,
                            GAsyncResult  *result,
                            GError       **error)
{
  g_return_val_if_fail (g_task_is_valid (result, self), NULL);

  return g_task_propagate_pointer (G_TASK (result), error);
}
