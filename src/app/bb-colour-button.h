/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

GtkWidget *bb_colour_button_new (GtkEditable *editable);

G_END_DECLS
