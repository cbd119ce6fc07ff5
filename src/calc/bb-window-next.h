/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bb-surface.h"

G_BEGIN_DECLS

void bb_window_next (const BbSurface *surface,
                     const double    *target,
                     const double    *places,
                     guint            n_places,
                     guint           *chosen,
                     guint            n_chosen);

G_END_DECLS
