/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <adwaita.h>

#include "bb-job-papers.h"
#include "bb-session.h"

G_BEGIN_DECLS

/**
 * BbJobSheetView:
 *
 * What a job takes, to be read at the bench: in all, mix by mix and line by line.
 */
#define BB_TYPE_JOB_SHEET_VIEW (bb_job_sheet_view_get_type ())
G_DECLARE_FINAL_TYPE (BbJobSheetView, bb_job_sheet_view, BB, JOB_SHEET_VIEW, AdwBin)

void bb_job_sheet_view_show (BbJobSheetView    *self,
                             BbSession         *session,
                             const BbJobPapers *papers);

G_END_DECLS
