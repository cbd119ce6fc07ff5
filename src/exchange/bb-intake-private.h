/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bb-codes.h"
#include "bb-exchange.h"

G_BEGIN_DECLS

/*
 * Records that come into a book from elsewhere, all of them or none.
 *
 * @stateless: keys of the revisions whose state has not come yet, and when they were made
 * @total: how many records there are, once that is known
 */
typedef struct {
  BbBook *book;
  BbCodes *codes;
  GHashTable *stateless;
  const BbExchangeWatch *watch;
  guint total;
  BbImported imported;
} BbIntake;

typedef gboolean (*BbIntakeFunc) (BbIntake *self,
                                  gpointer  data,
                                  GError  **error);

gboolean _bb_intake_run  (BbBook                 *book,
                          BbIntakeFunc            func,
                          gpointer                data,
                          const BbExchangeWatch  *watch,
                          BbImported             *imported,
                          GError                **error);
gboolean _bb_intake_take (BbIntake               *self,
                          const BbTable          *table,
                          gpointer                record,
                          GError                **error);

G_END_DECLS
