/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-session"

#include "bb-session-record.h"

#include "bb-book-jobs.h"

typedef struct {
  const BbTable *table;
  gpointer record;
} Filled;

static void
filled_free (gpointer data)
{
  Filled *self = data;

  bb_record_free (self->table, self->record);
  g_free (self);
}

static gboolean
write_weighing (BbBook            *book,
                const BbWeighing  *weighing,
                GError           **error)
{
  return bb_book_weigh_lot (book, weighing->lot, weighing->scale_g, weighing->note, error);
}

/* What is more than a record, or becomes another, is written as the deed that it is. */
static gboolean
write_record (BbBook   *book,
              gpointer  data,
              GError  **error)
{
  Filled *self = data;

  if (self->table == &bb_revision_table)
    return bb_book_save_revision (book, self->record, error);
  if (self->table == &bb_job_line_table)
    return bb_book_save_job_line (book, self->record, error);
  if (self->table == &bb_run_table)
    return bb_book_save_run (book, self->record, error);
  if (self->table == &bb_weighing_table)
    return write_weighing (book, self->record, error);
  if (self->table == &bb_disposal_table)
    return bb_book_dispose_of_lot (book, self->record, error);

  return bb_book_save (book, self->table, self->record, error);
}

static void
record_written_cb (GObject      *source,
                   GAsyncResult *result,
                   gpointer      data)
{
  g_autoptr (GTask) task = data;
  GError *error = NULL;

  if (bb_session_write_finish (BB_SESSION (source), result, &error))
    g_task_return_boolean (task, TRUE);
  else
    g_task_return_error (task, error);
}

/**
 * bb_session_save_record_async:
 * @self: a session
 * @table: the record's table
 * @record: (transfer full): what a person filled in; a new record has no key
 * @callback: what to call when it is stored
 * @data: for @callback
 *
 * Stores what a person filled in, as the book wants such a record to be stored, off the main loop.
 */
void
bb_session_save_record_async (BbSession           *self,
                              const BbTable       *table,
                              gpointer             record,
                              GAsyncReadyCallback  callback,
                              gpointer             data)
{
  GTask *task = NULL;
  Filled *filled = NULL;

  g_return_if_fail (BB_IS_SESSION (self) && table != NULL && record != NULL);

  filled = g_new0 (Filled, 1);
  filled->table = table;
  filled->record = record;
  task = g_task_new (self, NULL, callback, data);
  g_task_set_task_data (task, filled, filled_free);
  /* The task holds what is written until both are done with it: the writing gives a new record its key. */
  bb_session_write_async (self, write_record, filled, NULL, record_written_cb, task);
}

/**
 * bb_session_save_record_finish:
 * @self: a session
 * @result: what the callback was given
 * @error: return location for a #GError
 *
 * Returns: the record's key, or that of what it is a part of where such records have none; 0 if it was refused
 */
gint64
bb_session_save_record_finish (BbSession     *self,
                               GAsyncResult  *result,
                               GError       **error)
{
  const Filled *filled = NULL;

  g_return_val_if_fail (g_task_is_valid (result, self), 0);

  if (!g_task_propagate_boolean (G_TASK (result), error))
    return 0;
  filled = g_task_get_task_data (G_TASK (result));

  return bb_record_get_key (filled->table, filled->record);
}
