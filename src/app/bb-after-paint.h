/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/**
 * BbAfterPaint:
 * @widget: the widget
 *
 * What can wait until a person has seen what it belongs to.
 */
typedef void (*BbAfterPaint) (GtkWidget *widget);

/* To show a record takes longer than to find it, and the next letter must not wait for that. A person takes so short a
 * time for none. */
#define BB_REST_BETWEEN_KEYS_MS 80

void bb_after_paint     (GtkWidget    *widget,
                         guint        *id,
                         guint         rest_ms,
                         BbAfterPaint  func);
void bb_after_paint_now (GtkWidget    *widget,
                         guint        *id,
                         BbAfterPaint  func);

G_END_DECLS
