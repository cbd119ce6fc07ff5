/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <adwaita.h>

#include "bb-session.h"

G_BEGIN_DECLS

/**
 * BbReportWindow:
 *
 * A wash report in the making: which revision or specimen, for whom, what else is to be said, and on what paper, beside
 * the pages as they will be printed or saved.
 */
#define BB_TYPE_REPORT_WINDOW (bb_report_window_get_type ())
G_DECLARE_FINAL_TYPE (BbReportWindow, bb_report_window, BB, REPORT_WINDOW, AdwWindow)

GtkWidget *bb_report_window_new (GtkWindow *parent,
                                 BbSession *session,
                                 gint64     revision,
                                 gint64     wash_test);

G_END_DECLS
