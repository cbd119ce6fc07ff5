/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/**
 * BbTextBox:
 *
 * Things beside or below each other, as in a #GtkBox, where some of them are texts that wrap. Beside each other they
 * stand on one baseline.
 *
 * A #GtkBox also finds out how narrow a text may get at each height, which takes many layouts of the same text, and of
 * all that it is in. This one decides on widths alone: they don't depend on the height that there is, and a height
 * follows from the width. Within it no text is laid out for a height.
 */
#define BB_TYPE_TEXT_BOX (bb_text_box_get_type ())
G_DECLARE_FINAL_TYPE (BbTextBox, bb_text_box, BB, TEXT_BOX, GtkWidget)

G_END_DECLS
