/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bb-field-row.h"

G_BEGIN_DECLS

/**
 * BbQuickRow:
 *
 * Edits a field that is entered by one key. Where the table has the same field measured by an instrument, that value is
 * marked.
 */
#define BB_TYPE_QUICK_ROW (bb_quick_row_get_type ())
G_DECLARE_FINAL_TYPE (BbQuickRow, bb_quick_row, BB, QUICK_ROW, BbFieldRow)

G_END_DECLS
