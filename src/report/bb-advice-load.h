/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bb-advice.h"
#include "bb-book.h"

G_BEGIN_DECLS

GPtrArray *bb_advice_load (BbBook               *book,
                           const BbRevision     *revision,
                           const BbUnitContext  *units,
                           GError              **error);

G_END_DECLS
