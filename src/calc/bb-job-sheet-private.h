/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bb-job-sheet.h"

G_BEGIN_DECLS

/* Water from the tap, as the mix calculator takes it where nobody measured it. */
#define BB_SHEET_WATER_C 20.0

void _bb_line_sheet_compute (BbLineSheet       *self,
                             const BbSheetLine *line,
                             const BbJob       *job,
                             const BbShop      *shop);
void _bb_job_sheet_add_mixes (BbJobSheet       *self,
                             const BbJob       *job,
                             const BbSheetLine *lines,
                             guint              n_lines,
                             const BbShop      *shop,
                             const GPtrArray   *stock,
                             const char        *day);

G_END_DECLS
