/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bb-units-private.h"

#include <glib/gi18n-lib.h>
#include <string.h>

/*
 * Every unit that is shown or understood. Sources:
 * SI prefixes, min, h, l, bar: the SI Brochure, 9th edition (BIPM 2019), sections 3 and 4.
 * in = 25.4 mm, yd = 0.9144 m, lb = 453.59237 g, oz = lb / 16, US gallon = 231 in³, fl oz = gallon / 128:
 *   NIST SP 811 (2008), Appendix B, all exact.
 * psi = lbf/in², lbf = 4.4482216152605 N by the standard gravity of 9.80665 m/s²: SP 811, exact; so is kgf.
 * Btu = 1.05505585262 kJ, the International Table one, SP 811.
 * °F: (t − 32) · 5 / 9, SP 811.
 * That benches weigh on gram scales, name presses in bar or psi and US belts in ft/min is common
 * practice, no source, and so are the numbers of decimals.
 */
#define CANONICAL BB_UNIT_CANONICAL
#define METRIC BB_UNIT_METRIC
#define US BB_UNIT_US
#define EVERYWHERE (CANONICAL | METRIC | US)
#define STEPS BB_UNIT_STEPS

static const BbUnit units[] = {
  { BB_QUANTITY_LENGTH, "mm", "mm|millimetre|millimetres|millimeter|millimeters", 1, 1, 0, 1,
    CANONICAL | METRIC },
  { BB_QUANTITY_LENGTH, "cm", "cm|centimetre|centimetres|centimeter|centimeters", 10, 1, 0, 3, 0 },
  { BB_QUANTITY_LENGTH, "m", "m|metre|metres|meter|meters", 1000, 1, 0, 4, 0 },
  { BB_QUANTITY_LENGTH, "µm", "um|micron|microns", 1, 1000, 0, 1, 0 },
  { BB_QUANTITY_LENGTH, "in", "in|inch|inches|\"|''", 127, 5, 0, 2, US | STEPS },
  { BB_QUANTITY_LENGTH, "ft", "ft|foot|feet|'", 1524, 5, 0, 4, STEPS },
  { BB_QUANTITY_LENGTH, "yd", "yd|yard|yards", 4572, 5, 0, 4, STEPS },

  { BB_QUANTITY_AREA, "m²", "m2|sq m|sqm", 1, 1, 0, 4, CANONICAL },
  { BB_QUANTITY_AREA, "cm²", "cm2|sq cm|sqcm", 1, 1e4, 0, 1, METRIC },
  { BB_QUANTITY_AREA, "dm²", "dm2", 1, 100, 0, 2, 0 },
  { BB_QUANTITY_AREA, "mm²", "mm2|sq mm|sqmm", 1, 1e6, 0, 0, 0 },
  { BB_QUANTITY_AREA, "in²", "in2|sq in|sqin", 64516, 1e8, 0, 2, US },
  { BB_QUANTITY_AREA, "ft²", "ft2|sq ft|sqft", 9290304, 1e8, 0, 3, 0 },
  { BB_QUANTITY_AREA, "yd²", "yd2|sq yd|sqyd", 83612736, 1e8, 0, 4, 0 },

  { BB_QUANTITY_MASS, "g", "g|gram|grams|gramme|grammes", 1, 1, 0, 2, EVERYWHERE },
  { BB_QUANTITY_MASS, "kg", "kg|kilogram|kilograms", 1000, 1, 0, 4, 0 },
  { BB_QUANTITY_MASS, "mg", "mg|milligram|milligrams", 1, 1000, 0, 0, 0 },
  { BB_QUANTITY_MASS, "oz", "oz|ounce|ounces", 28349523125, 1e9, 0, 3, STEPS },
  { BB_QUANTITY_MASS, "lb", "lb|lbs|pound|pounds", 45359237, 1e5, 0, 4, STEPS },

  { BB_QUANTITY_VOLUME, "ml", "ml|millilitre|millilitres|milliliter|milliliters|cm3|cc", 1, 1, 0, 1,
    EVERYWHERE },
  { BB_QUANTITY_VOLUME, "cl", "cl", 10, 1, 0, 2, 0 },
  { BB_QUANTITY_VOLUME, "l", "l|litre|litres|liter|liters|dm3", 1000, 1, 0, 4, 0 },
  { BB_QUANTITY_VOLUME, "fl oz", "fl oz|floz|fl. oz|us fl oz", 295735295625, 1e10, 0, 2, 0 },
  { BB_QUANTITY_VOLUME, "pt", "pt|us pt|pint|pints", 473176473, 1e6, 0, 3, 0 },
  { BB_QUANTITY_VOLUME, "qt", "qt|us qt|quart|quarts", 946352946, 1e6, 0, 3, 0 },
  { BB_QUANTITY_VOLUME, "gal", "gal|us gal|gallon|gallons", 3785411784, 1e6, 0, 4, 0 },

  { BB_QUANTITY_MASS_PER_AREA, "g/m²", "g/m2|gsm|g/sq m|g/sqm", 1, 1, 0, 1, CANONICAL | METRIC },
  { BB_QUANTITY_MASS_PER_AREA, "oz/yd²", "oz/yd2|osy|oz/sq yd|oz/sqyd", 28349523125, 836127360,
    0, 2, US },
  { BB_QUANTITY_MASS_PER_AREA, "g/in²", "g/in2|g/sq in|g/sqin", 1e8, 64516, 0, 4, 0 },
  { BB_QUANTITY_MASS_PER_AREA, "g/ft²", "g/ft2|g/sq ft|g/sqft", 1e8, 9290304, 0, 3, 0 },
  { BB_QUANTITY_MASS_PER_AREA, "mg/cm²", "mg/cm2|mg/sq cm|mg/sqcm", 10, 1, 0, 2, 0 },
  { BB_QUANTITY_MASS_PER_AREA, "kg/m²", "kg/m2", 1000, 1, 0, 4, 0 },
  { BB_QUANTITY_MASS_PER_AREA, "g/box", "g/box|grams/box|gram/box", 1, 1, 0, 2, BB_UNIT_PER_BOX },

  { BB_QUANTITY_DENSITY, "g/ml", "g/ml|g/cm3|g/cc|kg/l|kg/dm3", 1, 1, 0, 4, EVERYWHERE },
  { BB_QUANTITY_DENSITY, "g/l", "g/l|kg/m3", 1, 1000, 0, 1, 0 },
  { BB_QUANTITY_DENSITY, "lb/gal", "lb/gal|lbs/gal|lb/us gal|ppg", 453592370, 3785411784, 0, 3, 0 },

  { BB_QUANTITY_TEMPERATURE, "°C", "°c|c|℃|deg c|degc|° c|celsius", 1, 1, 0, 2,
    CANONICAL | METRIC },
  { BB_QUANTITY_TEMPERATURE, "°F", "°f|f|℉|deg f|degf|° f|fahrenheit", 5, 9, 32, 2, US },
  { BB_QUANTITY_TEMPERATURE, "K", "k|kelvin", 1, 1, 273.15, 2, 0 },

  { BB_QUANTITY_TEMPERATURE_DIFFERENCE, "°C", "°c|c|℃|deg c|degc|° c|k|kelvin", 1, 1, 0, 2,
    CANONICAL | METRIC },
  { BB_QUANTITY_TEMPERATURE_DIFFERENCE, "°F", "°f|f|℉|deg f|degf|° f", 5, 9, 0, 2, US },

  { BB_QUANTITY_TIME, "s", "s|sec|secs|second|seconds", 1, 1, 0, 1, EVERYWHERE | STEPS },
  { BB_QUANTITY_TIME, "min", "min|mins|minute|minutes", 60, 1, 0, 2, STEPS },
  { BB_QUANTITY_TIME, "h", "h|hr|hrs|hour|hours", 3600, 1, 0, 4, STEPS },

  { BB_QUANTITY_PRESSURE, "kPa", "kpa", 1, 1, 0, 1, CANONICAL },
  { BB_QUANTITY_PRESSURE, "bar", "bar|bars", 100, 1, 0, 2, METRIC },
  { BB_QUANTITY_PRESSURE, "mbar", "mbar|hpa", 1, 10, 0, 0, 0 },
  { BB_QUANTITY_PRESSURE, "Pa", "pa", 1, 1000, 0, 0, 0 },
  { BB_QUANTITY_PRESSURE, "MPa", "MPa", 1000, 1, 0, 4, BB_UNIT_EXACT },
  { BB_QUANTITY_PRESSURE, "psi", "psi|lbf/in2|lb/in2", 4.4482216152605, 0.64516, 0, 1, US },
  { BB_QUANTITY_PRESSURE, "kgf/cm²", "kgf/cm2|kp/cm2|kg/cm2", 98.0665, 1, 0, 3, 0 },
  { BB_QUANTITY_PRESSURE, "N/cm²", "n/cm2", 10, 1, 0, 2, 0 },

  { BB_QUANTITY_SPEED, "mm/s", "mm/s|mm/sec", 1, 1, 0, 1, CANONICAL | METRIC },
  { BB_QUANTITY_SPEED, "cm/s", "cm/s|cm/sec", 10, 1, 0, 2, 0 },
  { BB_QUANTITY_SPEED, "m/s", "m/s|m/sec", 1000, 1, 0, 4, 0 },
  { BB_QUANTITY_SPEED, "m/min", "m/min", 1000, 60, 0, 2, 0 },
  { BB_QUANTITY_SPEED, "in/s", "in/s|in/sec|ips", 127, 5, 0, 2, 0 },
  { BB_QUANTITY_SPEED, "in/min", "in/min|ipm", 127, 300, 0, 1, 0 },
  { BB_QUANTITY_SPEED, "ft/min", "ft/min|fpm", 1524, 300, 0, 2, US },

  { BB_QUANTITY_FRACTION, "%", "%|percent|per cent|pct", 1, 100, 0, 2, METRIC | US },

  { BB_QUANTITY_ENERGY, "kJ", "kj", 1, 1, 0, 2, EVERYWHERE },
  { BB_QUANTITY_ENERGY, "J", "j", 1, 1000, 0, 0, 0 },
  { BB_QUANTITY_ENERGY, "MJ", "MJ", 1000, 1, 0, 4, BB_UNIT_EXACT },
  { BB_QUANTITY_ENERGY, "Wh", "wh", 36, 10, 0, 2, 0 },
  { BB_QUANTITY_ENERGY, "kWh", "kwh", 3600, 1, 0, 4, 0 },
  { BB_QUANTITY_ENERGY, "Btu", "btu", 1.05505585262, 1, 0, 2, 0 },

  { BB_QUANTITY_HEAT_FLOW, "W", "w|watt|watts", 1, 1, 0, 1, EVERYWHERE },
  { BB_QUANTITY_HEAT_FLOW, "kW", "kw", 1000, 1, 0, 4, 0 },
  { BB_QUANTITY_HEAT_FLOW, "Btu/h", "btu/h|btu/hr", 1055.05585262, 3600, 0, 0, 0 },
};

