/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* Emptying what a widget holds, before it is filled anew. */

void bb_children_empty_box  (GtkBox  *box);
void bb_children_empty_grid (GtkGrid *grid);

G_END_DECLS
