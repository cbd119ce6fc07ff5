/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bb-page.h"

G_BEGIN_DECLS

/**
 * BbRecipesPage:
 *
 * Finds the recipe for a garment: a list to search as you type, and the chosen recipe's chain, revisions and
 * evidence. It shows a recipe by its key.
 */
#define BB_TYPE_RECIPES_PAGE (bb_recipes_page_get_type ())
G_DECLARE_FINAL_TYPE (BbRecipesPage, bb_recipes_page, BB, RECIPES_PAGE, BbPage)

G_END_DECLS