static const struct {
  const char *name;
  const char *example;
} words[BB_N_QUANTITIES] = {
  [BB_QUANTITY_NONE] = { N_("plain number"), N_("Write a plain number without a unit, like 3.") },
  [BB_QUANTITY_LENGTH] = { N_("length"), N_("Write a length like 355.6 mm or 14 in.") },
  [BB_QUANTITY_AREA] = { N_("area"), N_("Write an area like 1445 cm² or 14 × 16 in.") },
  [BB_QUANTITY_MASS] = { N_("mass"), N_("Write a mass like 18.5 g or 6 oz.") },
  [BB_QUANTITY_VOLUME] = { N_("volume"), N_("Write a volume like 500 ml or 16 fl oz.") },
  [BB_QUANTITY_MASS_PER_AREA] = { N_("mass per area"),
                                  N_("Write it like 120 g/m² or 5.3 oz/yd².") },
  [BB_QUANTITY_DENSITY] = { N_("density"), N_("Write a density like 1.05 g/ml or 8.8 lb/gal.") },
  [BB_QUANTITY_TEMPERATURE] = { N_("temperature"),
                                N_("Write a temperature like 165 °C or 330 °F.") },
  [BB_QUANTITY_TEMPERATURE_DIFFERENCE] = {
    N_("temperature difference"), N_("Write a difference of temperatures like 5 °C or 9 °F."),
  },
  [BB_QUANTITY_TIME] = { N_("time"), N_("Write a time like 90 s, 1 min 30 s or 1:30.") },
  [BB_QUANTITY_PRESSURE] = { N_("pressure"), N_("Write a pressure like 2.8 bar or 40 psi.") },
  [BB_QUANTITY_SPEED] = { N_("speed"), N_("Write a speed like 20 mm/s or 4 ft/min.") },
  [BB_QUANTITY_FRACTION] = { N_("share"), N_("Write a share in percent, like 10 %.") },
  [BB_QUANTITY_MONEY] = { N_("amount of money"), N_("Write an amount of money like 12.50.") },
  [BB_QUANTITY_ENERGY] = { N_("energy"), N_("Write an energy like 60 kJ or 0.02 kWh.") },
  [BB_QUANTITY_HEAT_FLOW] = { N_("heat flow"), N_("Write a heat flow like 900 W.") },
};

