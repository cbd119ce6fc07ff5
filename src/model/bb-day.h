/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

char *bb_day_after (const char *date,
                    gint64      days);

G_END_DECLS
