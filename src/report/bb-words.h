/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bb-book.h"
#include "bb-quantity.h"

G_BEGIN_DECLS

char *bb_words_of_day   (const char           *date);
char *bb_words_of_moment (const char         *moment);
char *bb_words_of_due   (const char           *due_at,
                         const char           *today);
char *bb_words_of_time  (double                seconds);
char *bb_words_of_file  (const char           *file);
char *bb_words_of_name  (BbBook               *book,
                         const BbTable        *table,
                         gint64                id);
char *bb_words_of_field (BbBook               *book,
                         const BbTable        *table,
                         const BbField        *field,
                         gconstpointer         record,
                         const BbUnitContext  *units);

G_END_DECLS
