/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib/gi18n-lib.h>

#include "bb-counts.h"
#include "bb-recipe.h"

G_BEGIN_DECLS

/*
 * What a PNG picture says about its print: size and resolution as it is placed, how much of it is empty, soft, black or
 * white, how much area each ink covers, and what box has to be pretreated. Lengths in mm, areas in mm², fractions of
 * all pixels.
 *
 * Every pixel is counted, exactly, as if the picture were expanded to RGBA of 8 bits (bb-counts.h). A *black* pixel has
 * alpha > 0 and no channel above black_at; a *white* one has alpha > 0 and no channel below white_at. Colours are taken
 * as they stand in the file, whatever its profile. That 24 and 245 are black and white, and that 150 pixels an inch are
 * enough, is common practice, no source.
 *
 * The picture is placed print_width_mm wide, with square pixels. Each pixel counts for its area by its alpha:
 *   art         all pixels
 *   underbase   none in colour-only; else art, in underbase-knockout without black pixels
 *   colour      art; with an underbase without white pixels, in underbase-knockout without black ones too
 *   knockout    in underbase-knockout the black pixels; else none
 * art_box is the smallest rectangle with all pixels of alpha > 0; box_width_mm and box_height_mm are it and the margin
 * on every side. Null where nothing is visible.
 *
 * enlargement is placed width ÷ natural width; null where the file names no size (pHYs). The file names whole pixels
 * per metre, so that sizes are rounded: `enlarged` is warned of only where the natural size could not be as large.
 * Warnings: low-resolution (ppi < minimum_ppi), enlarged, partial-alpha (any pixel that is neither empty nor opaque:
 * an underbase shows there), opaque-background (every pixel is opaque), empty (none is visible), no-size (no pHYs).
 *
 * Refused: keys out of their limits, black_at not below white_at; a file that can't be read, is no PNG, is damaged,
 * or is beyond the limits of bb-png.h. Memory does not grow with the picture's height.
 * Assumes square pixels and an art box that is all that is printed.
 * Source: ISO/IEC 15948 (PNG) by libpng, plain geometry; the limits' defaults are common practice, no source.
 */

#define BB_ARTWORK_WARNING_CHOICES(C) \
  C (BB_ARTWORK_LOW_RESOLUTION, "low-resolution", \
     N_("At this width the picture has too few pixels an inch: edges will look soft or stepped.")) \
  C (BB_ARTWORK_ENLARGED, "enlarged", N_("The picture is placed larger than it was made for.")) \
  C (BB_ARTWORK_PARTIAL_ALPHA, "partial-alpha", \
     N_("Some pixels are half transparent: an underbase shows at such soft edges.")) \
  C (BB_ARTWORK_OPAQUE_BACKGROUND, "opaque-background", \
     N_("No pixel is transparent: a background, if there is one, is printed too.")) \
  C (BB_ARTWORK_EMPTY, "empty", N_("Nothing of the picture is visible: every pixel is transparent.")) \
  C (BB_ARTWORK_NO_SIZE, "no-size", \
     N_("The file does not say how large the picture was made, so that enlargement is not known."))

BB_DECLARE_CHOICES (BbArtworkWarning, bb_artwork_warning, BB_ARTWORK_WARNING_CHOICES);

#define BB_ARTWORK_IN_FIELDS(F, T) \
  F (T, TEXT, file, N_("File"), .help = N_("Name of the PNG file with the artwork."), \
     .limits = BB_BETWEEN (1, 4096), .required = TRUE) \
  F (T, NUMBER, print_width_mm, N_("Print width"), \
     .help = N_("How wide the whole picture is placed, its empty margin included."), \
     .quantity = BB_QUANTITY_LENGTH, .limits = BB_ABOVE_TO (0, 5000), .required = TRUE) \
  F (T, CHOICE, mode, N_("Print mode"), .help = N_("Which inks are printed under and beside the colours."), \
     .choices = &bb_print_mode_choices, .required = TRUE) \
  F (T, NUMBER, margin_mm, N_("Margin"), .help = N_("How far the box reaches past the art on each side."), \
     .quantity = BB_QUANTITY_LENGTH, .limits = BB_BETWEEN (0, 500), .fallback = BB_DEFAULT (0), \
     .required = TRUE) \
  F (T, INTEGER, black_at, N_("Black up to"), \
     .help = N_("The most red, green or blue, of 255, that a pixel may have to count as black."), \
     .limits = BB_BETWEEN (0, 255), .fallback = BB_DEFAULT (24), .required = TRUE) \
  F (T, INTEGER, white_at, N_("White from"), \
     .help = N_("The least red, green and blue, of 255, that a pixel must have to count as white; above black_at."), \
     .limits = BB_BETWEEN (0, 255), .fallback = BB_DEFAULT (245), .required = TRUE) \
  F (T, NUMBER, minimum_ppi, N_("Least resolution"), \
     .help = N_("How many pixels an inch the print should have."), .limits = BB_BETWEEN (0, 10000), \
     .fallback = BB_DEFAULT (150), .required = TRUE)

