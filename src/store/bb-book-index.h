/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bb-searches.h"

G_BEGIN_DECLS

gboolean bb_search_rebuild (BbDb           *db,
                            GError        **error);
char    *bb_search_dup_wanted (const BbSearch *self);
char    *bb_search_dup_found  (const BbSearch *self);

G_END_DECLS
