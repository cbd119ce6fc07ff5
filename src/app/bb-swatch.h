/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "bb-recipe.h"

G_BEGIN_DECLS

/**
 * BbSwatch:
 *
 * A patch in a garment's colour, with a thin edge so that white shows on white. Where several colours are meant it
 * is divided from corner to corner between two of them. Decoration: the colour's name always stands beside it.
 */
#define BB_TYPE_SWATCH (bb_swatch_get_type ())
G_DECLARE_FINAL_TYPE (BbSwatch, bb_swatch, BB, SWATCH, GtkWidget)

GtkWidget *bb_swatch_new         (int         size);
void       bb_swatch_set_srgb    (BbSwatch   *self,
                                  const char *srgb);
void       bb_swatch_set_garment (BbSwatch   *self,
                                  const char *srgb,
                                  BbShade     shade);

G_END_DECLS
