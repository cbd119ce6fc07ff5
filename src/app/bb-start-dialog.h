/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <adwaita.h>

#include "bb-session.h"

G_BEGIN_DECLS

/**
 * BbStartDialog:
 *
 * Asks who prints and on which machines before a run begins, and says which of them are due for calibration and from
 * which containers the job's sheet takes. What several machines could do is left open.
 */
#define BB_TYPE_START_DIALOG (bb_start_dialog_get_type ())
G_DECLARE_FINAL_TYPE (BbStartDialog, bb_start_dialog, BB, START_DIALOG, AdwWindow)

void bb_start_dialog_present (GtkWidget *parent,
                           BbSession *session,
                           gint64     job,
                           gint64     line);

G_END_DECLS
