/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

#define BB_N_INKS 6

/* In place of an ink's number: the colour of the letters. */
#define BB_INK_TEXT G_MAXUINT

/**
 * BbInk:
 *
 * A colour: red, green, blue and how much it covers, from 0 to 1.
 */
typedef struct {
  double red;
  double green;
  double blue;
  double alpha;
} BbInk;

/**
 * BbChartStyle:
 * @paper: what it is drawn on: files are painted with it, and words that stand on lines
 * @text: letters, axes and markers of what is not a series
 * @grid: the lines at the marks of an axis
 * @inks: the series
 * @band_alpha: how much a band covers
 * @font: the family of the letters
 * @size: the height of the letters, in the units that are drawn in
 * @line: the width of a line
 *
 * How a chart looks. The inks of a style differ in lightness too, so that they can be told apart in grey.
 */
typedef struct {
  BbInk paper;
  BbInk text;
  BbInk grid;
  BbInk inks[BB_N_INKS];
  double band_alpha;
  const char *font;
  double size;
  double line;
} BbChartStyle;

extern const BbChartStyle bb_chart_style_light;
extern const BbChartStyle bb_chart_style_dark;
extern const BbChartStyle bb_chart_style_print;

const BbInk *bb_chart_style_get_ink (const BbChartStyle *self,
                                     guint               ink);

G_END_DECLS
