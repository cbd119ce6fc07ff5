/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-model"

#include "bb-scan.h"

#include <string.h>

#include "bb-error.h"

static gboolean
check_picture (gconstpointer record,
               GError      **error)
{
  const BbPicture *self = record;

  if (self->code[strspn (self->code, "0123456789abcdef")] != '\0')
    return bb_refuse_value (error, _("code: a SHA-256 is written with the digits 0 to 9 and a to f."));

  return TRUE;
}

/* A patch is measured whole or not at all. */
static gboolean
check_scan (gconstpointer record,
            GError      **error)
{
  guint n = 0;
  guint n_set = 0;

  for (guint i = 0; i < bb_scan_table.n_fields; i++)
    if (g_str_has_prefix (bb_scan_table.fields[i].name, "patch_"))
      {
        n++;
        n_set += bb_field_is_set (&bb_scan_table.fields[i], record) ? 1 : 0;
      }

  if (n_set != 0 && n_set != n)
    return bb_refuse_value (error, _("patch_l: of the patch all is given, its place and its colour, or nothing."));

  return TRUE;
}

/**
 * bb_subject_get_measured_field:
 * @self: what was scanned
 *
 * Returns: (transfer none): the field of a reading that holds the grade by scans of it
 */
const BbField *
bb_subject_get_measured_field (BbSubject self)
{
  return bb_table_find_field (&bb_reading_table, self == BB_SUBJECT_PRINT ? "change_measured" : "stain_measured");
}

/**
 * bb_scan_has_patch:
 * @self: a scan that is valid
 *
 * Returns: whether a patch that shows drift was measured on it
 */
gboolean
bb_scan_has_patch (const BbScan *self)
{
  return bb_field_is_set (bb_table_find_field (&bb_scan_table, "patch_l"), self);
}

/**
 * bb_scan_is_in_place_of:
 * @self: a scan
 * @other: another
 *
 * Returns: whether both are scans of one specimen, of the same of it, after as many washes: the book has one of these
 */
gboolean
bb_scan_is_in_place_of (const BbScan *self,
                        const BbScan *other)
{
  return self->wash_test == other->wash_test && self->subject == other->subject && self->cycles == other->cycles;
}

BB_DEFINE_CHOICES (bb_subject, "subject", BB_SUBJECT_CHOICES);
BB_DEFINE_TABLE (BbPicture, bb_picture, "picture", N_("Picture"), BB_PICTURE_FIELDS, check_picture)
BB_DEFINE_TABLE (BbScan, bb_scan, "scan", N_("Scan"), BB_SCAN_FIELDS, check_scan)
