/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <sqlite3.h>

#include "bb-db.h"
#include "bb-frozen.h"

G_BEGIN_DECLS

/* How a transaction inside another one ends; the outermost ends by COMMIT or ROLLBACK. */
typedef enum {
  BB_LEVEL_OUTERMOST = 1,
  BB_LEVEL_JOINED,
  BB_LEVEL_SAVEPOINT,
} BbLevel;

/*
 * @statements: the prepared statements by their text, owned
 * @frozen: what the file has to stay like; none where it may be written meanwhile
 * @levels: the #BbLevel of each open transaction, the outermost first
 */
struct _BbDb {
  sqlite3 *handle;
  BbAccess access;
  GHashTable *statements;
  GArray *levels;
  GCancellable *cancellable;
  BbFrozen *frozen;
};

void     _bb_db_set_error   (BbDb         *self,
                             GError      **error);
gboolean _bb_db_is_whole    (BbDb         *self,
                             GError      **error);
void     _bb_statement_free (BbStatement  *self);

G_END_DECLS
