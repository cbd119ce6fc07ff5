/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bb-item.h"
#include "bb-session.h"

G_BEGIN_DECLS

/**
 * BbLineList:
 *
 * The records of one table that a search finds, as a #GListModel of #BbItem with what a list shows of them: see
 * bb_book_get_line_table(). It holds every key, and loads the lines by pages when they are looked at, so that a book
 * of any size is there at once.
 *
 * A #GtkSingleSelection that has a selected item looks through every line when the list changes: take its selection
 * away before a search.
 */
#define BB_TYPE_LINE_LIST (bb_line_list_get_type ())
G_DECLARE_FINAL_TYPE (BbLineList, bb_line_list, BB, LINE_LIST, GObject)

BbLineList *bb_line_list_new            (BbSession     *session,
                                         const BbTable *table);
void        bb_line_list_search         (BbLineList    *self,
                                         const BbQuery *query);
guint       bb_line_list_find           (BbLineList    *self,
                                         gint64         id);
guint       bb_line_list_get_n_loaded   (BbLineList    *self);

G_END_DECLS
