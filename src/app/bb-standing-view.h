/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "bb-evidence.h"

G_BEGIN_DECLS

/**
 * BbStandingView:
 *
 * What there is to know of a revision before a machine is set by it: how it stands, since when and on whose word; what
 * is known of its washes, which failed, and what a signature still takes; and why it was written.
 */
#define BB_TYPE_STANDING_VIEW (bb_standing_view_get_type ())
G_DECLARE_FINAL_TYPE (BbStandingView, bb_standing_view, BB, STANDING_VIEW, GtkBox)

void bb_standing_view_show (BbStandingView   *self,
                            BbSession        *session,
                            const BbRevision *revision,
                            const BbRevision *newest,
                            BbEvidence       *evidence);

G_END_DECLS
