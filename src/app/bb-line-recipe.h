/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <adwaita.h>

#include "bb-line-options.h"
#include "bb-session.h"

G_BEGIN_DECLS

/**
 * BbLineRecipe:
 *
 * By which recipe a line of a job is printed: the one that is chosen, and what else there is to choose from, each with
 * its reasons.
 */
#define BB_TYPE_LINE_RECIPE (bb_line_recipe_get_type ())
G_DECLARE_FINAL_TYPE (BbLineRecipe, bb_line_recipe, BB, LINE_RECIPE, AdwBin)

void                bb_line_recipe_set_session  (BbLineRecipe *self,
                                                 BbSession    *session);
void                bb_line_recipe_set_garment  (BbLineRecipe *self,
                                                 gint64        customer,
                                                 gint64        colourway);
void                bb_line_recipe_set_revision (BbLineRecipe *self,
                                                 gint64        revision,
                                                 int           mode_wanted);
const BbLineOption *bb_line_recipe_get_recalled (BbLineRecipe *self);

G_END_DECLS
