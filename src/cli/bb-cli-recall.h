/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bb-near-recipes.h"
#include "bb-recall.h"

G_BEGIN_DECLS

/**
 * BbCliAsked:
 * @text: (owned): words, or nothing
 * @narrow: (owned): the filters
 * @nearest: (owned) (nullable): a garment's code, with its colour after a slash
 * @limit: at most so many of each; 0 for as many as a person reads through
 *
 * What `recall` is asked for.
 */
typedef struct {
  char *text;
  BbNarrow *narrow;
  char *nearest;
  guint limit;
} BbCliAsked;

/**
 * BbCliFound:
 * @recalled: (owned) (nullable): what words and filters find; %NULL where nobody asked
 * @recipes: (owned) (nullable) (element-type BbRecipeLine): the recipes of it
 * @jobs: (owned) (nullable) (element-type BbJobCard): the jobs of it
 * @near: (owned) (nullable): the recipes nearest to a garment; %NULL where nobody asked
 * @near_lines: (owned) (nullable) (element-type BbRecipeLine): a line of each
 *
 * What `recall` finds, loaded.
 */
typedef struct {
  BbRecalled *recalled;
  GPtrArray *recipes;
  GPtrArray *jobs;
  BbNearRecipes *near;
  GPtrArray *near_lines;
} BbCliFound;

void     bb_cli_asked_clear   (BbCliAsked        *self);
gboolean bb_cli_find          (BbBook            *book,
                               const BbCliAsked  *asked,
                               BbCliFound        *found,
                               GError           **error);
void     bb_cli_found_clear   (BbCliFound        *self);
char    *bb_cli_found_to_json (const BbCliFound  *self,
                               BbBook            *book,
                               GError           **error);
char    *bb_cli_found_to_text (const BbCliFound  *self,
                               BbBook            *book,
                               const char        *asked,
                               GError           **error);

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (BbCliAsked, bb_cli_asked_clear)
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (BbCliFound, bb_cli_found_clear)

G_END_DECLS
