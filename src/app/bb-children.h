/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* Filling what a widget holds, and emptying it before it is filled anew. */

void bb_children_empty_box  (GtkBox     *box);
void bb_children_empty_grid (GtkGrid    *grid);
void bb_children_add_text   (GtkBox     *box,
                             const char *text,
                             const char *css_class);

G_END_DECLS
