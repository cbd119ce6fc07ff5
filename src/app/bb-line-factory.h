/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bb-row.h"
#include "bb-session.h"

G_BEGIN_DECLS

/**
 * BbLineFill:
 * @row: the row, which may have shown another line before
 * @session: the session
 * @line: the line to show, of a table as bb_book_get_line_table() gives it
 *
 * Shows a line of a #BbLineList.
 */
typedef void (*BbLineFill) (BbRow         *row,
                            BbSession     *session,
                            gconstpointer  line);

GtkListItemFactory *bb_line_factory_new (BbSession  *session,
                                         BbLineFill  fill);

G_END_DECLS
