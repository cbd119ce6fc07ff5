/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bb-exchange.h"

G_BEGIN_DECLS

gboolean _bb_exchange_watch (const BbExchangeWatch *self,
                             guint                  done,
                             guint                  total,
                             GError               **error);

G_END_DECLS
