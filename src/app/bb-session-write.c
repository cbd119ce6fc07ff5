/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-session"

#include "bb-session-private.h"

static void
written_cb (GObject      *source,
            GAsyncResult *result,
            gpointer      data)
{
  g_autoptr (GTask) task = data;
  g_autoptr (GError) error = NULL;

  if (!bb_book_thread_run_finish (BB_BOOK_THREAD (source), result, &error))
    {
      g_task_return_error (task, g_steal_pointer (&error));
      return;
    }

  g_signal_emit_by_name (g_task_get_source_object (task), "changed");
  g_task_return_boolean (task, TRUE);
}

/**
 * bb_session_write_async:
 * @self: a session
 * @func: what to do with the book, in one transaction, on the writing thread
 * @data: (transfer full): a snapshot that @func alone uses
 * @free_data: frees @data
 * @callback: called when it is written, after the session said that the book changed
 * @user_data: for @callback
 */
void
bb_session_write_async (BbSession           *self,
                        BbBookFunc           func,
                        gpointer             data,
                        GDestroyNotify       free_data,
                        GAsyncReadyCallback  callback,
                        gpointer             user_data)
{
  GTask *task = NULL;

  g_return_if_fail (BB_IS_SESSION (self));

  task = g_task_new (self, NULL, callback, user_data);
  _bb_session_write_quietly (self, func, data, free_data, written_cb, task);
}

/**
 * bb_session_write_finish:
 * @self: a session
 * @result: what the callback was given
 * @error: return location for a #GError
 *
 * Returns: %TRUE if it stands in the book
 */
gboolean
bb_session_write_finish (BbSession     *self,
                         GAsyncResult  *result,
                         GError       **error)
{
  g_return_val_if_fail (g_task_is_valid (result, self), FALSE);

  return g_task_propagate_boolean (G_TASK (result), error);
}

static void
refusal_told_cb (GObject      *source,
                 GAsyncResult *result,
                 gpointer      data)
{
  g_autoptr (GError) error = NULL;

  (void) data;

  if (!bb_session_write_finish (BB_SESSION (source), result, &error))
    bb_session_report (BB_SESSION (source), error);
}

/**
 * bb_session_write:
 * @self: a session
 * @func: what to do with the book, in one transaction, on the writing thread
 * @data: for @func
 * @free_data: (nullable): frees @data
 *
 * Writes the book off the main loop, where nothing waits for it. A refusal is told to the person.
 */
void
bb_session_write (BbSession      *self,
                  BbBookFunc      func,
                  gpointer        data,
                  GDestroyNotify  free_data)
{
  bb_session_write_async (self, func, data, free_data, refusal_told_cb, NULL);
}
