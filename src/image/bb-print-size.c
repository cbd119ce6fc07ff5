/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-image"

#include "bb-print-size.h"

#include "bb-placement.h"

/**
 * bb_print_size_is_length:
 * @mm: what a form has
 *
 * Returns: whether something can be as long
 */
gboolean
bb_print_size_is_length (double mm)
{
  return isfinite (mm) && mm > 0;
}

/* What was typed stands; where nothing was, the file's own size does. */
static double
choose_width (const BbPrintSize *self,
              const BbCounts    *art)
{
  const double natural_mm = bb_placement_natural_width (art);

  if (!self->is_typed && !isnan (natural_mm))
    return natural_mm;
  if (bb_print_size_is_length (self->width_mm))
    return self->width_mm;
  if (bb_print_size_is_length (self->height_mm))
    return bb_placement_width_for_height (art, self->height_mm);

  return natural_mm;
}

/**
 * bb_print_size_take_art:
 * @self: a size
 * @art: what was counted of a new artwork, of which something is visible
 *
 * Makes the size that of a new artwork: as large as was typed, in the artwork's ratio; or as large as its file says.
 *
 * Returns: %FALSE where neither is known, and the size stays
 */
gboolean
bb_print_size_take_art (BbPrintSize    *self,
                        const BbCounts *art)
{
  const double width_mm = choose_width (self, art);

  if (isnan (width_mm))
    return FALSE;
  self->width_mm = width_mm;
  self->height_mm = bb_placement_height_for_width (art, width_mm);

  return TRUE;
}

/**
 * bb_print_size_follow:
 * @self: a size
 * @art: (nullable): what was counted of the artwork; %NULL where there is none, or nothing of it is visible
 * @width_mm: (inout): width of the print as the form has it now; NaN where it has none
 * @height_mm: (inout): its height
 *
 * Takes over what the form has now. Where a person changed one of the two, the other is made to suit the artwork; where
 * both, the width counts.
 *
 * Returns: %TRUE if one of them was made to suit the artwork
 */
gboolean
bb_print_size_follow (BbPrintSize    *self,
                      const BbCounts *art,
                      double         *width_mm,
                      double         *height_mm)
{
  const gboolean width_changed = bb_print_size_is_length (*width_mm) && *width_mm != self->width_mm;
  const gboolean height_changed = bb_print_size_is_length (*height_mm) && *height_mm != self->height_mm;

  self->is_typed = self->is_typed || width_changed || height_changed;
  if (art != NULL && !width_changed && !height_changed)
    return FALSE;

  if (art != NULL && width_changed)
    *height_mm = bb_placement_height_for_width (art, *width_mm);
  else if (art != NULL)
    *width_mm = bb_placement_width_for_height (art, *height_mm);
  self->width_mm = *width_mm;
  self->height_mm = *height_mm;

  return art != NULL;
}
