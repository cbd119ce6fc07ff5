/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

GtkListItemFactory *bb_recipe_row_factory_new (void);

G_END_DECLS
