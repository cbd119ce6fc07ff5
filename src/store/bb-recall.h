/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bb-book.h"

G_BEGIN_DECLS

/**
 * BbRecall:
 * @text: (nullable): words, or their beginnings, or what a scanner typed from a label
 * @narrow: (nullable): what recipes and jobs are narrowed by
 * @colourways: (nullable) (element-type gint64): keys of garments in a colour, the likest first; what is found is then
 *   on one of them, and stands in their order
 * @shades: with @colourways, which shades recipes for several colours may be for, as in #BbQuery
 * @withdrawn: whether recipes that are withdrawn are wanted
 * @limit: how many recipes and how many jobs at most; 0 for all
 *
 * What a person wants to be reminded of.
 */
typedef struct {
  const char *text;
  const BbNarrow *narrow;
  const GArray *colourways;
  guint shades;
  BbWithdrawn withdrawn;
  guint limit;
} BbRecall;

/**
 * BbRecalled:
 * @table: (nullable): the table of the very thing that the text names, as a label or by its whole code
 * @id: its key
 * @specimen: key of the specimen whose whole code the text is, also where a job has the same; 0 for none
 * @recipes: (element-type gint64): keys of recipes, the newest first
 * @jobs: (element-type gint64): keys of jobs, the newest first
 * @recipe_colourways: (element-type gint64): for each recipe the garment of @colourways that it was found by, or 0
 * @job_colourways: (element-type gint64): the same for each job
 * @corrected: (nullable): what was looked for instead, where nothing has the words that were typed
 *
 * What a book remembers. It owns all.
 */
typedef struct {
  const BbTable *table;
  gint64 id;
  gint64 specimen;
  GArray *recipes;
  GArray *jobs;
  GArray *recipe_colourways;
  GArray *job_colourways;
  char *corrected;
} BbRecalled;

BbRecalled *bb_book_recall         (BbBook         *self,
                                    const BbRecall *recall,
                                    GError        **error);
void        bb_recalled_free       (BbRecalled     *self);
GPtrArray  *bb_book_correct_words  (BbBook         *self,
                                    const char     *text,
                                    guint           limit,
                                    GError        **error);
gint64      bb_book_find_last_revision (BbBook     *self,
                                    gint64          customer,
                                    gint64          colourway,
                                    gint64         *run,
                                    GError        **error);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (BbRecalled, bb_recalled_free)

G_END_DECLS