static const BbUnit *
find_by_flag (BbQuantity quantity,
              guint      flag)
{
  for (guint i = 0; i < G_N_ELEMENTS (units); i++)
    if (units[i].quantity == quantity && (units[i].flags & flag) != 0)
      return &units[i];

  return NULL;
}

/**
 * _bb_unit_get_canonical:
 * @quantity: a quantity
 *
 * Returns: (nullable): the unit of stored values; %NULL for plain numbers, fractions and money
 */
const BbUnit *
_bb_unit_get_canonical (BbQuantity quantity)
{
  return find_by_flag (quantity, BB_UNIT_CANONICAL);
}

/**
 * _bb_unit_get_shown:
 * @quantity: a quantity
 * @system: a system of units
 *
 * Returns: (nullable): the unit that @system shows; %NULL for plain numbers and money
 */
const BbUnit *
_bb_unit_get_shown (BbQuantity   quantity,
                    BbUnitSystem system)
{
  return find_by_flag (quantity, system == BB_UNITS_US ? BB_UNIT_US : BB_UNIT_METRIC);
}

static gboolean
is_word_of (const BbUnit *self,
            const char   *word)
{
  gsize length = strlen (word);

  for (const char *p = self->words; p != NULL; p = strchr (p, '|'))
    {
      gsize n = 0;

      p += *p == '|' ? 1 : 0;
      n = strcspn (p, "|");
      if (n != length)
        continue;
      if (((self->flags & BB_UNIT_EXACT) != 0 ? strncmp (p, word, n)
                                              : g_ascii_strncasecmp (p, word, n)) == 0)
        return TRUE;
    }

  return FALSE;
}

