/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <adwaita.h>

#include "bb-job-sheet.h"
#include "bb-session.h"

G_BEGIN_DECLS

/**
 * BbJobLineRow:
 *
 * One line of a job: the garment and its sizes, the artwork and its size, and by which recipe it is printed and why.
 */
#define BB_TYPE_JOB_LINE_ROW (bb_job_line_row_get_type ())
G_DECLARE_FINAL_TYPE (BbJobLineRow, bb_job_line_row, BB, JOB_LINE_ROW, AdwBin)

GtkWidget *bb_job_line_row_new         (BbSession         *session,
                                        const BbSheetLine *line,
                                        gboolean           is_fixed);
char      *bb_job_line_row_dup_title   (BbSession         *session,
                                        const BbSheetLine *line);
char      *bb_job_line_row_dup_caution (BbSession         *session,
                                        const BbSheetLine *line);

G_END_DECLS
