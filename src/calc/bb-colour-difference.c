/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-calc"

#include "bb-colour-difference.h"

/* Little CMS answers 0 for any two colours of L* = 0; the weights are the same for every L* below 16. */
static double
cmc_2_1 (cmsCIELab first,
         cmsCIELab second)
{
  if (first.L == 0.0 && second.L == 0.0)
    first.L = second.L = 1.0;

  return cmsCMCdeltaE (&first, &second, 2.0, 1.0);
}

/**
 * bb_calc_colour_difference:
 * @in: two colours
 * @out: their differences
 * @error: return location for a #GError in the domain %BB_MODEL_ERROR
 *
 * Compares two colours; see the top of bb-colour-difference.h.
 *
 * Returns: %TRUE
 */
gboolean
bb_calc_colour_difference (const BbColourDifferenceIn *in,
                           BbColourDifferenceOut      *out,
                           G_GNUC_UNUSED GError      **error)
{
  cmsCIELab first = bb_lab_from_array (in->lab_1);
  cmsCIELab second = bb_lab_from_array (in->lab_2);
  cmsCIELCh first_lch;
  cmsCIELCh second_lch;

  cmsLab2LCh (&first_lch, &first);
  cmsLab2LCh (&second_lch, &second);

  out->de_ab = cmsDeltaE (&first, &second);
  out->de_00 = cmsCIE2000DeltaE (&first, &second, 1.0, 1.0, 1.0);
  out->de_cmc_2_1 = cmc_2_1 (first, second);
  out->dl = second.L - first.L;
  out->dc = second_lch.C - first_lch.C;
  out->dh = bb_lch_hue_difference (&first_lch, &second_lch);

  return TRUE;
}

static gboolean
check_in (gconstpointer record,
          GError      **error)
{
  const BbColourDifferenceIn *in = record;

  return bb_lab_check ("lab_1", in->lab_1, error) && bb_lab_check ("lab_2", in->lab_2, error);
}

BB_DEFINE_TABLE (BbColourDifferenceIn, bb_colour_difference_in, "colour_difference_in", N_("Colour difference"),
                 BB_COLOUR_DIFFERENCE_IN_FIELDS, check_in)
BB_DEFINE_TABLE (BbColourDifferenceOut, bb_colour_difference_out, "colour_difference_out", N_("Colour difference"),
                 BB_COLOUR_DIFFERENCE_OUT_FIELDS, NULL)
BB_DEFINE_CALCULATOR (ColourDifference, colour_difference, "colour-difference", N_("Colour difference"),
                      .summary = N_("How far two colours lie apart."),
                      .assumes = N_("Both colours were measured the same way: instrument, illuminant and observer."),
                      .source = N_("ISO/CIE 11664-4 and 11664-6, ISO 105-J03, by Little CMS."))
