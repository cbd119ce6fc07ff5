/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <adwaita.h>

#include "bb-session.h"

G_BEGIN_DECLS

/**
 * BbChainView:
 *
 * A revision as one vertical line with five stations: pretreat, dry, print, cure, proof.
 */
#define BB_TYPE_CHAIN_VIEW (bb_chain_view_get_type ())
G_DECLARE_FINAL_TYPE (BbChainView, bb_chain_view, BB, CHAIN_VIEW, GtkBox)

void bb_chain_view_set_last (BbChainView      *self,
                             BbStation         last);
void bb_chain_view_show     (BbChainView      *self,
                             BbSession        *session,
                             const BbRevision *revision,
                             const BbRevision *before);

G_END_DECLS