BB_DECLARE_TABLE (BbArtworkIn, bb_artwork_in, BB_ARTWORK_IN_FIELDS);

#define BB_PIXEL_BOX_FIELDS(F, T) \
  F (T, INTEGER, x_px, N_("From the left"), .help = N_("Columns to the left of it.")) \
  F (T, INTEGER, y_px, N_("From the top"), .help = N_("Rows above it.")) \
  F (T, INTEGER, width_px, N_("Columns"), .help = N_("How many columns it has.")) \
  F (T, INTEGER, height_px, N_("Rows"), .help = N_("How many rows it has."))

BB_DECLARE_TABLE (BbPixelBox, bb_pixel_box, BB_PIXEL_BOX_FIELDS);

#define BB_ARTWORK_OUT_FIELDS(F, T) \
  F (T, INTEGER, width_px, N_("Columns"), .help = N_("Width of the picture in pixels.")) \
  F (T, INTEGER, height_px, N_("Rows"), .help = N_("Height of the picture in pixels.")) \
  F (T, NUMBER, print_height_mm, N_("Print height"), .help = N_("How high the whole picture is as placed."), \
     .quantity = BB_QUANTITY_LENGTH) \
  F (T, NUMBER, ppi, N_("Resolution"), .help = N_("Pixels an inch as placed.")) \
  F (T, NUMBER, enlargement, N_("Enlargement"), \
     .help = N_("Placed size ÷ the size that the file names; null where it names none.")) \
  F (T, NUMBER, empty_fraction, N_("Empty"), .help = N_("Share of pixels that are wholly transparent."), \
     .quantity = BB_QUANTITY_FRACTION) \
  F (T, NUMBER, partial_fraction, N_("Soft"), .help = N_("Share of pixels that are partly transparent."), \
     .quantity = BB_QUANTITY_FRACTION) \
  F (T, NUMBER, opaque_fraction, N_("Opaque"), .help = N_("Share of pixels that are wholly opaque."), \
     .quantity = BB_QUANTITY_FRACTION) \
  F (T, NUMBER, black_fraction, N_("Black"), .help = N_("Share of pixels that are visible and black."), \
     .quantity = BB_QUANTITY_FRACTION) \
  F (T, NUMBER, white_fraction, N_("White"), .help = N_("Share of pixels that are visible and white."), \
     .quantity = BB_QUANTITY_FRACTION) \
  F (T, NUMBER, alpha_mean, N_("Coverage"), .help = N_("Mean alpha of all pixels."), \
     .quantity = BB_QUANTITY_FRACTION) \
  F (T, OBJECT, art_box, N_("Art box"), .help = N_("The smallest rectangle with all that is visible."), \
     .item = &bb_pixel_box_table) \
  F (T, NUMBER, art_area_mm2, N_("Art"), .help = N_("Area of all that is visible, by its alpha, in mm².")) \
  F (T, NUMBER, underbase_area_mm2, N_("Underbase"), .help = N_("Area that the underbase covers, in mm².")) \
  F (T, NUMBER, colour_area_mm2, N_("Colour"), .help = N_("Area that the colours cover, in mm².")) \
  F (T, NUMBER, knockout_area_mm2, N_("Knockout"), \
     .help = N_("Area of black that is left unprinted, in mm².")) \
  F (T, NUMBER, box_width_mm, N_("Box width"), .help = N_("Width of the art box and its margins."), \
     .quantity = BB_QUANTITY_LENGTH) \
  F (T, NUMBER, box_height_mm, N_("Box height"), .help = N_("Height of the art box and its margins."), \
     .quantity = BB_QUANTITY_LENGTH) \
  F (T, TEXTS, warnings, N_("Warnings"), \
     .help = N_("What to look at before printing: low-resolution, enlarged, partial-alpha, opaque-background, " \
                "empty, no-size."), \
     .choices = &bb_artwork_warning_choices)

BB_DECLARE_TABLE (BbArtworkOut, bb_artwork_out, BB_ARTWORK_OUT_FIELDS);

gboolean bb_calc_artwork  (const BbArtworkIn *in,
                           BbArtworkOut      *out,
                           GError           **error);
gboolean bb_artwork_count (const BbArtworkIn *in,
                           BbCounts          *counts,
                           const BbImageWork *work,
                           GError           **error);
void     bb_artwork_fill  (const BbArtworkIn *in,
                           const BbCounts    *counts,
                           BbArtworkOut      *out);

G_END_DECLS
