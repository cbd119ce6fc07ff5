/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <adwaita.h>

#include "bb-job-sheet.h"
#include "bb-session.h"

G_BEGIN_DECLS

/**
 * BbMixCard:
 *
 * One mix of a job: what to pour together, from which containers, and what to look at before.
 */
#define BB_TYPE_MIX_CARD (bb_mix_card_get_type ())
G_DECLARE_FINAL_TYPE (BbMixCard, bb_mix_card, BB, MIX_CARD, AdwBin)

GtkWidget *bb_mix_card_new (BbSession        *session,
                            const BbMixSheet *mix);

G_END_DECLS
