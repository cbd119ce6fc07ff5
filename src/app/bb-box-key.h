/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/**
 * BbBoxLine:
 * @BB_BOX_LINE_ART: around what is visible of the artwork: thin and broken
 * @BB_BOX_LINE_SPRAY: around what is sprayed: thick and whole
 */
typedef enum {
  BB_BOX_LINE_ART,
  BB_BOX_LINE_SPRAY,
} BbBoxLine;

/**
 * BbBoxKey:
 *
 * A sample of one of the lines that are drawn over an artwork, on the garment's colour: the key to the picture. The
 * lines differ in thickness and dashes first, in colour last. Decoration: the line's name stands beside it.
 */
#define BB_TYPE_BOX_KEY (bb_box_key_get_type ())
G_DECLARE_FINAL_TYPE (BbBoxKey, bb_box_key, BB, BOX_KEY, GtkWidget)

void bb_box_key_set         (BbBoxKey      *self,
                             BbBoxLine      line,
                             const GdkRGBA *ground);
void bb_box_key_stroke_seam (cairo_t       *cr,
                             BbBoxLine      line,
                             const GdkRGBA *ground);
void bb_box_key_stroke      (cairo_t       *cr,
                             BbBoxLine      line,
                             const GdkRGBA *ground);

G_END_DECLS
