/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "bb-placement.h"
#include "bb-preview.h"
#include "bb-print-mode.h"
#include "bb-quantity.h"

G_BEGIN_DECLS

/**
 * BbPlacedPrint:
 *
 * A print on its garment, with the art box and the box that is sprayed drawn around it; below, what the lines mean and
 * how large the boxes are.
 */
#define BB_TYPE_PLACED_PRINT (bb_placed_print_get_type ())
G_DECLARE_FINAL_TYPE (BbPlacedPrint, bb_placed_print, BB, PLACED_PRINT, GtkBox)

void bb_placed_print_forget   (BbPlacedPrint       *self);
void bb_placed_print_draw     (BbPlacedPrint       *self,
                               const BbPreview     *picture,
                               const char          *garment_srgb,
                               BbPrintMode          mode,
                               guint8               black_at);
void bb_placed_print_place    (BbPlacedPrint       *self,
                               const BbUnitContext *units,
                               const BbPlacement   *placement,
                               gboolean             has_art,
                               gboolean             has_size,
                               gboolean             has_box);
void bb_placed_print_describe (BbPlacedPrint       *self,
                               const char          *picture,
                               const char          *garment,
                               BbPrintMode          mode);

G_END_DECLS
