/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bb-session.h"
#include "bb-writer.h"

G_BEGIN_DECLS

void _bb_session_write_quietly (BbSession           *self,
                                BbBookFunc           func,
                                gpointer             data,
                                GDestroyNotify       free_data,
                                GCancellable        *cancellable,
                                GAsyncReadyCallback  callback,
                                gpointer             user_data);

G_END_DECLS
