/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

guint64 peak_of (const char * const *argv);

G_END_DECLS
