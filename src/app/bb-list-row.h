/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bb-field-row.h"

G_BEGIN_DECLS

/**
 * BbListRow:
 *
 * Edits a list of small records, one line each with an editor for every field of the list's table, and buttons
 * to add and take away a line.
 */
#define BB_TYPE_LIST_ROW (bb_list_row_get_type ())
G_DECLARE_FINAL_TYPE (BbListRow, bb_list_row, BB, LIST_ROW, BbFieldRow)

void bb_list_row_set_fresh (BbListRow     *self,
                            gconstpointer  item);

G_END_DECLS
