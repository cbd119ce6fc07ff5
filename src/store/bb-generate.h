/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bb-book.h"

G_BEGIN_DECLS

/**
 * BbGenerate:
 * @n_revisions: how many revisions, 1 to 1,000,000
 * @n_runs: how many runs, 0 to 1,000,000
 * @seed: the same book for the same seed
 *
 * How large an invented book shall be.
 */
typedef struct {
  guint n_revisions;
  guint n_runs;
  guint32 seed;
} BbGenerate;

#define BB_GENERATE_MOST 1000000

gboolean bb_book_generate (BbBook           *self,
                           const BbGenerate *plan,
                           GError          **error);

G_END_DECLS
