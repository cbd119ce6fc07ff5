/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <adwaita.h>

#include "bb-session.h"

G_BEGIN_DECLS

/**
 * BbJobSheetWindow:
 *
 * The sheet of a job as it goes to the bench on paper: its pages, to be printed or saved.
 */
#define BB_TYPE_JOB_SHEET_WINDOW (bb_job_sheet_window_get_type ())
G_DECLARE_FINAL_TYPE (BbJobSheetWindow, bb_job_sheet_window, BB, JOB_SHEET_WINDOW, AdwWindow)

GtkWidget *bb_job_sheet_window_new (GtkWindow   *parent,
                                    BbSession   *session,
                                    const BbJob *job);

G_END_DECLS
