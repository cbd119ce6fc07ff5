/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bb-session.h"

G_BEGIN_DECLS

void     bb_session_show_thing (BbSession     *self,
                                const BbTable *table,
                                gint64         id);
gboolean bb_session_open_label (BbSession     *self,
                                const char    *text);

G_END_DECLS
