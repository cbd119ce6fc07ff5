/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bb-field-row.h"

G_BEGIN_DECLS

/**
 * BbEntryRow:
 *
 * Edits a number, an integer, a line of text, a date, or two numbers that are entered as `a : b`.
 */
#define BB_TYPE_ENTRY_ROW (bb_entry_row_get_type ())
G_DECLARE_FINAL_TYPE (BbEntryRow, bb_entry_row, BB, ENTRY_ROW, BbFieldRow)

G_END_DECLS
