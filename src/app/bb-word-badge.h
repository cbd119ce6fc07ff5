/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bb-badge.h"

G_BEGIN_DECLS

/**
 * BbTone:
 * @BB_TONE_PLAIN: nothing to do
 * @BB_TONE_GOOD: as it should be
 * @BB_TONE_SOON: something has to be done soon
 * @BB_TONE_BAD: not to be used as it is
 * @BB_TONE_GONE: out of use
 *
 * How urgent a word is.
 */
typedef enum {
  BB_TONE_PLAIN,
  BB_TONE_GOOD,
  BB_TONE_SOON,
  BB_TONE_BAD,
  BB_TONE_GONE,
} BbTone;

/**
 * BbWordBadge:
 *
 * How a thing stands: a word, and a sign whose shape and colour say how urgent it is.
 */
#define BB_TYPE_WORD_BADGE (bb_word_badge_get_type ())
G_DECLARE_FINAL_TYPE (BbWordBadge, bb_word_badge, BB, WORD_BADGE, BbBadge)

GtkWidget *bb_word_badge_new (void);
void       bb_word_badge_say (BbWordBadge *self,
                              BbTone       tone,
                              const char  *text);

G_END_DECLS
