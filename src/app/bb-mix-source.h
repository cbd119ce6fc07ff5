/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "bb-session.h"

G_BEGIN_DECLS

/**
 * BbMixSource:
 *
 * The recipe that a mix takes its figures from: its garment, its revision and the state of that, and what to mind
 * before an order is sprayed by it. Hidden where the figures are typed without a recipe.
 */
#define BB_TYPE_MIX_SOURCE (bb_mix_source_get_type ())
G_DECLARE_FINAL_TYPE (BbMixSource, bb_mix_source, BB, MIX_SOURCE, GtkBox)

void               bb_mix_source_show          (BbMixSource      *self,
                                                BbSession        *session,
                                                const BbRevision *revision);
void               bb_mix_source_remark        (BbMixSource      *self,
                                                const char       *text);
const BbRecipe    *bb_mix_source_get_recipe    (BbMixSource      *self);
const BbColourway *bb_mix_source_get_colourway (BbMixSource      *self);

G_END_DECLS
