/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <adwaita.h>

#include "bb-session.h"

G_BEGIN_DECLS

/**
 * BbJobFilter:
 *
 * Narrows the jobs to those that are open, overdue or in one state, and puts what is due first before the others.
 */
#define BB_TYPE_JOB_FILTER (bb_job_filter_get_type ())
G_DECLARE_FINAL_TYPE (BbJobFilter, bb_job_filter, BB, JOB_FILTER, AdwBin)

GArray   *bb_job_filter_find   (BbJobFilter *self,
                                BbSession   *session);
gboolean  bb_job_filter_is_set (BbJobFilter *self);
void      bb_job_filter_clear  (BbJobFilter *self);

G_END_DECLS
