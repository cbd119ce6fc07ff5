/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* No table nests deeper than a handful of levels. */
#define BB_JSON_DEPTH 32

gboolean bb_json_scan (const char  *text,
                       gsize        length,
                       char       **rewritten,
                       GError     **error);

G_END_DECLS
