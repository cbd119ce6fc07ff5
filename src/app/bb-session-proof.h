/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bb-session.h"

G_BEGIN_DECLS

void bb_session_put_on_trial (BbSession           *self,
                              gint64               revision);
void bb_session_sign_async   (BbSession           *self,
                              gint64               revision,
                              gboolean             overrule,
                              const char          *reason,
                              GAsyncReadyCallback  callback,
                              gpointer             data);
void bb_session_see_notice   (BbSession           *self,
                              gint64               notice);

G_END_DECLS
