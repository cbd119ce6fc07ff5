/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <adwaita.h>

#include "bb-badge.h"
#include "bb-lines.h"
#include "bb-wash-verdict.h"

G_BEGIN_DECLS

/**
 * BbVerdictBadge:
 *
 * How a specimen stands, as a sign and words: a tick and how far it was washed, a cross and where it failed, or
 * a half circle and how far it has come, or when it is due.
 */
#define BB_TYPE_VERDICT_BADGE (bb_verdict_badge_get_type ())
G_DECLARE_FINAL_TYPE (BbVerdictBadge, bb_verdict_badge, BB, VERDICT_BADGE, BbBadge)

GtkWidget *bb_verdict_badge_new        (void);
void       bb_verdict_badge_show       (BbVerdictBadge   *self,
                                        const BbWashLine *line);
void       bb_verdict_badge_show_due   (BbVerdictBadge   *self,
                                        const BbWashLine *line);
void       bb_verdict_badge_show_whole (BbVerdictBadge   *self,
                                        const BbWashLine *line);

G_END_DECLS
