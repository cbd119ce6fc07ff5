/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bb-field-row.h"

G_BEGIN_DECLS

/**
 * BbNoteRow:
 *
 * Edits a text of several lines. Tab leaves it, as it leaves every other field.
 */
#define BB_TYPE_NOTE_ROW (bb_note_row_get_type ())
G_DECLARE_FINAL_TYPE (BbNoteRow, bb_note_row, BB, NOTE_ROW, BbFieldRow)

G_END_DECLS
