/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bb-records.h"

G_BEGIN_DECLS

/* Records without a book: the code A-7 stands for the key 7. */

char    *name_record     (const BbField *field,
                          gint64         id,
                          gpointer       data,
                          GError       **error);
gboolean resolve_record  (const BbField *field,
                          const char    *code,
                          gint64        *id,
                          gpointer       data,
                          GError       **error);
gboolean record_is_valid (const BbTable *table,
                          gconstpointer  record);

G_END_DECLS
