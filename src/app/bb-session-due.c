/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-session"

#include "bb-session-due.h"

#include "bb-evidence-load.h"
#include "bb-moment.h"

static gpointer
read_due (BbBook    *book,
          gpointer   data,
          GError   **error)
{
  return bb_due_load (book, data, error);
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
  bb_session_read_async (self, read_due, bb_dup_today (), g_free, (GDestroyNotify) g_ptr_array_unref, cancellable,
                         callback, data);
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
  return bb_session_read_finish (self, result, error);
}
