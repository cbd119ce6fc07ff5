/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/**
 * BbSplitBar:
 *
 * How a mixture splits by mass: a bar whose filled part is the concentrate. Decoration: the figures stand beside
 * it.
 */
#define BB_TYPE_SPLIT_BAR (bb_split_bar_get_type ())
G_DECLARE_FINAL_TYPE (BbSplitBar, bb_split_bar, BB, SPLIT_BAR, GtkWidget)

void bb_split_bar_set_fraction (BbSplitBar *self,
                                double      fraction);

G_END_DECLS
