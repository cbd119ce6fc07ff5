/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bb-book.h"

G_BEGIN_DECLS

void bb_store_error_set_sqlite (GError     **error,
                                int          code,
                                const char  *message);
int  bb_store_error_find_rule  (const char  *text);

G_END_DECLS
