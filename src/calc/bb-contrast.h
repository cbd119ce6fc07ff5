/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

double   bb_contrast_luminance        (double red,
                                       double green,
                                       double blue);
double   bb_contrast_ratio            (double luminance_a,
                                       double luminance_b);
gboolean bb_contrast_wants_white_text (double red,
                                       double green,
                                       double blue);

G_END_DECLS
