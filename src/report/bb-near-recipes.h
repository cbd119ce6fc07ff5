/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bb-known-recipes.h"
#include "bb-nearest.h"

G_BEGIN_DECLS

/**
 * BbNearRecipes:
 * @blank: the garment that is to be printed
 * @colourway: (nullable): its colour, where that is told
 * @recipes: (element-type BbKnownRecipe): the recipes nearest to it, the nearest first
 *
 * What there is to go by for a garment that nobody has printed. Pages and the command line both take it from here. It
 * owns all.
 */
typedef struct {
  BbBlank *blank;
  BbColourway *colourway;
  GPtrArray *recipes;

  /*< private >*/
  BbNearestIn *in;
  BbNearestOut *out;
} BbNearRecipes;

BbNearRecipes *bb_near_recipes_load            (BbBook               *book,
                                                gint64                blank,
                                                gint64                colourway,
                                                guint                 limit,
                                                GError              **error);
void           bb_near_recipes_free            (BbNearRecipes        *self);
double         bb_near_recipes_get_distance    (const BbNearRecipes  *self,
                                                guint                 position);
gboolean       bb_near_recipes_is_same_garment (const BbNearRecipes  *self,
                                                guint                 position);
char          *bb_near_recipes_dup_reasons     (const BbNearRecipes  *self,
                                                guint                 position,
                                                const BbUnitContext  *context);
gboolean       bb_near_recipes_needs_colour    (const BbNearRecipes  *self);
gboolean       bb_near_recipes_can_propose     (const BbNearRecipes  *self);
int            bb_near_recipes_get_shade       (const BbNearRecipes  *self);
BbRevision    *bb_near_recipes_propose         (const BbNearRecipes  *self,
                                                BbBook               *book,
                                                const BbUnitContext  *context,
                                                GError              **error);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (BbNearRecipes, bb_near_recipes_free)

G_END_DECLS
