/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-report"

#include "bb-chart-style.h"

#define INK(red, green, blue) { (red) / 255.0, (green) / 255.0, (blue) / 255.0, 1.0 }

/* The accent first, then inks by eye that differ from it and each other in lightness and hue. */
#define DARK_INKS \
  { \
    INK (0x1d, 0x6f, 0x72), INK (0xb3, 0x4a, 0x1c), INK (0x5b, 0x3a, 0x86), INK (0x8a, 0x6a, 0x00), \
      INK (0x1f, 0x4e, 0x9c), INK (0x5c, 0x5c, 0x5c), \
  }
#define PALE_INKS \
  { \
    INK (0x5f, 0xc9, 0xc4), INK (0xf0, 0x9b, 0x6a), INK (0xc0, 0xa4, 0xf0), INK (0xe3, 0xc1, 0x4a), \
      INK (0x8a, 0xb8, 0xf5), INK (0xc4, 0xc4, 0xc4), \
  }

const BbChartStyle bb_chart_style_light = {
  .paper = { 0.98, 0.98, 0.98, 1 },
  .text = { 0.12, 0.12, 0.13, 1 },
  .grid = { 0, 0, 0, 0.12 },
  .inks = DARK_INKS,
  .band_alpha = 0.16,
  .font = "Sans",
  .size = 12.5,
  .line = 1.5,
};

const BbChartStyle bb_chart_style_dark = {
  .paper = { 0.14, 0.14, 0.15, 1 },
  .text = { 0.93, 0.93, 0.94, 1 },
  .grid = { 1, 1, 1, 0.16 },
  .inks = PALE_INKS,
  .band_alpha = 0.22,
  .font = "Sans",
  .size = 12.5,
  .line = 1.5,
};

/* In points, on white paper. */
const BbChartStyle bb_chart_style_print = {
  .paper = { 1, 1, 1, 1 },
  .text = { 0, 0, 0, 1 },
  .grid = { 0, 0, 0, 0.14 },
  .inks = DARK_INKS,
  .band_alpha = 0.16,
  .font = "Sans",
  .size = 8.5,
  .line = 0.9,
};

/**
 * bb_chart_style_get_ink:
 * @self: a style
 * @ink: the number of an ink, counted from 0 and begun again after the last, or %BB_INK_TEXT
 *
 * Returns: (transfer none): the colour
 */
const BbInk *
bb_chart_style_get_ink (const BbChartStyle *self,
                        guint               ink)
{
  return ink == BB_INK_TEXT ? &self->text : &self->inks[ink % BB_N_INKS];
}
