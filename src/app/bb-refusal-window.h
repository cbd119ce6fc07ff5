/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <adwaita.h>

G_BEGIN_DECLS

/**
 * BbRefusalWindow:
 *
 * Says why a book can't be opened or made, and offers to go on with another one. It is a window of the program like any
 * other: where it is the only one, the program ends with it.
 */
#define BB_TYPE_REFUSAL_WINDOW (bb_refusal_window_get_type ())
G_DECLARE_FINAL_TYPE (BbRefusalWindow, bb_refusal_window, BB, REFUSAL_WINDOW, AdwApplicationWindow)

GtkWidget *bb_refusal_window_new  (GtkApplication  *application);
void       bb_refusal_window_tell (BbRefusalWindow *self,
                                   const char      *path,
                                   const GError    *error);

G_END_DECLS
