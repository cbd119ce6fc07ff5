/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/**
 * BbWeighScale:
 *
 * The place of a laydown between too little and too much: a line, the tolerance as a thick part in its middle,
 * and a pointer. Decoration: the verdict stands beside it in words.
 */
#define BB_TYPE_WEIGH_SCALE (bb_weigh_scale_get_type ())
G_DECLARE_FINAL_TYPE (BbWeighScale, bb_weigh_scale, BB, WEIGH_SCALE, GtkWidget)

void bb_weigh_scale_set (BbWeighScale *self,
                         double        deviation,
                         double        tolerance);

G_END_DECLS
