/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <adwaita.h>

#include "bb-session.h"

G_BEGIN_DECLS

/**
 * BbRecallPane:
 *
 * One search over recipes and jobs, what it is narrowed by, and the two lists of what it finds. A recipe is chosen
 * wherever there is one; a job that is opened is shown on its own page. Words that may be mistyped are read as words
 * that the book has, and it says so.
 */
#define BB_TYPE_RECALL_PANE (bb_recall_pane_get_type ())
G_DECLARE_FINAL_TYPE (BbRecallPane, bb_recall_pane, BB, RECALL_PANE, AdwBin)

void        bb_recall_pane_start       (BbRecallPane *self,
                                        BbSession    *session);
void        bb_recall_pane_refresh     (BbRecallPane *self);
void        bb_recall_pane_show        (BbRecallPane *self,
                                        gint64        recipe);
gint64      bb_recall_pane_get_chosen  (BbRecallPane *self);
guint       bb_recall_pane_get_n_found (BbRecallPane *self);
guint       bb_recall_pane_get_n_jobs  (BbRecallPane *self);
const char *bb_recall_pane_get_text    (BbRecallPane *self);
gboolean    bb_recall_pane_is_narrowed (BbRecallPane *self);
void        bb_recall_pane_focus       (BbRecallPane *self);

G_END_DECLS
