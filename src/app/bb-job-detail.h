/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <adwaita.h>

#include "bb-session.h"

G_BEGIN_DECLS

/**
 * BbJobDetail:
 *
 * One job: how far it has come, its lines, and what it takes. What else belongs to a job is added as a further page.
 */
#define BB_TYPE_JOB_DETAIL (bb_job_detail_get_type ())
G_DECLARE_FINAL_TYPE (BbJobDetail, bb_job_detail, BB, JOB_DETAIL, AdwBin)

GtkWidget *bb_job_detail_new      (void);
void       bb_job_detail_show     (BbJobDetail *self,
                                   BbSession   *session,
                                   gint64       job);
void       bb_job_detail_add_page (BbJobDetail *self,
                                   GtkWidget   *page,
                                   const char  *name,
                                   const char  *title);

G_END_DECLS
