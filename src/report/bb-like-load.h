/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bb-book.h"

G_BEGIN_DECLS

GArray *bb_load_colourways_like (BbBook      *book,
                                 const char  *srgb,
                                 GError     **error);

G_END_DECLS
