/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib/gi18n-lib.h>

#include "bb-calculator.h"

G_BEGIN_DECLS

/*
 * How evenly a press heats, and what to set it to. Temperatures in °C.
 *
 * readings_c goes row by row: rows · columns readings. mean_c is their mean, spread_c = maximum_c − minimum_c,
 * offset_c = mean_c − set_c. cold_row and cold_column are the place of the coldest reading, counted from 0 as
 * indexes are everywhere; of several equally cold ones the first in reading order.
 *
 * points are calibrations: what the press was set to, and what its surface reached. Surface against setting is
 * fitted by a least squares line, and setting_for_c is where that line reaches wanted_c, wherever it lies. It is
 * null without points or without wanted_c.
 *
 * Assumption: within the points, and not far beyond them, the surface follows the setting along a line.
 *
 * Refused: a number of readings that is not rows · columns; points of fewer than two different settings; points
 * whose line does not rise (by decimals, bb-line.h), or so little or so steeply that it leads beyond numbers.
 * Source: plain arithmetic, and the least squares of the GNU Scientific Library.
 */

#define BB_PRESS_POINT_FIELDS(F, T) \
  F (T, NUMBER, set_c, N_("Set"), .help = N_("What the press was set to."), \
     .quantity = BB_QUANTITY_TEMPERATURE, .limits = BB_BETWEEN (-50, 500), .required = TRUE) \
  F (T, NUMBER, surface_c, N_("Surface"), .help = N_("What a probe measured at the surface."), \
     .quantity = BB_QUANTITY_TEMPERATURE, .limits = BB_BETWEEN (-50, 500), .required = TRUE)

BB_DECLARE_TABLE (BbPressPoint, bb_press_point, BB_PRESS_POINT_FIELDS);

#define BB_PRESS_MAP_IN_FIELDS(F, T) \
  F (T, INTEGER, rows, N_("Rows"), .help = N_("Rows of the grid of readings, from the back of the platen."), \
     .limits = BB_BETWEEN (1, 100), .required = TRUE) \
  F (T, INTEGER, columns, N_("Columns"), .help = N_("Columns of the grid of readings, from the left."), \
     .limits = BB_BETWEEN (1, 100), .required = TRUE) \
  F (T, NUMBERS, readings_c, N_("Readings"), .help = N_("Surface temperatures, row by row."), \
     .quantity = BB_QUANTITY_TEMPERATURE, .limits = BB_BETWEEN (-50, 500), .count = BB_BETWEEN (1, 10000), \
     .required = TRUE) \
  F (T, NUMBER, set_c, N_("Set"), .help = N_("What the press was set to while it was measured."), \
     .quantity = BB_QUANTITY_TEMPERATURE, .limits = BB_BETWEEN (-50, 500), .required = TRUE) \
  F (T, LIST, points, N_("Calibration"), .help = N_("Settings, and the surface temperatures they gave."), \
     .item = &bb_press_point_table, .count = BB_BETWEEN (2, 10000)) \
  F (T, NUMBER, wanted_c, N_("Wanted"), .help = N_("The surface temperature that you want."), \
     .quantity = BB_QUANTITY_TEMPERATURE, .limits = BB_BETWEEN (-50, 500))

BB_DECLARE_TABLE (BbPressMapIn, bb_press_map_in, BB_PRESS_MAP_IN_FIELDS);

#define BB_PRESS_MAP_OUT_FIELDS(F, T) \
  F (T, NUMBER, mean_c, N_("Mean"), .help = N_("Mean of the readings."), .quantity = BB_QUANTITY_TEMPERATURE) \
  F (T, NUMBER, minimum_c, N_("Coldest"), .help = N_("The lowest reading."), .quantity = BB_QUANTITY_TEMPERATURE) \
  F (T, NUMBER, maximum_c, N_("Hottest"), .help = N_("The highest reading."), .quantity = BB_QUANTITY_TEMPERATURE) \
  F (T, NUMBER, spread_c, N_("Spread"), .help = N_("From the coldest to the hottest reading."), \
     .quantity = BB_QUANTITY_TEMPERATURE_DIFFERENCE) \
  F (T, INTEGER, cold_row, N_("Coldest row"), .help = N_("Row of the coldest reading, counted from 0.")) \
  F (T, INTEGER, cold_column, N_("Coldest column"), .help = N_("Column of the coldest reading, counted from 0.")) \
  F (T, NUMBER, offset_c, N_("Offset"), .help = N_("How much hotter the surface is in the mean than was set."), \
     .quantity = BB_QUANTITY_TEMPERATURE_DIFFERENCE) \
  F (T, NUMBER, setting_for_c, N_("Setting"), .help = N_("What to set to reach the wanted surface temperature."), \
     .quantity = BB_QUANTITY_TEMPERATURE)

BB_DECLARE_TABLE (BbPressMapOut, bb_press_map_out, BB_PRESS_MAP_OUT_FIELDS);

BB_DECLARE_CALCULATOR (PressMap, press_map);

G_END_DECLS
