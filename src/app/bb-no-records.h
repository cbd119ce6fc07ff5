/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <adwaita.h>

#include "bb-catalogue-info.h"

G_BEGIN_DECLS

/**
 * BbNoRecords:
 *
 * What stands where a record would, if there is none: what to do first, or how to search otherwise.
 */
#define BB_TYPE_NO_RECORDS (bb_no_records_get_type ())
G_DECLARE_FINAL_TYPE (BbNoRecords, bb_no_records, BB, NO_RECORDS, AdwBin)

void bb_no_records_start (BbNoRecords           *self,
                          const BbCatalogueInfo *info);
void bb_no_records_show  (BbNoRecords           *self,
                          gboolean               is_narrowed);

G_END_DECLS
