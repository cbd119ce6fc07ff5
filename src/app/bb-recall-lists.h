/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <adwaita.h>

#include "bb-session.h"

G_BEGIN_DECLS

/* More than these nobody looks through: another letter is quicker. */
#define BB_RECALL_LISTS_MOST 1000

/**
 * BbRecallLists:
 *
 * What a search found: recipes and jobs, one list at a time, and a word on what was looked for. A recipe is chosen
 * wherever there is one; a job that is opened is shown on its own page. Signal `chosen`: another recipe is chosen, or
 * the list was made anew.
 */
#define BB_TYPE_RECALL_LISTS (bb_recall_lists_get_type ())
G_DECLARE_FINAL_TYPE (BbRecallLists, bb_recall_lists, BB, RECALL_LISTS, GtkBox)

void   bb_recall_lists_start            (BbRecallLists *self,
                                         BbSession     *session);
void   bb_recall_lists_take             (BbRecallLists *self,
                                         GArray        *recipes,
                                         GArray        *jobs,
                                         gboolean       keep);
void   bb_recall_lists_tell             (BbRecallLists *self,
                                         const char    *typed,
                                         const char    *corrected,
                                         gint64         specimen);
void   bb_recall_lists_keep             (BbRecallLists *self,
                                         gint64         recipe);
gint64 bb_recall_lists_get_chosen       (BbRecallLists *self);
guint  bb_recall_lists_get_n_recipes    (BbRecallLists *self);
guint  bb_recall_lists_get_n_jobs       (BbRecallLists *self);
void   bb_recall_lists_bring_into_sight (BbRecallLists *self);
void   bb_recall_lists_activate         (BbRecallLists *self,
                                         gboolean       open);

G_END_DECLS
