/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <adwaita.h>

#include "bb-known-recipes.h"

G_BEGIN_DECLS

/**
 * BbNearestRow:
 *
 * A recipe near to a garment: its colour, name and state, and in what its garment is like the wanted one.
 */
#define BB_TYPE_NEAREST_ROW (bb_nearest_row_get_type ())
G_DECLARE_FINAL_TYPE (BbNearestRow, bb_nearest_row, BB, NEAREST_ROW, GtkListBoxRow)

GtkWidget *bb_nearest_row_new        (const BbKnownRecipe *recipe,
                                      const char          *reasons);
gint64     bb_nearest_row_get_recipe (BbNearestRow        *self);

G_END_DECLS
