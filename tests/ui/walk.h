/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <adwaita.h>

/* Finds what a person sees in a window: only what is shown counts, and every wait is bounded. */

GtkWidget *walk_find_type  (GtkWidget  *root,
                            GType       type);
GtkWidget *walk_find_label (GtkWidget  *root,
                            const char *text);
GtkWidget *walk_find_row   (GtkWidget  *root,
                            const char *title);
void       walk_type       (GtkWidget  *root,
                            const char *title,
                            const char *text);
void       walk_choose     (GtkWidget  *root,
                            const char *title,
                            guint       position);
void       walk_expect     (GtkWidget  *root,
                            const char *text);
void       walk_settle     (guint       milliseconds);
void       walk_picture    (GtkWidget  *window,
                            const char *path);
