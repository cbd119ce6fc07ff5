/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-scan-rectangles"

#include "bb-scan-rectangles.h"

/**
 * bb_scan_rectangles_show:
 * @scan: a scan
 * @area: its picture
 *
 * Draws the rectangles that were measured on a scan, and takes away those that were not.
 */
void
bb_scan_rectangles_show (const BbScan *scan,
                         BbScanArea   *area)
{
  GdkRectangle none = { 0 };
  GdkRectangle subject = { 0 };
  GdkRectangle patch = { 0 };

  g_return_if_fail (scan != NULL && BB_IS_SCAN_AREA (area));

  subject = (GdkRectangle) { (int) scan->x_px, (int) scan->y_px, (int) scan->width_px, (int) scan->height_px };
  patch = (GdkRectangle) { (int) scan->patch_x_px, (int) scan->patch_y_px, (int) scan->patch_width_px,
                           (int) scan->patch_height_px };
  bb_scan_area_set_rectangle (area, BB_SCAN_PART_SUBJECT, scan->width_px != BB_INTEGER_NONE ? &subject : &none);
  bb_scan_area_set_rectangle (area, BB_SCAN_PART_PATCH, scan->patch_width_px != BB_INTEGER_NONE ? &patch : &none);
}

/**
 * bb_scan_rectangles_take:
 * @scan: a scan that is to be measured
 * @area: its picture
 *
 * Takes over into the scan what was drawn. What was measured on another patch is forgotten.
 */
void
bb_scan_rectangles_take (BbScan     *scan,
                         BbScanArea *area)
{
  GdkRectangle subject = { 0 };
  GdkRectangle patch = { 0 };

  g_return_if_fail (scan != NULL && BB_IS_SCAN_AREA (area));

  subject = bb_scan_area_get_rectangle (area, BB_SCAN_PART_SUBJECT);
  patch = bb_scan_area_get_rectangle (area, BB_SCAN_PART_PATCH);
  scan->x_px = subject.x;
  scan->y_px = subject.y;
  scan->width_px = subject.width;
  scan->height_px = subject.height;
  for (guint i = 0; i < bb_scan_table.n_fields; i++)
    if (g_str_has_prefix (bb_scan_table.fields[i].name, "patch_"))
      bb_field_clear (&bb_scan_table.fields[i], scan);
  if (patch.width > 0)
    {
      scan->patch_x_px = patch.x;
      scan->patch_y_px = patch.y;
      scan->patch_width_px = patch.width;
      scan->patch_height_px = patch.height;
    }
}
