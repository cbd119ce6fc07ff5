/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <adwaita.h>

#include "bb-preview.h"

G_BEGIN_DECLS

/**
 * BbScanPart:
 * @BB_SCAN_PART_SUBJECT: the print, or the fabric beside it: what is graded
 * @BB_SCAN_PART_PATCH: the patch that shows whether the scanner drifted
 *
 * What a rectangle on a scan is drawn around.
 */
typedef enum {
  BB_SCAN_PART_SUBJECT,
  BB_SCAN_PART_PATCH,
  BB_N_SCAN_PARTS
} BbScanPart;

/**
 * BbScanArea:
 *
 * A scan with a rectangle for each part. The rectangle of the part at hand is drawn anew by dragging. With the
 * keyboard, Return sets the first in the middle, arrows move it, Shift and arrows change its size, and Delete takes
 * that of the patch away.
 * Emits `changed` when a rectangle has come to rest.
 *
 * Rectangles are in pixels of the picture; a width of 0 means that there is none.
 */
#define BB_TYPE_SCAN_AREA (bb_scan_area_get_type ())
G_DECLARE_FINAL_TYPE (BbScanArea, bb_scan_area, BB, SCAN_AREA, GtkWidget)

void         bb_scan_area_set_preview   (BbScanArea         *self,
                                         const BbPreview    *preview);
void         bb_scan_area_set_part      (BbScanArea         *self,
                                         BbScanPart          part);
void         bb_scan_area_set_rectangle (BbScanArea         *self,
                                         BbScanPart          part,
                                         const GdkRectangle *rectangle);
GdkRectangle bb_scan_area_get_rectangle (BbScanArea         *self,
                                         BbScanPart          part);

G_END_DECLS
