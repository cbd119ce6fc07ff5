/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-job-card-fill"

#include "bb-job-card-fill.h"

#include "bb-evidence-load.h"
#include "bb-job-badge.h"
#include "bb-moment.h"
#include "bb-words.h"

static char *
describe (const BbJobCard *card,
          const char      *today)
{
  const gboolean is_open = card->state == BB_JOB_PLANNED || card->state == BB_JOB_RUNNING;
  g_autofree char *when = is_open ? bb_words_of_due (card->due_at, today) : bb_words_of_day (card->ordered_at);
  g_autofree char *artwork = bb_words_of_file (card->artwork);
  const char *what = card->title != NULL && *card->title != '\0' ? card->title : artwork;

  return *what != '\0' ? g_strjoin (" · ", when, what, NULL) : g_steal_pointer (&when);
}

static GtkWidget *
ensure_badge (BbRow *row)
{
  if (bb_row_get_badge (row) == NULL)
    bb_row_set_badge (row, bb_job_badge_new ());

  return bb_row_get_badge (row);
}

/**
 * bb_job_card_fill:
 * @row: a row
 * @session: the session
 * @record: (type BbJobCard): what to show in it
 *
 * Shows a job in a list: the garment's colour, customer, when it is due, what it is for, how far it has come. A
 * #BbLineFill.
 */
void
bb_job_card_fill (BbRow         *row,
                  BbSession     *session,
                  gconstpointer  record)
{
  const BbJobCard *card = record;
  g_autofree char *today = bb_dup_today ();
  g_autofree char *description = describe (card, today);

  (void) session;

  bb_row_set (row, card->customer, card->code, description);
  bb_row_set_garment (row, card->srgb, BB_SHADE_ANY);
  bb_job_badge_show (BB_JOB_BADGE (ensure_badge (row)), card->state,
                     bb_job_is_overdue (card->state, card->due_at, today));
}
