/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bb-placement.h"

#define MM_PER_M 1000.0
#define MM2_PER_M2 1e6

/* In pixels, as numbers to reckon with. */
typedef struct {
  double x;
  double y;
  double width;
  double height;
} Pixels;

/* Where nothing is visible the whole picture stands for the art. */
static Pixels
find_art (const BbCounts *counts)
{
  if (counts->left == counts->right)
    return (Pixels) { 0, 0, counts->width, counts->height };

  return (Pixels) { counts->left, counts->top, counts->right - counts->left, counts->bottom - counts->top };
}

/**
 * bb_placement_natural_width:
 * @counts: what was counted
 *
 * Returns: width of the art in mm at the size that the file names; NaN where it names none
 */
double
bb_placement_natural_width (const BbCounts *counts)
{
  if (counts->pixels_per_metre_x == 0)
    return (double) NAN;

  return MM_PER_M * find_art (counts).width / counts->pixels_per_metre_x;
}

/**
 * bb_placement_width_for_height:
 * @counts: what was counted
 * @height_mm: height of the art
 *
 * Returns: width of the art in mm
 */
double
bb_placement_width_for_height (const BbCounts *counts,
                               double          height_mm)
{
  const Pixels art = find_art (counts);

  return height_mm * art.width / art.height;
}

/**
 * bb_placement_height_for_width:
 * @counts: what was counted
 * @width_mm: width of the art
 *
 * Returns: height of the art in mm
 */
double
bb_placement_height_for_width (const BbCounts *counts,
                               double          width_mm)
{
  const Pixels art = find_art (counts);

  return width_mm * art.height / art.width;
}

/**
 * bb_placement_picture_width:
 * @counts: what was counted
 * @width_mm: width of the art
 *
 * Returns: width of the whole picture in mm, as the calculator artwork takes it
 */
double
bb_placement_picture_width (const BbCounts *counts,
                            double          width_mm)
{
  const Pixels art = find_art (counts);

  return width_mm * counts->width / art.width;
}

static BbRectangle
unite (const BbRectangle *a,
       const BbRectangle *b)
{
  const double right_mm = fmax (a->x_mm + a->width_mm, b->x_mm + b->width_mm);
  const double bottom_mm = fmax (a->y_mm + a->height_mm, b->y_mm + b->height_mm);
  BbRectangle all = { .x_mm = fmin (a->x_mm, b->x_mm), .y_mm = fmin (a->y_mm, b->y_mm) };

  all.width_mm = right_mm - all.x_mm;
  all.height_mm = bottom_mm - all.y_mm;

  return all;
}

/**
 * bb_placement_fill:
 * @self: (out caller-allocates): where everything lies
 * @counts: what was counted
 * @width_mm: width of the art as it is placed, more than 0
 * @box_width_mm: width of the box that is sprayed
 * @box_height_mm: its height
 */
void
bb_placement_fill (BbPlacement    *self,
                   const BbCounts *counts,
                   double          width_mm,
                   double          box_width_mm,
                   double          box_height_mm)
{
  const Pixels art = find_art (counts);
  const double pixel_mm = width_mm / art.width;

  self->picture = (BbRectangle) { 0, 0, counts->width * pixel_mm, counts->height * pixel_mm };
  self->art = (BbRectangle) { art.x * pixel_mm, art.y * pixel_mm, width_mm, art.height * pixel_mm };
  self->box = (BbRectangle) { .x_mm = self->art.x_mm + (self->art.width_mm - box_width_mm) / 2,
                              .y_mm = self->art.y_mm + (self->art.height_mm - box_height_mm) / 2,
                              .width_mm = box_width_mm,
                              .height_mm = box_height_mm };
  self->view = unite (&self->art, &self->box);
}

static BbShare
share (double area_mm2,
       double whole_mm2)
{
  return (BbShare) { .fraction = whole_mm2 > 0 ? area_mm2 / whole_mm2 : 0.0, .area_m2 = area_mm2 / MM2_PER_M2 };
}

/**
 * bb_coverage_fill:
 * @self: (out caller-allocates): how much of the art box is covered; nothing where nothing is visible
 * @in: how the picture is placed
 * @out: what bb_artwork_fill() made of it
 */
void
bb_coverage_fill (BbCoverage         *self,
                  const BbArtworkIn  *in,
                  const BbArtworkOut *out)
{
  const double pixel_mm = in->print_width_mm / (double) out->width_px;
  const double pixel_mm2 = pixel_mm * pixel_mm;
  const double all_mm2 = (double) out->width_px * (double) out->height_px * pixel_mm2;
  double box_mm2 = 0;

  if (out->art_box != NULL)
    {
      const BbPixelBox *art = out->art_box;

      box_mm2 = (double) art->width_px * (double) art->height_px * pixel_mm2;
    }

  self->colour = share (out->colour_area_mm2, box_mm2);
  self->underbase = share (out->underbase_area_mm2, box_mm2);
  self->highlight = share (in->mode == BB_PRINT_COLOUR_ONLY ? 0.0
                           : out->underbase_area_mm2 - out->colour_area_mm2, box_mm2);
  self->knockout = share (out->knockout_area_mm2, box_mm2);
  self->soft = share (out->partial_fraction * all_mm2, box_mm2);
}
