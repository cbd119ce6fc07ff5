/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bb-book.h"
#include "bb-scan.h"

G_BEGIN_DECLS

gboolean   bb_book_add_picture  (BbBook     *self,
                                 BbPicture  *picture,
                                 GBytes     *content,
                                 GError    **error);
GBytes    *bb_book_load_content (BbBook     *self,
                                 gint64      picture,
                                 GError    **error);
GPtrArray *bb_book_load_scans   (BbBook     *self,
                                 gint64      wash_test,
                                 GError    **error);

G_END_DECLS
