/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bb-session.h"

G_BEGIN_DECLS

char *bb_remark_dup (BbSession     *session,
                     const BbTable *table,
                     gconstpointer  record);

G_END_DECLS
