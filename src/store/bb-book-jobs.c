/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-store"

#include "bb-book-jobs.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#include "bb-book-private.h"
#include "bb-moment.h"
#include "bb-text.h"

/* More digits are a number of the shop's own, and no count of this program's. */
#define MOST_DIGITS 6

/* The highest count among the numbers that begin with a month. */
static gboolean
find_most (BbBook      *self,
           const char  *month,
           gint64      *most,
           GError     **error)
{
  g_autofree char *end = g_strconcat (month, ":", NULL);
  g_autoptr (BbStatement) statement = bb_db_prepare (self->db, "SELECT code FROM job WHERE code > ?1 AND code < ?2",
                                                     error);
  BbStep step = BB_STEP_ROW;

  if (statement == NULL)
    return FALSE;

  /* A colon follows the digits in the order of characters. */
  bb_statement_bind_text (statement, 1, month);
  bb_statement_bind_text (statement, 2, end);
  while ((step = bb_statement_step (statement, error)) == BB_STEP_ROW)
    {
      const char *count = bb_statement_get_text (statement, 0) + strlen (month);

      /* A number of the shop's own that begins alike is no count. */
      if (strspn (count, "0123456789") == strlen (count) && strlen (count) <= MOST_DIGITS)
        *most = MAX (*most, g_ascii_strtoll (count, NULL, 10));
    }

  return step == BB_STEP_DONE;
}

/**
 * bb_book_dup_next_job_code:
 * @self: a book
 * @day: the day of the order, as `YYYY-MM-DD`
 * @error: return location for a #GError
 *
 * Proposes a number for a new job: year, month, and the next count within the month, like `2503-07`.
 *
 * Returns: (transfer full) (nullable): a number that no job has, or %NULL with an error
 */
char *
bb_book_dup_next_job_code (BbBook      *self,
                           const char  *day,
                           GError     **error)
{
  g_autofree char *month = NULL;
  gint64 most = 0;

  g_return_val_if_fail (BB_BOOK_IS_USABLE (self) && bb_text_is_date (day), NULL);

  month = g_strdup_printf ("%.2s%.2s-", day + 2, day + 5);
  if (!find_most (self, month, &most, error))
    return NULL;

  return g_strdup_printf ("%s%02" G_GINT64_FORMAT, month, most + 1);
}

static gboolean
save_line (BbBook     *self,
           BbJobLine  *line,
           GError    **error)
{
  if (line->id != BB_INTEGER_NONE)
    return _bb_book_keep_derived (self, &bb_job_line_table, line, error) &&
           _bb_book_save_within (self, &bb_job_line_table, line, error);

  g_clear_pointer (&line->code, g_free);

  return _bb_book_find_next_number (self, &bb_job_line_table, line->job, &line->number, error) &&
         _bb_book_save_within (self, &bb_job_line_table, line, error);
}

/**
 * bb_book_save_job_line:
 * @self: a book
 * @line: a line; gets its key, number and code
 * @error: return location for a #GError
 *
 * Writes a line as a person does: one without a key becomes its job's next.
 *
 * Returns: %FALSE with %BB_MODEL_ERROR where a value is not allowed, %BB_STORE_ERROR_REFUSED where a line that was run
 *   would become another, or another error; @line is then as it was
 */
gboolean
bb_book_save_job_line (BbBook     *self,
                       BbJobLine  *line,
                       GError    **error)
{
  g_autoptr (BbJobLine) copy = NULL;

  g_return_val_if_fail (BB_BOOK_IS_USABLE (self) && line != NULL, FALSE);

  copy = bb_record_copy (&bb_job_line_table, line);
  if (!_bb_book_begin (self, error) || !_bb_book_end (self, save_line (self, copy, error), error))
    return FALSE;
  _bb_record_copy_derived (&bb_job_line_table, copy, line);

  return TRUE;
}

static gboolean
check_step (BbBook       *self,
            const BbJob  *job,
            BbJobState    state,
            GError      **error)
{
  int before = BB_JOB_PLANNED;

  if (job->state != BB_JOB_CANCELLED)
    before = (int) state;
  else if (!_bb_book_find_state_before (self, &bb_job_table, job->id, BB_JOB_CANCELLED, &before, error))
    return FALSE;
  if (bb_job_state_may_become ((BbJobState) job->state, state) && (int) state == before)
    return TRUE;

  /* Translators: two states of a job, like "Planned" and "Done". */
  g_set_error (error, BB_STORE_ERROR, BB_STORE_ERROR_REFUSED, _("A job cannot go from “%s” to “%s”."),
               bb_choices_get_title (&bb_job_state_choices, job->state),
               bb_choices_get_title (&bb_job_state_choices, (int) state));
  return FALSE;
}

static gboolean
step_to (BbBook     *self,
         BbJob      *job,
         BbJobState  state,
         GError    **error)
{
  if (!check_step (self, job, state, error))
    return FALSE;

  job->state = (int) state;
  g_free (job->since);
  job->since = bb_dup_now ();

  return _bb_book_write_steps (self, &bb_job_table, job, BB_DEED_STATE, error);
}

static gboolean
set_state (BbBook     *self,
           gint64      id,
           BbJobState  state,
           GError    **error)
{
  g_autoptr (BbJob) job = bb_book_load (self, &bb_job_table, id, error);

  return job != NULL && step_to (self, job, state, error);
}

/**
 * bb_book_set_job_state:
 * @self: a book
 * @job: the key of a job
 * @state: the state it shall come to
 * @error: return location for a #GError
 *
 * Moves a job on, as bb_job_state_may_become() allows; a cancelled one only back to the state that it was cancelled
 * in.
 *
 * Returns: %FALSE with %BB_STORE_ERROR_REFUSED where the step is not allowed, or another error
 */
