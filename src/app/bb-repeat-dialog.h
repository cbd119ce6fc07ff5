/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <adwaita.h>

#include "bb-session.h"

G_BEGIN_DECLS

/**
 * BbRepeatDialog:
 *
 * Opens an old job as a new one: of each line it lists what has changed since it was printed, and asks by which
 * revision it shall be printed now. The old one is chosen until a person says otherwise; where that was withdrawn or
 * followed by another, a person has to say.
 */
#define BB_TYPE_REPEAT_DIALOG (bb_repeat_dialog_get_type ())
G_DECLARE_FINAL_TYPE (BbRepeatDialog, bb_repeat_dialog, BB, REPEAT_DIALOG, AdwWindow)

void bb_repeat_dialog_present (GtkWidget *parent,
                               BbSession *session,
                               gint64     job_id);

G_END_DECLS
