/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bb-near-recipes.h"
#include "bb-session.h"

G_BEGIN_DECLS

void           bb_session_load_near_async  (BbSession            *self,
                                            gint64                blank,
                                            gint64                colourway,
                                            GCancellable         *cancellable,
                                            GAsyncReadyCallback   callback,
                                            gpointer              data);
BbNearRecipes *bb_session_load_near_finish (BbSession            *self,
                                            GAsyncResult         *result,
                                            GError              **error);

/* The garment that others are sought for. */
gint64         bb_session_find_blank       (BbSession            *self,
                                            const char           *words);
gint64         bb_session_get_blank_of     (BbSession            *self,
                                            gint64                recipe);

G_END_DECLS
