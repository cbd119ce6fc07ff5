/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "hand.h"

G_BEGIN_DECLS

/* The built program on a stage, and what tests of its window share: books, settings, pages, the command line. */

Stage *shop_new            (const char  *size);
char  *shop_make_demo      (Stage       *stage);
char  *shop_make_book      (Stage       *stage);
int    shop_run            (Stage       *stage,
                            char       **output,
                            ...) G_GNUC_NULL_TERMINATED;
void   shop_set            (Stage       *stage,
                            const char  *key,
                            const char  *value);
void   shop_start          (Stage       *stage,
                            const char  *file);
void   shop_start_also     (Stage       *stage,
                            const char  *file);
void   shop_open           (Stage       *stage,
                            const char  *book);
void   shop_go             (Stage       *stage,
                            const char  *page);
void   shop_choose_file    (Stage       *stage,
                            const char  *button,
                            const char  *path);
void   shop_choose_artwork (Stage       *stage);

G_END_DECLS
