/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

gboolean bb_text_is_plain    (const char *text,
                              gboolean    multiline);
gboolean bb_text_is_date     (const char *text);
char    *bb_text_quote       (const char *text,
                              gssize      length,
                              guint       longest);
char    *bb_text_to_sentence (const char *text);

G_END_DECLS
