/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <adwaita.h>

#include "bb-session.h"

G_BEGIN_DECLS

/**
 * BbNoRecipesWhy:
 * @BB_NO_RECIPES_YET: the book has none
 * @BB_NO_RECIPES_FOUND: none has the words or passes the filters
 * @BB_NO_RECIPES_BUT_JOBS: none has the words, but jobs have
 *
 * Why there is no recipe to be shown.
 */
typedef enum {
  BB_NO_RECIPES_YET,
  BB_NO_RECIPES_FOUND,
  BB_NO_RECIPES_BUT_JOBS,
} BbNoRecipesWhy;

/**
 * BbNoRecipes:
 *
 * What stands where a recipe would: why there is none, and what to do about it. It brings large icons, which the
 * toolkit draws though they are hidden: who has recipes does not wait for it.
 */
#define BB_TYPE_NO_RECIPES (bb_no_recipes_get_type ())
G_DECLARE_FINAL_TYPE (BbNoRecipes, bb_no_recipes, BB, NO_RECIPES, AdwBin)

void bb_no_recipes_show (BbNoRecipes    *self,
                         BbSession      *session,
                         BbNoRecipesWhy  why);

G_END_DECLS
