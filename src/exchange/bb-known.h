/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bb-book.h"

G_BEGIN_DECLS

gboolean bb_known_find       (BbBook         *book,
                              const BbTable  *table,
                              gconstpointer   record,
                              gpointer       *known,
                              GError        **error);
gboolean bb_known_check_same (const BbTable  *table,
                              gconstpointer   known,
                              gconstpointer   record,
                              GError        **error);

G_END_DECLS
