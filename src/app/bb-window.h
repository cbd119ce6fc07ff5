/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <adwaita.h>

#include "bb-session.h"

G_BEGIN_DECLS

/**
 * BbWindow:
 *
 * The window on one book: a list of pages in groups, and the page that is shown.
 */
#define BB_TYPE_WINDOW (bb_window_get_type ())
G_DECLARE_FINAL_TYPE (BbWindow, bb_window, BB, WINDOW, AdwApplicationWindow)

BbWindow   *bb_window_new      (GtkApplication *application,
                                BbSession      *session);
const char *bb_window_get_path (BbWindow       *self);

G_END_DECLS
