/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <adwaita.h>

#include "bb-job-sheet.h"
#include "bb-session.h"

G_BEGIN_DECLS

/**
 * BbLineSheetCard:
 *
 * What one line of a job takes: its box, what a garment shows on the scale, pretreat, cost and time.
 */
#define BB_TYPE_LINE_SHEET_CARD (bb_line_sheet_card_get_type ())
G_DECLARE_FINAL_TYPE (BbLineSheetCard, bb_line_sheet_card, BB, LINE_SHEET_CARD, AdwBin)

GtkWidget *bb_line_sheet_card_new (BbSession         *session,
                                   const BbSheetLine *line,
                                   const BbLineSheet *sheet);

G_END_DECLS
