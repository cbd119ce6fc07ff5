/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/**
 * BbSideBySide:
 *
 * Two widgets beside each other where there is room for both as wide as they would like to be, half of it each; below
 * each other where there is not.
 */
#define BB_TYPE_SIDE_BY_SIDE (bb_side_by_side_get_type ())
G_DECLARE_FINAL_TYPE (BbSideBySide, bb_side_by_side, BB, SIDE_BY_SIDE, GtkWidget)

GtkWidget *bb_side_by_side_new (GtkWidget *first,
                                GtkWidget *second);

G_END_DECLS
