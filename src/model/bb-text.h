/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

gboolean bb_text_is_plain (const char *text,
                           gboolean    multiline);
gboolean bb_text_is_date  (const char *text);
char    *bb_text_quote    (const char *text,
                           gssize      length,
                           guint       longest);

G_END_DECLS
