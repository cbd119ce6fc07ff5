/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <adwaita.h>

G_BEGIN_DECLS

/* What newer toolkits do otherwise than the oldest one we run on: each difference is behind one of these. */

typedef void (*BbCompatFileFunc) (GFile    *file,
                                  gpointer  data);

typedef void (*BbCompatColourFunc) (const GdkRGBA *colour,
                                    gpointer       data);

void bb_compat_get_color     (GtkWidget          *widget,
                              GdkRGBA            *color);
void bb_compat_set_name      (GtkWidget          *widget,
                              const char         *name);
void bb_compat_empty_list    (GtkListBox         *list);
void bb_compat_open_file     (GtkWindow          *parent,
                              const char         *title,
                              const char         *filter_name,
                              const char         *pattern,
                              BbCompatFileFunc    func,
                              gpointer            data,
                              GDestroyNotify      free_data);
void bb_compat_save_file     (GtkWindow          *parent,
                              const char         *title,
                              const char         *name,
                              BbCompatFileFunc    func,
                              gpointer            data,
                              GDestroyNotify      free_data);
void bb_compat_choose_colour (GtkWindow          *parent,
                              const char         *title,
                              const GdkRGBA      *colour,
                              BbCompatColourFunc  func,
                              GObject            *data);
void bb_compat_show_about    (GtkWindow          *parent,
                              const char         *icon,
                              const char         *name,
                              const char         *version,
                              const char         *comments);

G_END_DECLS
