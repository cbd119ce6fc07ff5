/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gio/gio.h>

#include "bb-session.h"

G_BEGIN_DECLS

/**
 * BbLineList:
 *
 * The records of one table that a search finds, as a #GListModel. It holds every key, and loads what is shown of the
 * records a page at a time when a row asks for it, so that a book of any size is there at once.
 *
 * An item is a place in the list, and not a record: another search puts other records into the same places, and says
 * so by #BbLineList::reloaded. A view keeps its rows then, and looks at none that nobody sees.
 */
#define BB_TYPE_LINE_LIST (bb_line_list_get_type ())
G_DECLARE_FINAL_TYPE (BbLineList, bb_line_list, BB, LINE_LIST, GObject)

BbLineList   *bb_line_list_new          (BbSession     *session,
                                         const BbTable *table);
BbSession    *bb_line_list_get_session  (BbLineList    *self);
const BbTable *bb_line_list_get_line_table (BbLineList *self);
void          bb_line_list_search       (BbLineList    *self,
                                         const BbQuery *query);
void          bb_line_list_take         (BbLineList    *self,
                                         GArray        *ids);
gint64        bb_line_list_get_id       (BbLineList    *self,
                                         guint          position);
guint         bb_line_list_find         (BbLineList    *self,
                                         gint64         id);
gconstpointer bb_line_list_load         (BbLineList    *self,
                                         guint          position);
guint         bb_line_list_get_n_loaded (BbLineList    *self);

G_END_DECLS
