/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "bb-run.h"
#include "bb-session.h"

G_BEGIN_DECLS

/**
 * BbRunTake:
 *
 * Enters what a run takes from a container. What is half typed stays until it is entered, or another run is shown. Its
 * action is `take.enter`.
 */
#define BB_TYPE_RUN_TAKE (bb_run_take_get_type ())
G_DECLARE_FINAL_TYPE (BbRunTake, bb_run_take, BB, RUN_TAKE, GtkBox)

void bb_run_take_show (BbRunTake        *self,
                       BbSession        *session,
                       const BbRun      *run,
                       const BbRevision *revision,
                       guint             n_entries);

G_END_DECLS
