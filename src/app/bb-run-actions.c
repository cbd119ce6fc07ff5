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

static void
written_cb (GObject      *source,
            GAsyncResult *result,
            gpointer      data)
{
  g_autoptr (GError) error = NULL;

  (void) data;

  if (!bb_session_write_finish (BB_SESSION (source), result, &error))
    bb_session_report (BB_SESSION (source), error);
}

static void
write_off (BbSession     *session,
           BbBookFunc     func,
           const BbTable *table,
           gconstpointer  record,
           gint64         run)
{
  Work *work = g_new0 (Work, 1);

  *work = (Work) { table, bb_record_copy (table, record), run };
  bb_session_write_async (session, func, work, work_free, written_cb, NULL);
}

static gboolean
write_start (BbBook   *book,
             gpointer  data,
             GError  **error)
{
  return bb_book_start_run (book, ((Work *) data)->record, error);
}

static gboolean
write_finish (BbBook   *book,
              gpointer  data,
              GError  **error)
{
  return bb_book_finish_run (book, ((Work *) data)->record, error);
}

static gboolean
write_annotation (BbBook   *book,
                  gpointer  data,
                  GError  **error)
{
  const BbAnnotation *annotation = ((Work *) data)->record;

  return bb_book_annotate_run (book, annotation->run, annotation->text, error);
}

static gboolean
write_use (BbBook   *book,
           gpointer  data,
           GError  **error)
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
  write_off (session, write_start, &bb_run_table, run, 0);
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
  write_off (session, write_finish, &bb_run_table, run, 0);
}

/**
 * bb_run_annotate:
 * @session: the session
 * @run: key of a run
 * @text: what was learned about it
 *
 * Adds a remark to a run, which stays.
 */
void
bb_run_annotate (BbSession  *session,
                 gint64      run,
                 const char *text)
{
  g_autoptr (BbAnnotation) annotation = bb_annotation_new ();

  annotation->run = run;
  annotation->text = g_strdup (text);
  write_off (session, write_annotation, &bb_annotation_table, annotation, run);
}

/**
 * bb_run_use_lot:
 * @session: the session
 * @run: key of a run
 * @use: what is taken from which container
 *
 * Enters that something was taken from a container for a run.
 */
void
bb_run_use_lot (BbSession      *session,
                gint64          run,
                const BbLotUse *use)
{
  write_off (session, write_use, &bb_lot_use_table, use, run);
}
