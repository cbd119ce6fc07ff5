/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gio/gio.h>

#include "bb-db.h"

G_BEGIN_DECLS

/*
 * A check of a book that is under way.
 *
 * @findings: what was found so far
 * @cancellable: (nullable): what stops the check
 */
typedef struct {
  BbDb *db;
  GPtrArray *findings;
  GCancellable *cancellable;
} BbCheck;

void     _bb_check_add          (BbCheck  *self,
                                 char     *finding);
gboolean _bb_check_absorb       (BbCheck  *self,
                                 GError   *local,
                                 GError  **error);
gboolean _bb_check_schema       (BbCheck  *self,
                                 GError  **error);
gboolean _bb_check_indexes      (BbCheck  *self,
                                 GError  **error);
gboolean _bb_check_search_words (BbCheck  *self,
                                 GError  **error);
gboolean _bb_check_noted_words  (BbCheck  *self,
                                 GError  **error);

G_END_DECLS
