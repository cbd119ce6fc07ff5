/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-run-actions"

#include "bb-run-actions.h"

#include "bb-book-jobs.h"

/* What the writing thread gets: a record of its own. */
typedef struct {
  const BbTable *table;
  gpointer record;
  gint64 run;
} Work;

static void
work_free (gpointer data)
{
  Work *self = data;

  bb_record_free (self->table, self->record);
  g_free (self);
}

/* Who waits until it is written. */
typedef struct {
  BbRunWritten func;
  gpointer data;
} Waiting;

static void
written_cb (GObject      *source,
            GAsyncResult *result,
            gpointer      data)
{
  g_autofree Waiting *waiting = data;
  g_autoptr (GError) error = NULL;

  if (!bb_session_write_finish (BB_SESSION (source), result, &error))
    bb_session_report (BB_SESSION (source), error);
  if (waiting->func != NULL)
    waiting->func (waiting->data);
}

static void
write_off (BbSession     *session,
           BbBookFunc     func,
           const BbTable *table,
           gconstpointer  record,
           gint64         run,
           BbRunWritten   written,
           gpointer       data)
{
  Work *work = g_new0 (Work, 1);
  Waiting *waiting = g_new0 (Waiting, 1);

  *waiting = (Waiting) { written, data };
  *work = (Work) { table, bb_record_copy (table, record), run };
  bb_session_write_async (session, func, work, work_free, written_cb, waiting);
}

static gboolean
write_start (BbBook    *book,
             gpointer   data,
             GError   **error)
{
  return bb_book_start_run (book, ((Work *) data)->record, error);
}

static gboolean
write_finish (BbBook    *book,
              gpointer   data,
              GError   **error)
{
  return bb_book_finish_run (book, ((Work *) data)->record, error);
}

static gboolean
write_annotation (BbBook    *book,
                  gpointer   data,
                  GError   **error)
{
  const BbAnnotation *annotation = ((Work *) data)->record;

  return bb_book_annotate_run (book, annotation->run, annotation->text, error);
}

static gboolean
write_use (BbBook    *book,
           gpointer   data,
           GError   **error)
{
  const Work *self = data;
  const BbLotUse *use = self->record;

  return bb_book_use_lot (book, use->lot, self->run, use->amount_g, error);
}

/**
 * bb_run_start:
 * @session: the session
 * @run: a run whose line is set
 *
 * Begins a run by the revision of its line.
 */
void
bb_run_start (BbSession   *session,
              const BbRun *run)
{
  write_off (session, write_start, &bb_run_table, run, 0, NULL, NULL);
}

/**
 * bb_run_finish:
 * @session: the session
 * @run: a run with its counts
 *
 * Ends a run. From then on it can only be annotated.
 */
void
bb_run_finish (BbSession   *session,
               const BbRun *run)
{
  write_off (session, write_finish, &bb_run_table, run, 0, NULL, NULL);
}

/**
 * bb_run_annotate:
 * @session: the session
 * @run: key of a run
 * @text: what was learned about it
 * @written: called when it is written and shown, or refused
 * @data: for @written
 *
 * Adds a remark to a run, which stays.
 */
void
bb_run_annotate (BbSession    *session,
                 gint64        run,
                 const char   *text,
                 BbRunWritten  written,
                 gpointer      data)
{
  g_autoptr (BbAnnotation) annotation = bb_annotation_new ();

  annotation->run = run;
  annotation->text = g_strdup (text);
  write_off (session, write_annotation, &bb_annotation_table, annotation, run, written, data);
}

/**
 * bb_run_use_lot:
 * @session: the session
 * @run: key of a run
 * @use: what is taken from which container
 * @written: called when it is written and shown, or refused
 * @data: for @written
 *
 * Enters that something was taken from a container for a run.
 */
void
bb_run_use_lot (BbSession      *session,
                gint64          run,
                const BbLotUse *use,
                BbRunWritten    written,
                gpointer        data)
{
  write_off (session, write_use, &bb_lot_use_table, use, run, written, data);
}
