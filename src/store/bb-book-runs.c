/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-store"

#include "bb-book-jobs.h"

#include <glib/gi18n-lib.h>

#include "bb-book-private.h"
#include "bb-moment.h"
#include "bb-problem.h"

static gboolean
refuse (GError    **error,
        const char *message)
{
  g_set_error_literal (error, BB_STORE_ERROR, BB_STORE_ERROR_REFUSED, message);
  return FALSE;
}

/* What a run is by: the revision in hand, or the one that its line has. */
static gboolean
choose_revision (BbBook           *self,
                 BbRun            *run,
                 const BbJobLine  *line,
                 GError          **error)
{
  g_autoptr (BbStanding) standing = NULL;

  if (run->revision == 0)
    run->revision = line->revision;
  if (run->revision == 0)
    return refuse (error, _("This line has no recipe yet: choose one, then start the run."));

  standing = bb_book_load_standing (self, run->revision, error);
  if (standing == NULL)
    return FALSE;
  if (standing->state == BB_STATE_WITHDRAWN)
    return refuse (error, _("This revision is withdrawn: choose another, then start the run."));

  return TRUE;
}

static gboolean
set_job_running (BbBook           *self,
                 const BbJobLine  *line,
                 GError          **error)
{
  g_autoptr (BbJob) job = bb_book_load (self, &bb_job_table, line->job, error);

  if (job == NULL)
    return FALSE;
  if (job->state == BB_JOB_CANCELLED)
    return refuse (error, _("This job is cancelled: take it back, then start the run."));
  if (job->state == BB_JOB_DONE)
    return refuse (error, _("This job is done: take it back to running, then start the run."));

  return job->state == BB_JOB_RUNNING || bb_book_set_job_state (self, job->id, BB_JOB_RUNNING, error);
}

static gboolean
start_run (BbBook  *self,
           BbRun   *run,
           GError **error)
{
  g_autoptr (BbJobLine) line = bb_book_load (self, &bb_job_line_table, run->line, error);

  if (line == NULL)
    return FALSE;
  if (line->withdrawn_at != NULL)
    return refuse (error, _("This line was struck off: take it back, then start the run."));
  if (!choose_revision (self, run, line, error) || !set_job_running (self, line, error))
    return FALSE;

  run->id = BB_INTEGER_NONE;
  g_clear_pointer (&run->code, g_free);
  g_clear_pointer (&run->finished_at, g_free);
  if (run->person == 0)
    run->person = self->person;
  if (run->started_at == NULL)
    run->started_at = bb_dup_now ();

  return _bb_book_find_next_number (self, &bb_run_table, run->line, &run->number, error) &&
         _bb_book_save_within (self, &bb_run_table, run, error);
}

/* Runs a step on a copy, so that the record in hand is as it was if the step fails. */
static gboolean
step_on_copy (BbBook    *self,
              BbRun     *run,
              gboolean (*step) (BbBook *self, BbRun *run, GError **error),
              GError   **error)
{
  g_autoptr (BbRun) copy = bb_record_copy (&bb_run_table, run);

  if (!_bb_book_begin (self, error) || !_bb_book_end (self, step (self, copy, error), error))
    return FALSE;
  for (guint i = 0; i < bb_run_table.n_fields; i++)
    bb_field_copy (&bb_run_table.fields[i], copy, run);

  return TRUE;
}

/**
 * bb_book_start_run:
 * @self: a book
 * @run: a run whose line is set; gets its key, number, code and, where they are empty, revision, person and moment
 * @error: return location for a #GError
 *
 * Begins a run, and with it a job that was only planned. The line's recipe is taken where @run names no revision. What
 * is drawn from which lot is entered by bb_book_use_lot().
 *
 * Returns: %FALSE with %BB_STORE_ERROR_REFUSED where the job is done or cancelled, the line struck off, or the recipe
 *   missing or withdrawn, or another error; @run is then as it was
 */
gboolean
bb_book_start_run (BbBook  *self,
                   BbRun   *run,
                   GError **error)
{
  g_return_val_if_fail (BB_BOOK_IS_USABLE (self) && run != NULL, FALSE);

  return step_on_copy (self, run, start_run, error);
}

static gboolean
save_run (BbBook  *self,
          BbRun   *run,
          GError **error)
{
  return _bb_book_keep_derived (self, &bb_run_table, run, error) &&
         _bb_book_save_within (self, &bb_run_table, run, error);
}

/**
 * bb_book_save_run:
 * @self: a book
 * @run: a run that was started
 * @error: return location for a #GError
 *
 * Keeps what is known of a run so far: machines, weigh-ins, what was set otherwise, counts.
 *
 * Returns: %FALSE with %BB_STORE_ERROR_REFUSED where the run has ended, or another error
 */
gboolean
bb_book_save_run (BbBook  *self,
                  BbRun   *run,
                  GError **error)
{
  g_return_val_if_fail (BB_BOOK_IS_USABLE (self) && run != NULL, FALSE);

  return step_on_copy (self, run, save_run, error);
}

static gboolean
finish_run (BbBook  *self,
            BbRun   *run,
            GError **error)
{
  if (!save_run (self, run, error))
    return FALSE;

  g_free (run->finished_at);
  run->finished_at = bb_dup_now ();

  return _bb_book_validate (self, &bb_run_table, run, error) &&
         _bb_book_write_steps (self, &bb_run_table, run, BB_DEED_STATE, error);
}

/**
 * bb_book_finish_run:
 * @self: a book
 * @run: a run that was started, with its counts
 * @error: return location for a #GError
 *
 * Ends a run. From then on it can only be annotated.
 *
 * Returns: %FALSE with %BB_MODEL_ERROR where a count is missing, %BB_STORE_ERROR_REFUSED where it has ended already,
 *   or another error; @run is then as it was
 */
gboolean
bb_book_finish_run (BbBook  *self,
                    BbRun   *run,
                    GError **error)
{
  g_return_val_if_fail (BB_BOOK_IS_USABLE (self) && run != NULL, FALSE);

  return step_on_copy (self, run, finish_run, error);
}

static gboolean
annotate (BbBook        *self,
          BbAnnotation  *annotation,
          GError       **error)
{
  return _bb_book_find_next_number (self, &bb_annotation_table, annotation->run, &annotation->number, error) &&
         _bb_book_save_within (self, &bb_annotation_table, annotation, error);
}

/**
 * bb_book_annotate_run:
 * @self: a book
 * @run: the key of a run
 * @text: what was learned about it
 * @error: return location for a #GError
 *
 * Adds a remark to a run, which stays.
 *
 * Returns: %FALSE with %BB_MODEL_ERROR where the text is empty or too long, or another error
 */
gboolean
bb_book_annotate_run (BbBook      *self,
                      gint64       run,
                      const char  *text,
                      GError     **error)
{
  g_autoptr (BbAnnotation) annotation = NULL;

  g_return_val_if_fail (BB_BOOK_IS_USABLE (self) && text != NULL, FALSE);

  annotation = bb_annotation_new ();
  annotation->run = run;
  annotation->text = g_strdup (text);
  annotation->at = bb_dup_now ();
  annotation->person = self->person;

  return _bb_book_begin (self, error) && _bb_book_end (self, annotate (self, annotation, error), error);
}
