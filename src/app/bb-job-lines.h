/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <adwaita.h>

#include "bb-job-papers.h"
#include "bb-session.h"

G_BEGIN_DECLS

/**
 * BbJobLines:
 *
 * The lines of one job, to be added, edited and struck off.
 */
#define BB_TYPE_JOB_LINES (bb_job_lines_get_type ())
G_DECLARE_FINAL_TYPE (BbJobLines, bb_job_lines, BB, JOB_LINES, GtkBox)

void bb_job_lines_show (BbJobLines        *self,
                        BbSession         *session,
                        const BbJobPapers *papers);

G_END_DECLS
