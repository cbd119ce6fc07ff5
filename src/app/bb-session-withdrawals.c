/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-session"

#include "bb-book-jobs.h"
#include "bb-session.h"

typedef struct {
  const BbTable *table;
  gint64 id;
  char *name;
} Withdrawal;

static void
withdrawal_free (gpointer data)
{
  Withdrawal *self = data;

  g_free (self->name);
  g_free (self);
}

static gboolean
write_withdrawal (BbBook   *book,
                  gpointer  data,
                  GError  **error)
{
  const Withdrawal *self = data;

  if (self->table == &bb_revision_table)
    return bb_book_set_state (book, self->id, BB_STATE_WITHDRAWN, NULL, error);
  if (self->table == &bb_job_table)
    return bb_book_set_job_state (book, self->id, BB_JOB_CANCELLED, error);

  return bb_book_withdraw (book, self->table, self->id, error);
}

static gboolean
write_restoration (BbBook   *book,
                   gpointer  data,
                   GError  **error)
{
  const Withdrawal *self = data;

  if (self->table == &bb_revision_table)
    return bb_book_undo_withdrawal (book, self->id, error);
  if (self->table == &bb_job_table)
    return bb_book_undo_cancellation (book, self->id, error);

  return bb_book_restore (book, self->table, self->id, error);
}

static void
withdrawn_cb (GObject      *source,
              GAsyncResult *result,
              gpointer      data)
{
  BbSession *self = BB_SESSION (source);
  Withdrawal *withdrawal = data;
  g_autoptr (GError) error = NULL;

  if (bb_session_write_finish (self, result, &error))
    g_signal_emit_by_name (self, "withdrawn", withdrawal->name, withdrawal->table, withdrawal->id);
  else
    bb_session_report (self, error);

  withdrawal_free (withdrawal);
}

static void
restored_cb (GObject      *source,
             GAsyncResult *result,
             gpointer      data)
{
  BbSession *self = BB_SESSION (source);
  Withdrawal *withdrawal = data;
  g_autoptr (GError) error = NULL;

  if (bb_session_write_finish (self, result, &error))
    g_signal_emit_by_name (self, "restored", withdrawal->table, withdrawal->id);
  else
    bb_session_report (self, error);

  withdrawal_free (withdrawal);
}

static Withdrawal *
withdrawal_new (const BbTable *table,
                gint64         id,
                const char    *name)
{
  Withdrawal *self = g_new0 (Withdrawal, 1);

  self->table = table;
  self->id = id;
  self->name = g_strdup (name);

  return self;
}

/**
 * bb_session_withdraw:
 * @self: a session
 * @table: the record's table
 * @id: the record's key
 * @name: what a person calls it
 *
 * Takes a record out of use, a job by cancelling it, and offers to undo that.
 */
void
bb_session_withdraw (BbSession     *self,
                     const BbTable *table,
                     gint64         id,
                     const char    *name)
{
  g_return_if_fail (BB_IS_SESSION (self));

  bb_session_write_async (self, write_withdrawal, withdrawal_new (table, id, name), withdrawal_free,
                          withdrawn_cb, withdrawal_new (table, id, name));
}

/**
 * bb_session_restore:
 * @self: a session
 * @table: the record's table
 * @id: the record's key
 *
 * Undoes a withdrawal, and says so by #BbSession::restored.
 */
void
bb_session_restore (BbSession     *self,
                    const BbTable *table,
                    gint64         id)
{
  g_return_if_fail (BB_IS_SESSION (self));

  bb_session_write_async (self, write_restoration, withdrawal_new (table, id, NULL), withdrawal_free,
                          restored_cb, withdrawal_new (table, id, NULL));
}
