/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <X11/Xlib.h>

#include "glass.h"

G_BEGIN_DECLS

struct _Glass {
  Display *display;
  Window root;
};

G_END_DECLS
