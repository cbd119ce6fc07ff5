/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bb-book.h"

G_BEGIN_DECLS

/* As many recipes as a shop will never have. */
#define LARGE_BOOK_RECIPES 20000

void        large_book_fill      (BbBook *book,
                                  guint   n_recipes);
const char *large_book_pick_word (GRand  *rand);

G_END_DECLS
