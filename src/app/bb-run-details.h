/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "bb-run.h"
#include "bb-session.h"

G_BEGIN_DECLS

/**
 * BbRunDetails:
 *
 * What a run left behind, in words: what was taken from which container, weigh-ins, what was set otherwise than the
 * recipe says, and remarks. A part that nothing is known of is not there.
 */
#define BB_TYPE_RUN_DETAILS (bb_run_details_get_type ())
G_DECLARE_FINAL_TYPE (BbRunDetails, bb_run_details, BB, RUN_DETAILS, GtkBox)

void bb_run_details_show (BbRunDetails     *self,
                          BbSession        *session,
                          const BbRun      *run,
                          const BbRevision *revision,
                          const GPtrArray  *entries,
                          const GPtrArray  *remarks);

G_END_DECLS
