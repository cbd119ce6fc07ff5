/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bb-scan-area.h"
#include "bb-scan.h"

G_BEGIN_DECLS

/* The rectangles of a scan: those that the book has, and those that a person draws. */

void bb_scan_rectangles_show (const BbScan *scan,
                              BbScanArea   *area);
void bb_scan_rectangles_take (BbScan       *scan,
                              BbScanArea   *area);

G_END_DECLS
