/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <adwaita.h>

#include "bb-badge.h"
#include "bb-recipe.h"

G_BEGIN_DECLS

/**
 * BbStateBadge:
 *
 * The state of a revision as a shape and a word: a ring for a draft, a half-filled ring on trial, a filled disc
 * with a tick when proven, a struck ring when withdrawn.
 */
#define BB_TYPE_STATE_BADGE (bb_state_badge_get_type ())
G_DECLARE_FINAL_TYPE (BbStateBadge, bb_state_badge, BB, STATE_BADGE, BbBadge)

GtkWidget *bb_state_badge_new       (void);
void       bb_state_badge_set_state (BbStateBadge *self,
                                     BbState       state);

G_END_DECLS
