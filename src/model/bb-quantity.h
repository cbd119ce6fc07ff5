/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/**
 * BbQuantity:
 *
 * What a number measures. Each has one canonical unit, in which it is stored and computed:
 * mm, m², g, ml, g/m², g/ml, °C, °C (difference), s, kPa, mm/s, fraction 0–1, the shop's currency.
 * Energy (kJ) and heat flow (W) are shown in those units everywhere.
 */
typedef enum {
  BB_QUANTITY_NONE = 0,
  BB_QUANTITY_LENGTH,
  BB_QUANTITY_AREA,
  BB_QUANTITY_MASS,
  BB_QUANTITY_VOLUME,
  BB_QUANTITY_MASS_PER_AREA,
  BB_QUANTITY_DENSITY,
  BB_QUANTITY_TEMPERATURE,
  BB_QUANTITY_TEMPERATURE_DIFFERENCE,
  BB_QUANTITY_TIME,
  BB_QUANTITY_PRESSURE,
  BB_QUANTITY_SPEED,
  BB_QUANTITY_FRACTION,
  BB_QUANTITY_MONEY,
  BB_QUANTITY_ENERGY,
  BB_QUANTITY_HEAT_FLOW,
  BB_N_QUANTITIES
} BbQuantity;

/**
 * BbUnitSystem:
 *
 * The units that a person reads and types; chosen once in preferences.
 */
typedef enum {
  BB_UNITS_METRIC = 0,
  BB_UNITS_US,
} BbUnitSystem;

/**
 * BbUnitContext:
 * @system: the units shown, and understood where a text names none
 * @box_area_m2: area of the box in hand, so that `18 g/box` can be read; 0 where no box is known
 * @decimal: the decimal separator that is shown and, beside '.', understood; %NULL for ".". What can be
 *   misread, like 1.234 where "," is shown, is refused
 * @currency: the shop's currency sign; %NULL for none
 *
 * Everything outside a number that decides how it is shown and read. Borrowed strings.
 */
typedef struct {
  BbUnitSystem system;
  double box_area_m2;
  const char *decimal;
  const char *currency;
} BbUnitContext;

const char *bb_quantity_get_canonical_unit (BbQuantity           quantity);
const char *bb_quantity_get_unit           (BbQuantity           quantity,
                                            const BbUnitContext *context);
double      bb_quantity_to_shown           (BbQuantity           quantity,
                                            double               canonical,
                                            const BbUnitContext *context);
char       *bb_quantity_format             (BbQuantity           quantity,
                                            double               canonical,
                                            const BbUnitContext *context);
char       *bb_quantity_format_typed       (BbQuantity           quantity,
                                            double               canonical,
                                            const BbUnitContext *context);
char       *bb_quantity_format_with_unit   (BbQuantity           quantity,
                                            double               canonical,
                                            const BbUnitContext *context);
gboolean    bb_quantity_parse              (BbQuantity           quantity,
                                            const char          *text,
                                            const BbUnitContext *context,
                                            double              *canonical,
                                            GError             **error);
gboolean    bb_dilution_parse              (const char          *text,
                                            const BbUnitContext *context,
                                            double              *parts_concentrate,
                                            double              *parts_water,
                                            GError             **error);
char       *bb_dilution_format             (double               parts_concentrate,
                                            double               parts_water,
                                            const BbUnitContext *context);
char       *bb_dilution_describe           (double               parts_concentrate,
                                            double               parts_water,
                                            const BbUnitContext *context);

G_END_DECLS
