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

void bb_after_paint (GtkWidget    *widget,
                     guint        *id,
                     BbAfterPaint  func);

G_END_DECLS
