/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/**
 * BbFigures:
 *
 * Figures in columns of one width: as many beside each other as there is room for, or fewer where the last row has to
 * hold one alone otherwise. Two figures that don't fit beside each other stand below each other.
 *
 * As with #BbTextBox the width is decided first, and the height follows from it.
 */
#define BB_TYPE_FIGURES (bb_figures_get_type ())
G_DECLARE_FINAL_TYPE (BbFigures, bb_figures, BB, FIGURES, GtkWidget)

void       bb_figures_append      (BbFigures *self,
                                   GtkWidget *figure);
GtkWidget *bb_figures_get         (BbFigures *self,
                                   guint      place);
void       bb_figures_drop_from   (BbFigures *self,
                                   guint      place);
int        bb_figures_get_columns (BbFigures *self,
                                   int        width);

G_END_DECLS
