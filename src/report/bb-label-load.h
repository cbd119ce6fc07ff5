/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bb-book.h"
#include "bb-label.h"

G_BEGIN_DECLS

BbLabel *bb_label_load (BbBook         *book,
                        const BbTable  *table,
                        gint64          id,
                        GError        **error);

G_END_DECLS
