/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <adwaita.h>

#include "bb-scan.h"
#include "bb-session.h"

G_BEGIN_DECLS

/**
 * BbScanSide:
 *
 * One scan of a specimen: its picture, the rectangles on it, and the colours within these. It is chosen as a file, or
 * dropped, and stored once it is measured.
 */
#define BB_TYPE_SCAN_SIDE (bb_scan_side_get_type ())
G_DECLARE_FINAL_TYPE (BbScanSide, bb_scan_side, BB, SCAN_SIDE, GtkBox)

void bb_scan_side_show      (BbScanSide   *self,
                             BbSession    *session,
                             const char   *title,
                             const BbScan *scan);
void bb_scan_side_take_file (BbScanSide   *self,
                             GFile        *file);

G_END_DECLS
