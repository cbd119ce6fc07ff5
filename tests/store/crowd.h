/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

#define CROWD_RECIPES 200

/*
 * Makes a book with @n blanks of one colour each, @n supplies, and @n wash tests with two readings each of
 * CROWD_RECIPES recipes: by plain SQL, so that a large one is there in a second or two. All words are invented, and
 * each book is the same.
 */
void crowd_make (const char *path,
                 guint       n);

G_END_DECLS
