/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <adwaita.h>

#include "bb-session.h"

G_BEGIN_DECLS

/**
 * BbHistoryView:
 *
 * What the book's log has of one record: when it was written, what changed then, and by whom. The newest first.
 */
#define BB_TYPE_HISTORY_VIEW (bb_history_view_get_type ())
G_DECLARE_FINAL_TYPE (BbHistoryView, bb_history_view, BB, HISTORY_VIEW, GtkBox)

GtkWidget *bb_history_view_new  (void);
void       bb_history_view_show (BbHistoryView *self,
                                 BbSession     *session,
                                 const BbTable *table,
                                 gint64         id);

G_END_DECLS
