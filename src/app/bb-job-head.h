/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <adwaita.h>

#include "bb-job.h"
#include "bb-session.h"

G_BEGIN_DECLS

/**
 * BbJobHead:
 *
 * How far a job has come and when it is due, with buttons for the steps that the book allows from there.
 */
#define BB_TYPE_JOB_HEAD (bb_job_head_get_type ())
G_DECLARE_FINAL_TYPE (BbJobHead, bb_job_head, BB, JOB_HEAD, AdwBin)

void bb_job_head_show (BbJobHead   *self,
                       BbSession   *session,
                       const BbJob *job);

G_END_DECLS
