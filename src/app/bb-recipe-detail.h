/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <adwaita.h>

#include "bb-session.h"

G_BEGIN_DECLS

/**
 * BbRecipeDetail:
 *
 * One recipe: which garment, which revision and where it stands, the chain of settings with what differs from
 * the revision before, the evidence, and two revisions side by side.
 */
#define BB_TYPE_RECIPE_DETAIL (bb_recipe_detail_get_type ())
G_DECLARE_FINAL_TYPE (BbRecipeDetail, bb_recipe_detail, BB, RECIPE_DETAIL, AdwBin)

void bb_recipe_detail_show   (BbRecipeDetail *self,
                              BbSession      *session,
                              gint64          recipe);
void bb_recipe_detail_choose (BbRecipeDetail *self,
                              gint64          revision);

G_END_DECLS
