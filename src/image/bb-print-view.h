/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bb-preview.h"
#include "bb-recipe.h"

G_BEGIN_DECLS

/*
 * What a person would see of the print on the garment: an approximation, to tell the print modes apart, and no proof of
 * colour. Light of the three channels of sRGB is reckoned with, from 0 to 1: g of the garment, c of the artwork, and
 * its alpha a as the share of the fabric that dots cover.
 *
 *   Colour ink is clear: it takes away from the light of what lies under it. Where dots cover a share a, what is under
 *   them is multiplied by 1 − a + a·c.
 *   White ink is opaque and wholly white; an underbase lies under all that is printed, by the same alpha.
 *
 *   colour-only          g · (1 − a + a·c)
 *   underbase            (g · (1 − a) + a) · (1 − a + a·c)
 *   underbase-knockout   g where no channel of the artwork is above black_at, else as with an underbase
 *
 * Dots of white and of colour fall beside each other as often as on each other (Demichel), and so a soft edge shows the
 * underbase. Where it is wholly opaque, art looks as on the screen with an underbase, darkened and tinted by the
 * garment without. Left out: the fabric's texture, spread of ink, how opaque a real white is, and the colours that a
 * printer can't print. Of a preview, black is judged of averaged pixels. The model is common practice in its parts,
 * no source as a whole.
 */

BbPreview *bb_print_view_new (const BbPreview *art,
                              const guint8     garment[3],
                              BbPrintMode      mode,
                              guint8           black_at);

G_END_DECLS
