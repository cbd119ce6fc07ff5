/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/*
 * Words as the search compares them: without case and accents, so that a mistyped word can be held against those that
 * the book has.
 */

/* A word that is longer is none that a person mistypes. In characters. */
#define BB_WORD_LONGEST 40

GStrv bb_words_fold     (const char *text);
GStrv bb_word_grams     (const char *word);
guint bb_word_distance  (const char *typed,
                         const char *word);
guint bb_word_tolerance (const char *typed);

G_END_DECLS
