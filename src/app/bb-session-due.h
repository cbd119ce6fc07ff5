/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bb-due-load.h"
#include "bb-session.h"

G_BEGIN_DECLS

void       bb_session_load_due_async  (BbSession            *self,
                                       GCancellable         *cancellable,
                                       GAsyncReadyCallback   callback,
                                       gpointer              data);
GPtrArray *bb_session_load_due_finish (BbSession            *self,
                                       GAsyncResult         *result,
                                       GError              **error);

G_END_DECLS
