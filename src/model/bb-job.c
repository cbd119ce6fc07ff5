/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-model"

#include "bb-job.h"

#include <string.h>

#include "bb-error.h"

BB_DEFINE_CHOICES (bb_job_state, "job state", BB_JOB_STATE_CHOICES);

static gboolean
check_job (gconstpointer record,
           GError      **error)
{
  const BbJob *self = record;

  if (self->due_at != NULL && self->ordered_at != NULL && strncmp (self->due_at, self->ordered_at, 10) < 0)
    return bb_refuse_value (error, _("due_at: the job is due before it was ordered."));

  return TRUE;
}

/**
 * bb_job_state_may_become:
 * @from: the state that a job is in
 * @to: the state wanted
 *
 * A planned job runs and is done, and either can be cancelled. A job that was called done too early runs again. A
 * cancellation can be undone to the state before it.
 *
 * Returns: %TRUE if the step is allowed
 */
gboolean
bb_job_state_may_become (BbJobState from,
                         BbJobState to)
{
  switch (from)
    {
    case BB_JOB_PLANNED:
      return to == BB_JOB_RUNNING || to == BB_JOB_CANCELLED;
    case BB_JOB_RUNNING:
      return to == BB_JOB_DONE || to == BB_JOB_CANCELLED;
    case BB_JOB_DONE:
      return to == BB_JOB_RUNNING;
    case BB_JOB_CANCELLED:
      return to != BB_JOB_CANCELLED;
    default:
      g_return_val_if_reached (FALSE);
    }
}

/**
 * bb_job_state_is_over:
 * @state: a job's #BbJobState
 *
 * Returns: %TRUE where nothing more is done on the job: what it holds is the record of what was ordered and printed
 */
gboolean
bb_job_state_is_over (int state)
{
  return state == BB_JOB_DONE || state == BB_JOB_CANCELLED;
}

/**
 * bb_job_is_overdue:
 * @state: a job's #BbJobState
 * @due_at: (nullable): when it has to be ready
 * @today: this day, as an ISO date
 *
 * Returns: %TRUE if the job waits or runs and its day is past
 */
gboolean
bb_job_is_overdue (int         state,
                   const char *due_at,
                   const char *today)
{
  g_return_val_if_fail (today != NULL, FALSE);

  return (state == BB_JOB_PLANNED || state == BB_JOB_RUNNING) && due_at != NULL && *due_at != '\0' &&
         strncmp (due_at, today, 10) < 0;
}

BB_DEFINE_TABLE (BbCustomer, bb_customer, "customer", N_("Customer"), BB_CUSTOMER_FIELDS, NULL)
BB_DEFINE_TABLE (BbJob, bb_job, "job", N_("Job"), BB_JOB_FIELDS, check_job)
BB_DEFINE_TABLE (BbJobLine, bb_job_line, "job_line", N_("Line of a job"), BB_JOB_LINE_FIELDS, NULL)
