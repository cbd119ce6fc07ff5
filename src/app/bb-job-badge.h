/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <adwaita.h>

#include "bb-badge.h"
#include "bb-job.h"

G_BEGIN_DECLS

/**
 * BbJobBadge:
 *
 * The state of a job as a shape and a word: a ring where it is planned, a half-filled ring while it runs, a disc with
 * a tick when done, a struck ring when cancelled, and a cross and another word while it is overdue.
 */
#define BB_TYPE_JOB_BADGE (bb_job_badge_get_type ())
G_DECLARE_FINAL_TYPE (BbJobBadge, bb_job_badge, BB, JOB_BADGE, BbBadge)

GtkWidget *bb_job_badge_new  (void);
void       bb_job_badge_show (BbJobBadge *self,
                              int         state,
                              gboolean    overdue);

G_END_DECLS
