/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bb-book.h"

G_BEGIN_DECLS

char *bb_words_of_notice (BbBook          *book,
                          const BbNotice  *notice,
                          GError         **error);

G_END_DECLS
