/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bb-field-row.h"

G_BEGIN_DECLS

/**
 * BbPickRow:
 *
 * Edits a choice, a flag or a reference to a record, by a drop-down that can be searched.
 */
#define BB_TYPE_PICK_ROW (bb_pick_row_get_type ())
G_DECLARE_FINAL_TYPE (BbPickRow, bb_pick_row, BB, PICK_ROW, BbFieldRow)

G_END_DECLS
