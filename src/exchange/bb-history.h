/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bb-field.h"

G_BEGIN_DECLS

gpointer bb_history_dup_record (const BbTable *table,
                                const char    *text);

G_END_DECLS
