/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bb-line-list.h"
#include "bb-row.h"

G_BEGIN_DECLS

/**
 * BbLineFill:
 * @row: the row, which may have shown another record before
 * @session: the session
 * @record: what to show, of a table as bb_book_get_line_table() gives it
 *
 * Shows a line of a #BbLineList in a row.
 */
typedef void (*BbLineFill) (BbRow         *row,
                            BbSession     *session,
                            gconstpointer  record);

GtkListItemFactory *bb_line_factory_new (BbLineList *lines,
                                         BbLineFill  fill);

G_END_DECLS
