/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bb-exchange-watch.h"

/* Records between two reports: some milliseconds. */
#define STRIDE 64

/**
 * _bb_exchange_watch:
 * @self: (nullable): how the work is followed
 * @done: how many records are done
 * @total: how many there are
 * @error: return location for a #GError
 *
 * Reports progress where it is due, and looks whether to stop.
 *
 * Returns: %FALSE with %G_IO_ERROR_CANCELLED if the work shall stop
 */
gboolean
_bb_exchange_watch (const BbExchangeWatch *self,
                    guint                  done,
                    guint                  total,
                    GError               **error)
{
  if (self == NULL)
    return TRUE;
  if (g_cancellable_set_error_if_cancelled (self->cancellable, error))
    return FALSE;
  if (self->progress != NULL && (done % STRIDE == 0 || done == total))
    self->progress (done, total, self->data);

  return TRUE;
}
