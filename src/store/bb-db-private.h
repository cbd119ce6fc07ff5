/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <sqlite3.h>

#include "bb-db.h"

G_BEGIN_DECLS

/* How a transaction inside another one ends; the outermost ends by COMMIT or ROLLBACK. */
typedef enum {
  BB_LEVEL_OUTERMOST = 1,
  BB_LEVEL_JOINED,
  BB_LEVEL_SAVEPOINT,
} BbLevel;

/*
 * @statements: the prepared statements by their text, owned
 * @levels: the #BbLevel of each open transaction, the outermost first
 */
struct _BbDb {
  sqlite3 *handle;
  GHashTable *statements;
  GArray *levels;
  GCancellable *cancellable;
};

void     _bb_db_set_error   (BbDb         *self,
                             GError      **error);
gboolean _bb_db_is_whole    (BbDb         *self,
                             GError      **error);
void     _bb_statement_free (BbStatement  *self);

G_END_DECLS
