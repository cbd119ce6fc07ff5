/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "bb-session.h"

G_BEGIN_DECLS

void bb_facts_fill (GtkBox        *box,
                    BbSession     *session,
                    const BbTable *table,
                    gconstpointer  record);

G_END_DECLS
