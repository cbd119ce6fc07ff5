/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <adwaita.h>

#include "bb-session.h"

G_BEGIN_DECLS

/**
 * BbRunView:
 *
 * One run: by what it was made, from which containers, what was set otherwise, how it went, and remarks. While it runs
 * it can be recorded and finished; then it can only be annotated.
 */
#define BB_TYPE_RUN_VIEW (bb_run_view_get_type ())
G_DECLARE_FINAL_TYPE (BbRunView, bb_run_view, BB, RUN_VIEW, AdwBin)

GtkWidget *bb_run_view_new  (void);
void       bb_run_view_show (BbRunView *self,
                             BbSession *session,
                             gint64     run);

G_END_DECLS
