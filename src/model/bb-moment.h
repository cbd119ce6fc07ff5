/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

char *bb_dup_now   (void);
char *bb_dup_today (void);

G_END_DECLS
