/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bb-print-mode.h"

#include "bb-lab.h"

/* Common practice, no source; the top of bb-print-mode.h says what they are for. */
#define WHITE_LIGHTNESS 94.0
#define WHITE_CHROMA 5.0
#define BLACK_LIGHTNESS 16.0
#define BLACK_CHROMA 6.0

static BbPrintMode
choose_mode (const char   *srgb,
             BbModeReason *reason)
{
  guint8 rgb[3] = { 0 };
  cmsCIELab lab;
  double chroma = 0.0;

  bb_srgb_parse (srgb, rgb);
  lab = bb_lab_from_srgb (rgb);
  chroma = hypot (lab.a, lab.b);

  if (lab.L >= WHITE_LIGHTNESS && chroma <= WHITE_CHROMA)
    {
      *reason = BB_MODE_REASON_GARMENT_WHITE;
      return BB_PRINT_COLOUR_ONLY;
    }
  if (lab.L <= BLACK_LIGHTNESS && chroma <= BLACK_CHROMA)
    {
      *reason = BB_MODE_REASON_GARMENT_BLACK;
      return BB_PRINT_UNDERBASE_KNOCKOUT;
    }
  *reason = BB_MODE_REASON_GARMENT_COLOURED;

  return BB_PRINT_UNDERBASE;
}

static void
add_reason (GStrvBuilder *reasons,
            gboolean      holds,
            BbModeReason  reason)
{
  if (holds)
    g_strv_builder_add (reasons, bb_choices_get_key (&bb_mode_reason_choices, (int) reason));
}

/**
 * bb_calc_print_mode:
 * @in: the garment's colour, and the artwork's shares of white, black and soft pixels
 * @out: the mode to start from, and why
 * @error: return location for a #GError in the domain %BB_MODEL_ERROR
 *
 * Chooses a print mode; see the top of bb-print-mode.h.
 *
 * Returns: %TRUE
 */
gboolean
bb_calc_print_mode (const BbPrintModeIn  *in,
                    BbPrintModeOut       *out,
                    G_GNUC_UNUSED GError **error)
{
  g_autoptr (GStrvBuilder) reasons = g_strv_builder_new ();
  BbModeReason garment = BB_MODE_REASON_GARMENT_COLOURED;
  BbPrintMode mode = choose_mode (in->garment_srgb, &garment);
  gboolean knockout = mode == BB_PRINT_UNDERBASE_KNOCKOUT;

  add_reason (reasons, TRUE, garment);
  add_reason (reasons, mode == BB_PRINT_COLOUR_ONLY && in->white_fraction > 0.0, BB_MODE_REASON_WHITE_IS_GARMENT);
  add_reason (reasons, knockout && in->black_fraction > 0.0, BB_MODE_REASON_BLACK_IS_GARMENT);
  add_reason (reasons, knockout && in->black_fraction == 0.0, BB_MODE_REASON_NO_BLACK);
  add_reason (reasons, mode != BB_PRINT_COLOUR_ONLY && in->partial_fraction > 0.0, BB_MODE_REASON_SOFT_EDGES);
  out->mode = (int) mode;
  out->reasons = g_strv_builder_end (reasons);

  return TRUE;
}

static gboolean
check_print_mode (gconstpointer record,
                  GError      **error)
{
  const BbPrintModeIn *in = record;

  return bb_srgb_check (in->garment_srgb, "garment_srgb", error);
}

BB_DEFINE_CHOICES (bb_mode_reason, "mode_reason", BB_MODE_REASON_CHOICES);
BB_DEFINE_TABLE (BbPrintModeIn, bb_print_mode_in, "print_mode_in", N_("Print mode"), BB_PRINT_MODE_IN_FIELDS,
                 check_print_mode)
BB_DEFINE_TABLE (BbPrintModeOut, bb_print_mode_out, "print_mode_out", N_("Print mode"), BB_PRINT_MODE_OUT_FIELDS, NULL)
BB_DEFINE_CALCULATOR (PrintMode, print_mode, "print-mode", N_("Print mode"),
                      .summary = N_("Which print mode suits a garment's colour and an artwork, and why."),
                      .assumes = N_("A garment is white from L* 94 with a chroma of at most 5, and black up to L* 16 "
                                    "with at most 6. Its colour on a screen is near enough. A test on the garment "
                                    "decides."),
                      .source = N_("CIELAB (D50) by Little CMS from IEC 61966-2-1 sRGB. The limits are common "
                                   "practice, no source."))
