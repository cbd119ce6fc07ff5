/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <adwaita.h>

#include "bb-repeat-load.h"
#include "bb-trace.h"

G_BEGIN_DECLS

/**
 * BbRepeatCard:
 *
 * One line of a job that is to be repeated: what has changed since, and the choice of what to print it by.
 */
#define BB_TYPE_REPEAT_CARD (bb_repeat_card_get_type ())
G_DECLARE_FINAL_TYPE (BbRepeatCard, bb_repeat_card, BB, REPEAT_CARD, AdwBin)

GtkWidget    *bb_repeat_card_new        (const BbRepeatPart *part);
BbRepeatLine  bb_repeat_card_get_choice (BbRepeatCard   *self);

G_END_DECLS
