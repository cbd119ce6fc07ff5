/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <adwaita.h>

#include "bb-session.h"

G_BEGIN_DECLS

/**
 * BbRunPanel:
 *
 * The runs of one job: how far each of its lines has come, a button to start the next run of it, and every run so far.
 */
#define BB_TYPE_RUN_PANEL (bb_run_panel_get_type ())
G_DECLARE_FINAL_TYPE (BbRunPanel, bb_run_panel, BB, RUN_PANEL, GtkBox)

GtkWidget *bb_run_panel_new  (void);
void       bb_run_panel_show (BbRunPanel *self,
                              BbSession  *session,
                              gint64      job);

G_END_DECLS
