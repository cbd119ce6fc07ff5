/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bb-book-thread.h"
#include "bb-session.h"

G_BEGIN_DECLS

void _bb_session_write_quietly (BbSession           *self,
                                BbBookFunc           func,
                                gpointer             data,
                                GDestroyNotify       free_data,
                                GAsyncReadyCallback  callback,
                                gpointer             user_data);
void _bb_session_read_within   (BbSession           *self,
                                BbBookFunc           func,
                                gpointer             data,
                                GDestroyNotify       free_data,
                                GCancellable        *cancellable,
                                GAsyncReadyCallback  callback,
                                gpointer             user_data);

G_END_DECLS
