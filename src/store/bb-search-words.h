/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bb-searches.h"

G_BEGIN_DECLS

GHashTable *bb_search_words_new    (void);
gboolean    bb_search_words_note   (BbDb           *db,
                                    GHashTable     *known,
                                    const BbSearch *search,
                                    gint64          id,
                                    GError        **error);
gboolean    bb_search_words_rebuild (BbDb          *db,
                                    GError        **error);
gboolean    bb_search_words_count_missing (BbDb    *db,
                                    guint          *n_missing,
                                    GError        **error);

G_END_DECLS
