/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-session"

#include "bb-book-jobs.h"
#include "bb-session.h"

typedef struct {
  gint64 job;
  BbJobState state;
} Step;

static gboolean
write_step (BbBook   *book,
            gpointer  data,
            GError  **error)
{
  const Step *self = data;

  return bb_book_set_job_state (book, self->job, self->state, error);
}

/**
 * bb_session_set_job_state:
 * @self: a session
 * @job: key of a job
 * @state: the state that it shall come to
 *
 * Moves a job on. A refusal is told to the person.
 */
void
bb_session_set_job_state (BbSession  *self,
                          gint64      job,
                          BbJobState  state)
{
  Step *step = NULL;

  g_return_if_fail (BB_IS_SESSION (self));

  step = g_new0 (Step, 1);
  *step = (Step) { job, state };
  bb_session_write (self, write_step, step, g_free);
}
