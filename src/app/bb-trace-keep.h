/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bb-session.h"

G_BEGIN_DECLS

void bb_trace_keep (BbSession     *session,
                    const BbTable *table,
                    gint64         id,
                    GFile         *file,
                    gboolean       as_pdf);

G_END_DECLS