/**
 * _bb_unit_find:
 * @quantity: a quantity
 * @word: a unit as typed, squares and cubes written as 2 and 3
 *
 * Returns: (nullable): the unit of @quantity that may be typed as @word
 */
const BbUnit *
_bb_unit_find (BbQuantity  quantity,
               const char *word)
{
  for (guint i = 0; i < G_N_ELEMENTS (units); i++)
    if (units[i].quantity == quantity && is_word_of (&units[i], word))
      return &units[i];

  return NULL;
}

/**
 * _bb_unit_find_any:
 * @word: a unit as typed, squares and cubes written as 2 and 3
 *
 * Returns: (nullable): the first unit of any quantity that may be typed as @word
 */
const BbUnit *
_bb_unit_find_any (const char *word)
{
  for (guint i = 0; i < G_N_ELEMENTS (units); i++)
    if (is_word_of (&units[i], word))
      return &units[i];

  return NULL;
}

/**
 * _bb_unit_to_canonical:
 * @self: a unit
 * @value: a value in it
 *
 * Returns: the value in the canonical unit of the quantity
 */
double
_bb_unit_to_canonical (const BbUnit *self,
                       double        value)
{
  return (value - self->offset) * self->numerator / self->denominator;
}

/**
 * _bb_unit_from_canonical:
 * @self: a unit
 * @canonical: a value in the canonical unit of the quantity
 *
 * Returns: the value in @self
 */
double
_bb_unit_from_canonical (const BbUnit *self,
                         double        canonical)
{
  return canonical * self->denominator / self->numerator + self->offset;
}

/**
 * _bb_quantity_get_name:
 * @quantity: a quantity
 *
 * Returns: what it is called, translated
 */
const char *
_bb_quantity_get_name (BbQuantity quantity)
{
  return _(words[quantity].name);
}

/**
 * _bb_quantity_get_example:
 * @quantity: a quantity
 *
 * Returns: one translated sentence that says how to write it
 */
const char *
_bb_quantity_get_example (BbQuantity quantity)
{
  return _(words[quantity].example);
}
