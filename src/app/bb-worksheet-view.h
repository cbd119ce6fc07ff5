/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <adwaita.h>

#include "bb-session.h"
#include "bb-worksheet.h"

G_BEGIN_DECLS

/**
 * BbWorksheetView:
 *
 * The worksheet of a mix in large figures: what to weigh out first, then the split, then where it comes from.
 */
#define BB_TYPE_WORKSHEET_VIEW (bb_worksheet_view_get_type ())
G_DECLARE_FINAL_TYPE (BbWorksheetView, bb_worksheet_view, BB, WORKSHEET_VIEW, AdwBin)

void bb_worksheet_view_show         (BbWorksheetView     *self,
                                     BbSession           *session,
                                     const BbWorksheetIn *in,
                                     const BbWorksheet   *sheet,
                                     const char          *container);
void bb_worksheet_view_set_pretreat (BbWorksheetView     *self,
                                     BbSession           *session,
                                     gint64               pretreat);
void bb_worksheet_view_show_empty   (BbWorksheetView     *self,
                                     const char          *text);

G_END_DECLS
