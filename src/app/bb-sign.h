/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/**
 * BbSignShape:
 * @BB_SIGN_RING: nothing is decided
 * @BB_SIGN_HALF: under way
 * @BB_SIGN_TICK: good
 * @BB_SIGN_CROSS: not good
 * @BB_SIGN_SLASH: out of use
 */
typedef enum {
  BB_SIGN_RING,
  BB_SIGN_HALF,
  BB_SIGN_TICK,
  BB_SIGN_CROSS,
  BB_SIGN_SLASH,
} BbSignShape;

/**
 * BbSign:
 *
 * A round sign before the word of a state or verdict, in the colour of the text: the shapes differ enough to be told
 * apart without colour. The style sheet gives its size. Decoration: the word always stands beside it.
 */
#define BB_TYPE_SIGN (bb_sign_get_type ())
G_DECLARE_FINAL_TYPE (BbSign, bb_sign, BB, SIGN, GtkWidget)

GtkWidget *bb_sign_new       (void);
void       bb_sign_set_shape (BbSign      *self,
                              BbSignShape  shape);

G_END_DECLS
