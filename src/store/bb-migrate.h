/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bb-db.h"

G_BEGIN_DECLS

guint       bb_migrations_get_first  (void);
guint       bb_migrations_get_latest (void);
guint       bb_migrations_get_count  (void);
char       *bb_migrations_dup_script (guint        version);
gboolean    bb_book_identify         (BbDb        *db,
                                      guint       *version,
                                      GError     **error);
gboolean    bb_book_migrate          (BbDb        *db,
                                      GError     **error);

G_END_DECLS
