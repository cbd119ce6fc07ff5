/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bb-session.h"

G_BEGIN_DECLS

void   bb_session_save_record_async  (BbSession            *self,
                                      const BbTable        *table,
                                      gpointer              record,
                                      GAsyncReadyCallback   callback,
                                      gpointer              data);
gint64 bb_session_save_record_finish (BbSession            *self,
                                      GAsyncResult         *result,
                                      GError              **error);

G_END_DECLS
