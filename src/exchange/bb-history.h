/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bb-person.h"

G_BEGIN_DECLS

gpointer bb_event_dup_record (const BbEvent *self,
                              const BbTable *table);

G_END_DECLS
