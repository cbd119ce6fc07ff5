/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

gboolean bb_clean_close_holds (const char *path);
void     bb_clean_close_note  (const char *path);

G_END_DECLS
