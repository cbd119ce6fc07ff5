/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bb-book.h"

G_BEGIN_DECLS

/**
 * BbCliRecipe:
 * @recipe: (owned): a recipe
 * @revision: (owned): the revision of it that is looked at
 * @standing: (owned) (nullable): where that stands
 * @revisions: (owned) (element-type BbRevision): all its revisions
 *
 * What is told of one recipe.
 */
typedef struct {
  BbRecipe *recipe;
  BbRevision *revision;
  BbStanding *standing;
  GPtrArray *revisions;
} BbCliRecipe;

BbCliRecipe *bb_cli_recipe_load    (BbBook            *book,
                                    const char        *code,
                                    GError           **error);
void         bb_cli_recipe_free    (BbCliRecipe       *self);
char        *bb_cli_recipe_to_text (const BbCliRecipe *self,
                                    BbBook            *book,
                                    GError           **error);
char        *bb_cli_recipe_to_json (const BbCliRecipe *self,
                                    BbBook            *book,
                                    GError           **error);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (BbCliRecipe, bb_cli_recipe_free)

G_END_DECLS
