/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <cairo.h>
#include <glib.h>

G_BEGIN_DECLS

/**
 * BbPaper:
 * @BB_PAPER_A4: 210 × 297 mm (ISO 216)
 * @BB_PAPER_LETTER: 8.5 × 11 in (ANSI/ASME Y14.1)
 *
 * A size of paper.
 */
typedef enum {
  BB_PAPER_A4 = 1,
  BB_PAPER_LETTER,
} BbPaper;

/* Points for each millimetre: 72 to the inch of 25.4 mm. */
#define BB_POINTS_PER_MM (72.0 / 25.4)

void bb_paper_get_size (BbPaper  self,
                        double  *width,
                        double  *height);

/* Files from surfaces, in memory; whoever asked writes them. */

cairo_surface_t *bb_paper_new_pdf  (GByteArray       *bytes,
                                    double            width,
                                    double            height,
                                    const char       *title);
GBytes          *bb_paper_take_pdf (cairo_surface_t  *surface,
                                    GByteArray       *bytes,
                                    GError          **error);
GBytes          *bb_paper_take_png (cairo_surface_t  *surface,
                                    GError          **error);

G_END_DECLS