gboolean
bb_book_set_job_state (BbBook      *self,
                       gint64       job,
                       BbJobState   state,
                       GError     **error)
{
  g_return_val_if_fail (BB_BOOK_IS_USABLE (self), FALSE);

  return _bb_book_begin (self, error) && _bb_book_end (self, set_state (self, job, state, error), error);
}

static gboolean
undo_cancellation (BbBook  *self,
                   gint64   id,
                   GError **error)
{
  g_autoptr (BbJob) job = bb_book_load (self, &bb_job_table, id, error);
  int before = BB_JOB_PLANNED;

  if (job == NULL)
    return FALSE;
  if (job->state != BB_JOB_CANCELLED)
    {
      g_set_error_literal (error, BB_STORE_ERROR, BB_STORE_ERROR_REFUSED, _("This job is not cancelled."));
      return FALSE;
    }

  return _bb_book_find_state_before (self, &bb_job_table, id, BB_JOB_CANCELLED, &before, error) &&
         step_to (self, job, (BbJobState) before, error);
}

/**
 * bb_book_undo_cancellation:
 * @self: a book
 * @job: the key of a cancelled job
 * @error: return location for a #GError
 *
 * Takes a job back to the state that it was cancelled in.
 *
 * Returns: %FALSE with %BB_STORE_ERROR_REFUSED where it is not cancelled, or another error
 */
gboolean
bb_book_undo_cancellation (BbBook  *self,
                           gint64   job,
                           GError **error)
{
  g_return_val_if_fail (BB_BOOK_IS_USABLE (self), FALSE);

  return _bb_book_begin (self, error) && _bb_book_end (self, undo_cancellation (self, job, error), error);
}

/* Work that waits stands with the next due first, work that is over with the newest first. */
static const char *
order_of (BbJobState state)
{
  if (state == BB_JOB_PLANNED || state == BB_JOB_RUNNING)
    return "SELECT id FROM job WHERE state = ?1 ORDER BY due_at IS NULL, due_at, id LIMIT ?2";

  return "SELECT id FROM job WHERE state = ?1 ORDER BY id DESC LIMIT ?2";
}

/**
 * bb_book_list_jobs:
 * @self: a book
 * @state: which jobs
 * @limit: how many at most; 0 for all
 * @error: return location for a #GError
 *
 * Returns: (transfer full) (nullable) (element-type gint64): the keys of the jobs in that state: planned and running
 *   ones with the next due first, the others with the newest first; %NULL with an error
 */
GArray *
bb_book_list_jobs (BbBook      *self,
                   BbJobState   state,
                   guint        limit,
                   GError     **error)
{
  g_autoptr (BbStatement) statement = NULL;

  g_return_val_if_fail (BB_BOOK_IS_USABLE (self), NULL);

  statement = bb_db_prepare (self->db, order_of (state), error);
  if (statement == NULL)
    return NULL;
  bb_statement_bind_text (statement, 1, bb_choices_get_key (&bb_job_state_choices, (int) state));
  bb_statement_bind_integer (statement, 2, limit > 0 ? limit : G_MAXINT64);

  return _bb_statement_collect_keys (statement, error);
}

#define OVER "(state IN ('done', 'cancelled'))"

/**
 * bb_book_list_jobs_by_due:
 * @self: a book
 * @states: a bit, 1 << #BbJobState, for each state that the jobs may be in
 * @before: (nullable): a day as `YYYY-MM-DD`; only jobs that have to be ready before it are listed
 * @error: return location for a #GError
 *
 * Returns: (transfer full) (nullable) (element-type gint64): the jobs' keys: of work that waits what has to be ready
 *   first, then what has no day, then work that is over, the newest first; %NULL with an error
 */
GArray *
bb_book_list_jobs_by_due (BbBook      *self,
                          guint        states,
                          const char  *before,
                          GError     **error)
{
  g_autoptr (BbStatement) statement = NULL;
  g_autoptr (GString) keys = g_string_new ("|");

  g_return_val_if_fail (BB_BOOK_IS_USABLE (self), NULL);

  for (guint i = 0; i < bb_job_state_choices.n_items; i++)
    if ((states & (1u << i)) != 0)
      g_string_append_printf (keys, "%s|", bb_choices_get_key (&bb_job_state_choices, (int) i));
  statement = bb_db_prepare (self->db,
                             "SELECT id FROM job WHERE ?1 LIKE '%|' || state || '|%' AND (?2 IS NULL OR due_at < ?2) "
                             "ORDER BY " OVER ", CASE WHEN NOT " OVER " THEN COALESCE (due_at, '9999') END, id DESC",
                             error);
  if (statement == NULL)
    return NULL;
  bb_statement_bind_text (statement, 1, keys->str);
  bb_statement_bind_text (statement, 2, before);

  return _bb_statement_collect_keys (statement, error);
}

/**
 * bb_book_list_job_lines:
 * @self: a book
 * @job: the key of a job
 * @error: return location for a #GError
 *
 * Returns: (transfer full) (nullable) (element-type gint64): the keys of the job's lines in their order, those struck
 *   off left out; %NULL with an error
 */
GArray *
bb_book_list_job_lines (BbBook  *self,
                        gint64   job,
                        GError **error)
{
  g_autoptr (BbStatement) statement = NULL;

  g_return_val_if_fail (BB_BOOK_IS_USABLE (self), NULL);

  statement = bb_db_prepare (self->db, "SELECT id FROM job_line WHERE job = ?1 AND withdrawn_at IS NULL "
                             "ORDER BY number", error);
  if (statement == NULL)
    return NULL;
  bb_statement_bind_integer (statement, 1, job);

  return _bb_statement_collect_keys (statement, error);
}
