/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bb-item.h"
#include "bb-session.h"

G_BEGIN_DECLS

/**
 * BbRecipeList:
 *
 * The recipes that a search finds, as a #GListModel of #BbItem with #BbRecipeLine. It holds every key, and loads
 * the lines by pages when they are looked at, so that a book of any size is there at once.
 */
#define BB_TYPE_RECIPE_LIST (bb_recipe_list_get_type ())
G_DECLARE_FINAL_TYPE (BbRecipeList, bb_recipe_list, BB, RECIPE_LIST, GObject)

BbRecipeList *bb_recipe_list_new    (BbSession    *session);
void          bb_recipe_list_search (BbRecipeList *self,
                                     const char   *text);
guint         bb_recipe_list_find   (BbRecipeList *self,
                                     gint64        id);

G_END_DECLS
