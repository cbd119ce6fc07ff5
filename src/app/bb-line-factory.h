/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bb-place.h"

G_BEGIN_DECLS

GtkListItemFactory *bb_line_factory_new (BbLineList *lines,
                                         BbLineFill  fill);

G_END_DECLS
