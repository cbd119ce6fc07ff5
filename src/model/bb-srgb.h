/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

double bb_srgb_to_linear   (double value);
double bb_srgb_from_linear (double light);

G_END_DECLS
