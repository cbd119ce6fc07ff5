/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "bb-placement.h"
#include "bb-preview.h"

G_BEGIN_DECLS

/**
 * BbPrintPreview:
 *
 * A print as it would look on the garment: the garment's colour all over, the printed picture, the art box and the box
 * that is sprayed. What lies outside both boxes is empty and left out. Its description says in words what it shows.
 */
#define BB_TYPE_PRINT_PREVIEW (bb_print_preview_get_type ())
G_DECLARE_FINAL_TYPE (BbPrintPreview, bb_print_preview, BB, PRINT_PREVIEW, GtkWidget)

void bb_print_preview_set_garment   (BbPrintPreview    *self,
                                     const GdkRGBA     *garment);
void bb_print_preview_set_print     (BbPrintPreview    *self,
                                     const BbPreview   *print);
void bb_print_preview_set_placement (BbPrintPreview    *self,
                                     const BbPlacement *placement,
                                     gboolean           has_art,
                                     gboolean           has_box);
void bb_print_preview_describe      (BbPrintPreview    *self,
                                     const char        *text);

G_END_DECLS
