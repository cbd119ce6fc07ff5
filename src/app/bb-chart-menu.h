/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* The menu of a chart: to save it as PNG or PDF, or copy it as a picture or in words. */

void       bb_chart_menu_install    (GtkWidgetClass *klass);
GtkWidget *bb_chart_menu_new        (void);
GtkWidget *bb_chart_menu_new_button (void);

G_END_DECLS
