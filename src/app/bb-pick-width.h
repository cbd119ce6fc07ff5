/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

void bb_pick_set_width (GtkDropDown *drop_down,
                        int          width);

G_END_DECLS
