/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-calc"

#include "bb-box.h"

#include "bb-canonical.h"

#define MM2_PER_M2 1e6

static gboolean
refuse_if_beyond (const char *key,
                  double      print,
                  double      reach,
                  GError    **error)
{
  g_autofree char *print_text = NULL;
  g_autofree char *reach_text = NULL;

  if (isnan (reach) || print <= reach)
    return FALSE;

  print_text = bb_number_to_text (print);
  reach_text = bb_number_to_text (reach);
  g_set_error (error, BB_MODEL_ERROR, BB_MODEL_ERROR_VALUE, "%s: %s is above the maximum %s", key, print_text,
               reach_text);
  return TRUE;
}

static double
clip (double    wanted,
      double    reach,
      gboolean *clipped)
{
  if (isnan (reach) || wanted <= reach)
    return wanted;

  *clipped = TRUE;

  return reach;
}

/**
 * bb_calc_box:
 * @in: print size, margin and reach
 * @out: the box
 * @error: return location for a #GError in the domain %BB_MODEL_ERROR
 *
 * Computes the rectangle to spray; see the top of bb-box.h.
 *
 * Returns: %FALSE if the print itself is larger than the reach
 */
gboolean
bb_calc_box (const BbBoxIn *in,
             BbBoxOut      *out,
             GError       **error)
{
  gboolean clipped = FALSE;

  if (refuse_if_beyond ("print_width_mm", in->print_width_mm, in->max_width_mm, error) ||
      refuse_if_beyond ("print_height_mm", in->print_height_mm, in->max_height_mm, error))
    return FALSE;

  out->box_width_mm = clip (in->print_width_mm + 2.0 * in->margin_mm, in->max_width_mm, &clipped);
  out->box_height_mm = clip (in->print_height_mm + 2.0 * in->margin_mm, in->max_height_mm, &clipped);
  out->box_area_m2 = out->box_width_mm * out->box_height_mm / MM2_PER_M2;
  out->clipped = clipped;

  return TRUE;
}

BB_DEFINE_TABLE (BbBoxIn, bb_box_in, "box_in", N_("Box"), BB_BOX_IN_FIELDS, NULL)
BB_DEFINE_TABLE (BbBoxOut, bb_box_out, "box_out", N_("Box"), BB_BOX_OUT_FIELDS, NULL)
BB_DEFINE_CALCULATOR (Box, box, "box", N_("Box"),
                      .summary = N_("The rectangle to spray: the print plus a margin, clipped to the sprayer's reach."),
                      .assumes = N_("The print lies square on the platen."),
                      .source = N_("Plain geometry."))
