/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bb-error.h"
#include "bb-quantity.h"

#include <math.h>
#include <string.h>

/* 14 in × 16 in, the box of the examples; the area is row `14 in * 16 in,m^2` of tests/reference/units.csv. */
#define BOX_M2 0.14451584

static const BbUnitContext us = { BB_UNITS_US, BOX_M2, ".", "$" };
static const BbUnitContext metric = { BB_UNITS_METRIC, BOX_M2, ".", "€" };
static const BbUnitContext comma = { BB_UNITS_METRIC, BOX_M2, ",", "kr" };
static const BbUnitContext arabic = { BB_UNITS_METRIC, BOX_M2, "٫", NULL };
static const BbUnitContext bare = { BB_UNITS_METRIC, 0, NULL, NULL };
static const BbUnitContext endless = { BB_UNITS_METRIC, (double) INFINITY, NULL, NULL };

typedef struct {
  BbQuantity quantity;
  const BbUnitContext *context;
  const char *text;
  double canonical;
} Reading;

/*
 * Where no other source is named, expected values follow from the definitions of NIST SP 811 (2008), Appendix B:
 * in = 25.4 mm, lb = 453.59237 g, US gallon = 3785.411784 ml, psi and kgf by g0 = 9.80665 m/s², °F = (t − 32) · 5 / 9.
 */
static const Reading readings[] = {
  { BB_QUANTITY_LENGTH, NULL, "355.6", 355.6 },
  { BB_QUANTITY_LENGTH, &us, "14", 355.6 },
  { BB_QUANTITY_LENGTH, &metric, "14 in", 355.6 },
  { BB_QUANTITY_LENGTH, &metric, "14IN", 355.6 },
  { BB_QUANTITY_LENGTH, &metric, "14 in.", 355.6 },
  { BB_QUANTITY_LENGTH, &metric, "14\"", 355.6 },
  { BB_QUANTITY_LENGTH, &metric, "14″", 355.6 },
  { BB_QUANTITY_LENGTH, &metric, "14”", 355.6 },
  { BB_QUANTITY_LENGTH, &metric, "14''", 355.6 },
  { BB_QUANTITY_LENGTH, &metric, "1 ft 2 in", 355.6 },
  { BB_QUANTITY_LENGTH, &metric, "1ft2in", 355.6 },
  { BB_QUANTITY_LENGTH, &metric, "1' 2\"", 355.6 },
  { BB_QUANTITY_LENGTH, &metric, "1′2″", 355.6 },
  { BB_QUANTITY_LENGTH, &metric, "-1' 2\"", -355.6 },
  { BB_QUANTITY_LENGTH, &us, "35.6 cm", 356 },
  { BB_QUANTITY_LENGTH, &us, "355.6 mm", 355.6 },
  { BB_QUANTITY_LENGTH, &us, "355.6mm", 355.6 },
  { BB_QUANTITY_LENGTH, &us, "\t355.6\u00a0mm ", 355.6 },
  { BB_QUANTITY_LENGTH, &us, "0.3556 m", 355.6 },
  { BB_QUANTITY_LENGTH, &us, "14 1/2 in", 368.3 },
  { BB_QUANTITY_LENGTH, &us, "14 1/2", 368.3 },
  { BB_QUANTITY_LENGTH, &us, "14-1/2\"", 368.3 },
  { BB_QUANTITY_LENGTH, &us, "14½", 368.3 },
  { BB_QUANTITY_LENGTH, &us, "14 ½\"", 368.3 },
  { BB_QUANTITY_LENGTH, &us, "½", 12.7 },
  { BB_QUANTITY_LENGTH, &us, "3⁄8 in", 9.525 },
  { BB_QUANTITY_LENGTH, &us, "1' 2 1/2\"", 368.3 },
  { BB_QUANTITY_LENGTH, &us, ".5", 12.7 },
  { BB_QUANTITY_LENGTH, &us, "5.", 127 },
  { BB_QUANTITY_LENGTH, &us, "+14", 355.6 },
  { BB_QUANTITY_LENGTH, &us, "−14", -355.6 },
  { BB_QUANTITY_LENGTH, &metric, "25 µm", 0.025 },
  { BB_QUANTITY_LENGTH, &metric, "1 yd 1 ft 2 in", 1270 },

  { BB_QUANTITY_LENGTH, &comma, "355,6", 355.6 },
  { BB_QUANTITY_LENGTH, &comma, "355.6", 355.6 },
  { BB_QUANTITY_LENGTH, &comma, "1.234,5", 1234.5 },
  { BB_QUANTITY_LENGTH, &comma, "1.234.567", 1234567 },
  { BB_QUANTITY_LENGTH, &comma, "0.125", 0.125 },
  { BB_QUANTITY_LENGTH, &metric, "1,234.5", 1234.5 },
  { BB_QUANTITY_LENGTH, &metric, "1,234,567", 1234567 },
  { BB_QUANTITY_LENGTH, &metric, "1.234", 1.234 },
  { BB_QUANTITY_LENGTH, &arabic, "355٫6 mm", 355.6 },
  { BB_QUANTITY_LENGTH, &arabic, "355.6 mm", 355.6 },
  { BB_QUANTITY_LENGTH, &arabic, "٫5 mm", 0.5 },

  { BB_QUANTITY_AREA, &metric, "1445.1584", BOX_M2 },
  { BB_QUANTITY_AREA, &us, "224", BOX_M2 },
  { BB_QUANTITY_AREA, &metric, "14x16 in", BOX_M2 },
  { BB_QUANTITY_AREA, &metric, "14 × 16 in", BOX_M2 },
  { BB_QUANTITY_AREA, &metric, "14 in × 16", BOX_M2 },
  { BB_QUANTITY_AREA, &metric, "14\"X16\"", BOX_M2 },
  { BB_QUANTITY_AREA, &metric, "1 ft 2 in * 16 in", BOX_M2 },
  { BB_QUANTITY_AREA, &us, "14 x 16", BOX_M2 },
  { BB_QUANTITY_AREA, &us, "300 mm x 400 mm", 0.12 },
  { BB_QUANTITY_AREA, &us, "300 mm x 40 cm", 0.12 },
  { BB_QUANTITY_AREA, &metric, "300x400", 0.12 },
  { BB_QUANTITY_AREA, &metric, "0.12 m²", 0.12 },
  { BB_QUANTITY_AREA, &metric, "0.12 m^2", 0.12 },
  { BB_QUANTITY_AREA, &us, "1200 cm²", 0.12 },
  { BB_QUANTITY_AREA, &us, "1200 cm2", 0.12 },
  { BB_QUANTITY_AREA, &metric, "224 in²", BOX_M2 },
  { BB_QUANTITY_AREA, &metric, "224 sq in", BOX_M2 },

  { BB_QUANTITY_MASS, &us, "18.5", 18.5 },
  { BB_QUANTITY_MASS, &us, "1.5 kg", 1500 },
  { BB_QUANTITY_MASS, &us, "1 lb", 453.59237 },
  { BB_QUANTITY_MASS, &us, "1 lb 8 oz", 680.388555 },
  { BB_QUANTITY_MASS, &us, "½ lb", 226.796185 },
  { BB_QUANTITY_VOLUME, &us, "500", 500 },
  { BB_QUANTITY_VOLUME, &us, "1 gal", 3785.411784 },
  { BB_QUANTITY_VOLUME, &us, "128 fl oz", 3785.411784 },
  { BB_QUANTITY_VOLUME, &us, "2 qt", 1892.705892 },
  { BB_QUANTITY_VOLUME, &us, "0.5 l", 500 },
  { BB_QUANTITY_VOLUME, &us, "0.5 L", 500 },
  { BB_QUANTITY_VOLUME, &us, "500 cm³", 500 },

  { BB_QUANTITY_MASS_PER_AREA, &metric, "120", 120 },
  { BB_QUANTITY_MASS_PER_AREA, &us, "120 g/m2", 120 },
  { BB_QUANTITY_MASS_PER_AREA, &us, "120 g/m²", 120 },
  { BB_QUANTITY_MASS_PER_AREA, &us, "120 g / m²", 120 },
  { BB_QUANTITY_MASS_PER_AREA, &us, "120 g per m²", 120 },
  { BB_QUANTITY_MASS_PER_AREA, &us, "120 gsm", 120 },
  { BB_QUANTITY_MASS_PER_AREA, &us, "12 mg/cm2", 120 },
  { BB_QUANTITY_MASS_PER_AREA, &us, "5.3", 179.70046161687617 },        /* units.csv: 5.3 oz/yd^2 */
  { BB_QUANTITY_MASS_PER_AREA, &metric, "5.3 oz/yd²", 179.70046161687617 },
  { BB_QUANTITY_MASS_PER_AREA, &metric, "5.3 oz/yd2", 179.70046161687617 },
  { BB_QUANTITY_MASS_PER_AREA, &metric, "1 g/in2", 1550.0031000062 },   /* units.csv: 1 g/in^2 */
  { BB_QUANTITY_MASS_PER_AREA, &metric, "20 g/box", 138.393133929125 }, /* units.csv: 20 g/(14 in * 16 in) */
  { BB_QUANTITY_MASS_PER_AREA, &us, "15 g per box", 103.79485044684375 },

  { BB_QUANTITY_DENSITY, &us, "1.05", 1.05 },
  { BB_QUANTITY_DENSITY, &us, "1.05 g/cm³", 1.05 },
  { BB_QUANTITY_DENSITY, &us, "1.05 kg/l", 1.05 },
  { BB_QUANTITY_DENSITY, &us, "1050 kg/m3", 1.05 },
  { BB_QUANTITY_DENSITY, &metric, "1 lb/gal", 0.11982642731689664 }, /* units.csv: 1 lb/usgallon */

  { BB_QUANTITY_TEMPERATURE, &metric, "165", 165 },
  { BB_QUANTITY_TEMPERATURE, &us, "329", 165 },
  { BB_QUANTITY_TEMPERATURE, &metric, "330 °F", 165.55555555555554 },
  { BB_QUANTITY_TEMPERATURE, &metric, "330F", 165.55555555555554 },
  { BB_QUANTITY_TEMPERATURE, &metric, "330 ºF", 165.55555555555554 },
  { BB_QUANTITY_TEMPERATURE, &us, "165 °C", 165 },
  { BB_QUANTITY_TEMPERATURE, &us, "165 ℃", 165 },
  { BB_QUANTITY_TEMPERATURE, &us, "298.15 K", 25 },
  { BB_QUANTITY_TEMPERATURE, &us, "-40", -40 },
  { BB_QUANTITY_TEMPERATURE_DIFFERENCE, &us, "9", 5 },
  { BB_QUANTITY_TEMPERATURE_DIFFERENCE, &metric, "9 °F", 5 },
  { BB_QUANTITY_TEMPERATURE_DIFFERENCE, &us, "5 K", 5 },

  { BB_QUANTITY_TIME, &us, "90", 90 },
  { BB_QUANTITY_TIME, &us, "90 s", 90 },
  { BB_QUANTITY_TIME, &us, "90 sec", 90 },
  { BB_QUANTITY_TIME, &us, "1 min 30 s", 90 },
  { BB_QUANTITY_TIME, &us, "1min30s", 90 },
  { BB_QUANTITY_TIME, &us, "1:30", 90 },
  { BB_QUANTITY_TIME, &us, "0:05", 5 },
  { BB_QUANTITY_TIME, &us, "1:05:00", 3900 },
  { BB_QUANTITY_TIME, &us, "2 min", 120 },
  { BB_QUANTITY_TIME, &us, "1.5 min", 90 },
  { BB_QUANTITY_TIME, &us, "1 h", 3600 },
  { BB_QUANTITY_TIME, &us, "1 h 5 min 3 s", 3903 },

  { BB_QUANTITY_PRESSURE, &metric, "2.8", 280 },
  { BB_QUANTITY_PRESSURE, &us, "40", 275.79029172673444 }, /* units.csv: 40 psi */
  { BB_QUANTITY_PRESSURE, &metric, "40 psi", 275.79029172673444 },
  { BB_QUANTITY_PRESSURE, &us, "2.8 bar", 280 },
  { BB_QUANTITY_PRESSURE, &us, "280 kPa", 280 },
  { BB_QUANTITY_PRESSURE, &us, "0.28 MPa", 280 },
  { BB_QUANTITY_PRESSURE, &us, "3 kgf/cm²", 294.1995 },

  { BB_QUANTITY_SPEED, &metric, "20", 20 },
  { BB_QUANTITY_SPEED, &us, "4", 20.32 },
  { BB_QUANTITY_SPEED, &us, "2 cm/s", 20 },
  { BB_QUANTITY_SPEED, &us, "1.2 m/min", 20 },
  { BB_QUANTITY_SPEED, &metric, "1 in/s", 25.4 },
  { BB_QUANTITY_SPEED, &metric, "4 ft/min", 20.32 },

  { BB_QUANTITY_FRACTION, &metric, "10", 0.1 },
  { BB_QUANTITY_FRACTION, &us, "10 %", 0.1 },
  { BB_QUANTITY_FRACTION, &us, "10%", 0.1 },
  { BB_QUANTITY_FRACTION, &us, "10 per cent", 0.1 },
  { BB_QUANTITY_FRACTION, &us, "0.1", 0.001 },
  { BB_QUANTITY_FRACTION, &comma, "12,5 %", 0.125 },

  { BB_QUANTITY_MONEY, &us, "12.50", 12.5 },
  { BB_QUANTITY_MONEY, &us, "$12.50", 12.5 },
  { BB_QUANTITY_MONEY, &us, "$ 12.50", 12.5 },
  { BB_QUANTITY_MONEY, &us, "-$12.50", -12.5 },
  { BB_QUANTITY_MONEY, &us, "$1,234.50", 1234.5 },
  { BB_QUANTITY_MONEY, &metric, "12.5 €", 12.5 },
  { BB_QUANTITY_MONEY, &metric, "€12.5", 12.5 },
  { BB_QUANTITY_MONEY, &comma, "12,50 kr", 12.5 },
  { BB_QUANTITY_MONEY, &comma, "kr 12,50", 12.5 },
  { BB_QUANTITY_MONEY, &bare, "12.5", 12.5 },

  { BB_QUANTITY_ENERGY, &us, "60", 60 },
  { BB_QUANTITY_ENERGY, &us, "0.5 kWh", 1800 },
  { BB_QUANTITY_ENERGY, &us, "1 MJ", 1000 },
  { BB_QUANTITY_HEAT_FLOW, &us, "0.9 kW", 900 },
  { BB_QUANTITY_NONE, &us, "2.5", 2.5 },
  { BB_QUANTITY_NONE, &us, "-0", 0 },
};

static void
test_reads_what_benches_write (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (readings); i++)
    {
      const Reading *r = &readings[i];
      g_autoptr (GError) error = NULL;
      double value = (double) NAN;

      g_test_message ("%s", r->text);
      g_assert_true (bb_quantity_parse (r->quantity, r->text, r->context, &value, &error));
      g_assert_no_error (error);
      g_assert_cmpfloat (fabs (value - r->canonical), <=, 1e-13 * fabs (r->canonical));
      if (value == 0)
        g_assert_false (signbit (value));
    }
}

typedef struct {
  BbQuantity quantity;
  const BbUnitContext *context;
  const char *text;
  const char *message;
} Refusal;

#define FRACTION_SENTENCE "This fraction can't be read: write it like 14 1/2, or as 14.5."
#define LENGTH_EXAMPLE " Write a length like 355.6 mm or 14 in."

static const Refusal refusals[] = {
  { BB_QUANTITY_LENGTH, &us, "", "Nothing is written here." LENGTH_EXAMPLE },
  { BB_QUANTITY_LENGTH, &us, "  ", "Nothing is written here." LENGTH_EXAMPLE },
  { BB_QUANTITY_LENGTH, &us, "-", "“-” is not a number." LENGTH_EXAMPLE },
  { BB_QUANTITY_LENGTH, &us, "nan", "“nan” is not a number." LENGTH_EXAMPLE },
  { BB_QUANTITY_LENGTH, &us, "inf", "“inf” is not a number." LENGTH_EXAMPLE },
  { BB_QUANTITY_LENGTH, &us, "-Infinity", "“-Infinity” is not a number." LENGTH_EXAMPLE },
  { BB_QUANTITY_LENGTH, &us, "0x10", "“x” is not a unit that can be used here." LENGTH_EXAMPLE },
  { BB_QUANTITY_LENGTH, &us, "1e3", "“e3” is not a unit that can be used here." LENGTH_EXAMPLE },
  { BB_QUANTITY_LENGTH, &us, "14 °C", "“°C” is a unit of another quantity (temperature)." LENGTH_EXAMPLE },
  { BB_QUANTITY_LENGTH, &us, "14 kg", "“kg” is a unit of another quantity (mass)." LENGTH_EXAMPLE },
  { BB_QUANTITY_LENGTH, &us, "14 in²", "“in2” is a unit of another quantity (area)." LENGTH_EXAMPLE },
  { BB_QUANTITY_LENGTH, &us, "14 in mm", "“in mm” is not a unit that can be used here." LENGTH_EXAMPLE },
  { BB_QUANTITY_LENGTH, &us, "14 in or so", "“in or so” is not a unit that can be used here." LENGTH_EXAMPLE },
  { BB_QUANTITY_LENGTH, &us, "14 in 3 mm", "These are two values where one is needed." LENGTH_EXAMPLE },
  { BB_QUANTITY_LENGTH, &us, "14 in 3", "Each of several numbers needs its unit." LENGTH_EXAMPLE },
  { BB_QUANTITY_LENGTH, &us, "14 3", "Each of several numbers needs its unit." LENGTH_EXAMPLE },
  { BB_QUANTITY_LENGTH, &us, "2 in 1 ft", "The larger unit has to come first." LENGTH_EXAMPLE },
  { BB_QUANTITY_LENGTH, &us, "1 in 1 in", "The larger unit has to come first." LENGTH_EXAMPLE },
  { BB_QUANTITY_LENGTH, &us, "1.5 ft 2 in", "Only the last of several units can have decimals." LENGTH_EXAMPLE },
  { BB_QUANTITY_LENGTH, &us, "14.5 1/2 in", FRACTION_SENTENCE LENGTH_EXAMPLE },
  { BB_QUANTITY_LENGTH, &us, "14 3/2 in", FRACTION_SENTENCE LENGTH_EXAMPLE },
  { BB_QUANTITY_LENGTH, &us, "14 2/2 in", FRACTION_SENTENCE LENGTH_EXAMPLE },
  { BB_QUANTITY_LENGTH, &us, "1/0 in", FRACTION_SENTENCE LENGTH_EXAMPLE },
  { BB_QUANTITY_LENGTH, &us, "1/1001 in", FRACTION_SENTENCE LENGTH_EXAMPLE },
  { BB_QUANTITY_LENGTH, &us, "1/2/3 in", "“/2/3 in” is not a unit that can be used here." LENGTH_EXAMPLE },
  { BB_QUANTITY_LENGTH, &us, "14-2 in", "“-2 in” is not a unit that can be used here." LENGTH_EXAMPLE },
  { BB_QUANTITY_LENGTH, &us, "14 - 1/2 in", "“-” is not a unit that can be used here." LENGTH_EXAMPLE },
  { BB_QUANTITY_LENGTH, &us, "14²", "“2” is not a unit that can be used here." LENGTH_EXAMPLE },
  { BB_QUANTITY_LENGTH, &us, "1,5",
    "“1,5” can be misread: write decimals after “.”, and leave thousands together." LENGTH_EXAMPLE },
  { BB_QUANTITY_LENGTH, &us, "1,234",
    "“1,234” can be misread: write decimals after “.”, and leave thousands together." LENGTH_EXAMPLE },
  { BB_QUANTITY_LENGTH, &us, "1.234,5",
    "“1.234,5” can be misread: write decimals after “.”, and leave thousands together." LENGTH_EXAMPLE },
  { BB_QUANTITY_LENGTH, &us, "12,34.5",
    "“12,34.5” can be misread: write decimals after “.”, and leave thousands together." LENGTH_EXAMPLE },
  { BB_QUANTITY_LENGTH, &us, "1234,567.8",
    "“1234,567.8” can be misread: write decimals after “.”, and leave thousands together." LENGTH_EXAMPLE },
  { BB_QUANTITY_LENGTH, &comma, "1.23.456",
    "“1.23.456” can be misread: write decimals after “,”, and leave thousands together." LENGTH_EXAMPLE },
  { BB_QUANTITY_LENGTH, &us, "1.2.3",
    "“1.2.3” can be misread: write decimals after “.”, and leave thousands together." LENGTH_EXAMPLE },
  { BB_QUANTITY_LENGTH, &comma, "1,234.5",
    "“1,234.5” can be misread: write decimals after “,”, and leave thousands together." LENGTH_EXAMPLE },
  { BB_QUANTITY_LENGTH, &comma, "1.234",
    "“1.234” can be misread: write decimals after “,”, and leave thousands together." LENGTH_EXAMPLE },
  { BB_QUANTITY_LENGTH, &us, "٣", "“٣” is not a number." LENGTH_EXAMPLE },
  { BB_QUANTITY_LENGTH, &us, "14\001in", "This has characters that can't be shown." LENGTH_EXAMPLE },
  { BB_QUANTITY_LENGTH, &us, "14 \u202ein", "This has characters that can't be shown." LENGTH_EXAMPLE },
  { BB_QUANTITY_LENGTH, &us, "14 \xff", "This has characters that can't be shown." LENGTH_EXAMPLE },
  { BB_QUANTITY_LENGTH, &us, "14 abcdefghijklmnopqrstuvwxyz",
    "“abcdefghijklmnopqrstuvwx…” is not a unit that can be used here." LENGTH_EXAMPLE },

  { BB_QUANTITY_AREA, &us, "14 x 16 x 2",
    "An area has two sides. Write an area like 1445 cm² or 14 × 16 in." },
  { BB_QUANTITY_AREA, &us, "0x10",
    "Both sides of an area have to be more than 0. Write an area like 1445 cm² or 14 × 16 in." },
  { BB_QUANTITY_AREA, &us, "14 x",
    "Nothing is written here. Write an area like 1445 cm² or 14 × 16 in." },
  { BB_QUANTITY_AREA, &us, "14 in",
    "“in” is a unit of another quantity (length). Write an area like 1445 cm² or 14 × 16 in." },
  { BB_QUANTITY_VOLUME, &us, "6 oz",
    "“oz” is a unit of another quantity (mass). Write a volume like 500 ml or 16 fl oz." },
  { BB_QUANTITY_MASS_PER_AREA, &bare, "18 g/box",
    "Grams per box need a box, and none is known here. Write it like 120 g/m² or 5.3 oz/yd²." },
  { BB_QUANTITY_MASS_PER_AREA, &endless, "18 g/box",
    "Grams per box need a box, and none is known here. Write it like 120 g/m² or 5.3 oz/yd²." },
  { BB_QUANTITY_MASS_PER_AREA, NULL, "18 g",
    "“g” is a unit of another quantity (mass). Write it like 120 g/m² or 5.3 oz/yd²." },
  { BB_QUANTITY_MASS_PER_AREA, &metric, "18 g",
    "“g” is a unit of another quantity (mass). Write it like 120 g/m², 18 g/box or 5.3 oz/yd²." },
  { BB_QUANTITY_TEMPERATURE, &us, "330 °",
    "“°” is not a unit that can be used here. Write a temperature like 165 °C or 330 °F." },
  { BB_QUANTITY_TEMPERATURE, &us, "330 °F 165 °C",
    "These are two values where one is needed. Write a temperature like 165 °C or 330 °F." },
  { BB_QUANTITY_TIME, &us, "1:5",
    "After a colon two digits below 60 are needed, like 1:05. Write a time like 90 s, 1 min 30 s or 1:30." },
  { BB_QUANTITY_TIME, &us, "1:60",
    "After a colon two digits below 60 are needed, like 1:05. Write a time like 90 s, 1 min 30 s or 1:30." },
  { BB_QUANTITY_TIME, &us, "1:00:00:00",
    "With colons a time is minutes and seconds, or hours, minutes and seconds. "
    "Write a time like 90 s, 1 min 30 s or 1:30." },
  { BB_QUANTITY_TIME, &us, "1:75",
    "After a colon two digits below 60 are needed, like 1:05. Write a time like 90 s, 1 min 30 s or 1:30." },
  { BB_QUANTITY_TIME, &us, "1:30 h",
    "After a colon two digits below 60 are needed, like 1:05. Write a time like 90 s, 1 min 30 s or 1:30." },
  { BB_QUANTITY_TIME, &us, ":30",
    "With colons a time is minutes and seconds, or hours, minutes and seconds. "
    "Write a time like 90 s, 1 min 30 s or 1:30." },
  { BB_QUANTITY_TIME, &us, "5 m",
    "“m” is a unit of another quantity (length). Write a time like 90 s, 1 min 30 s or 1:30." },
  { BB_QUANTITY_PRESSURE, &us, "280 mPa",
    "“mPa” is not a unit that can be used here. Write a pressure like 2.8 bar or 40 psi." },
  { BB_QUANTITY_FRACTION, &us, "1/2",
    "A share can't be written as a fraction. Write a share in percent, like 10 %." },
  { BB_QUANTITY_MONEY, &us, "5 €",
    "“€” is not a unit that can be used here. Write an amount of money like 12.50." },
  { BB_QUANTITY_MONEY, &us, "$5$",
    "“$” is not a unit that can be used here. Write an amount of money like 12.50." },
  { BB_QUANTITY_MONEY, &us, "$", "Nothing is written here. Write an amount of money like 12.50." },
  { BB_QUANTITY_NONE, &us, "3 mm",
    "“mm” is a unit of another quantity (length). Write a plain number without a unit, like 3." },
};

static void
test_refuses_nonsense_and_says_why (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (refusals); i++)
    {
      const Refusal *r = &refusals[i];
      g_autoptr (GError) error = NULL;
      double value = 7;

      g_test_message ("%u", i);
      g_assert_false (bb_quantity_parse (r->quantity, r->text, r->context, &value, &error));
      g_assert_error (error, BB_MODEL_ERROR, BB_MODEL_ERROR_TEXT);
      g_assert_cmpstr (error->message, ==, r->message);
      g_assert_cmpfloat (value, ==, 7);
    }
}

static void
test_refuses_what_is_too_large_or_long (void)
{
  g_autofree char *nines = g_strnfill (310, '9');
  g_autofree char *metres = g_strnfill (308, '9');
  g_autofree char *in_metres = g_strconcat (metres, " m", NULL);
  g_autofree char *zeros = g_strnfill (401, '0');
  const char * const texts[] = { nines, in_metres, zeros };

  for (guint i = 0; i < G_N_ELEMENTS (texts); i++)
    {
      g_autoptr (GError) error = NULL;
      double value = 7;

      g_assert_false (bb_quantity_parse (BB_QUANTITY_LENGTH, texts[i], NULL, &value, &error));
      g_assert_error (error, BB_MODEL_ERROR, BB_MODEL_ERROR_TEXT);
      g_assert_cmpfloat (value, ==, 7);
    }
}

typedef struct {
  BbQuantity quantity;
  const BbUnitContext *context;
  double canonical;
  const char *typed;
  const char *with_unit;
} Showing;

static const Showing showings[] = {
  { BB_QUANTITY_LENGTH, NULL, 355.6, "355.6", "355.6 mm" },
  { BB_QUANTITY_LENGTH, &us, 355.6, "14", "14 in" },
  { BB_QUANTITY_LENGTH, &comma, 355.6, "355,6", "355,6 mm" },
  { BB_QUANTITY_LENGTH, &arabic, 355.6, "355٫6", "355٫6 mm" },
  { BB_QUANTITY_LENGTH, &us, 355, "13.98", "13.98 in" },
  { BB_QUANTITY_LENGTH, &us, 358.775, "14.125", "14.125 in" },
  { BB_QUANTITY_LENGTH, &us, 357.1875, "14.0625", "14.06 in" },
  { BB_QUANTITY_LENGTH, &us, 10, "0.394", "0.394 in" },
  { BB_QUANTITY_LENGTH, &metric, 357.1875, "357.1875", "357.2 mm" },
  { BB_QUANTITY_LENGTH, &metric, 12.25, "12.25", "12.25 mm" },
  { BB_QUANTITY_LENGTH, &metric, -0.0, "0", "0 mm" },
  { BB_QUANTITY_LENGTH, &metric, -1e-9, "0", "0 mm" },
  { BB_QUANTITY_LENGTH, &metric, 1234567, "1234567", "1234567 mm" },
  { BB_QUANTITY_LENGTH, &metric, 0.0012345, "0.00123", "0.00123 mm" },
  { BB_QUANTITY_LENGTH, &metric, 0.0000123, "0.000012", "0.000012 mm" },
  { BB_QUANTITY_AREA, &metric, BOX_M2, "1445.1584", "1445.2 cm²" },
  { BB_QUANTITY_AREA, &us, BOX_M2, "224", "224 in²" },
  { BB_QUANTITY_AREA, &us, 0.031432453264, "48.7204", "48.72 in²" },
  { BB_QUANTITY_MASS, &us, 18.5, "18.5", "18.5 g" },
  { BB_QUANTITY_VOLUME, &us, 500, "500", "500 ml" },
  { BB_QUANTITY_MASS_PER_AREA, &metric, 103.79485044684375, "103.8", "103.8 g/m²" },
  { BB_QUANTITY_MASS_PER_AREA, &us, 179.70046161687617, "5.3", "5.3 oz/yd²" },
  { BB_QUANTITY_DENSITY, &us, 1.05, "1.05", "1.05 g/ml" },
  { BB_QUANTITY_DENSITY, &us, 0.998203442, "0.9982", "0.9982 g/ml" },
  { BB_QUANTITY_TEMPERATURE, &us, 165.55555555555554, "330", "330 °F" },
  { BB_QUANTITY_TEMPERATURE, &metric, 165.55555555555554, "165.56", "165.6 °C" },
  { BB_QUANTITY_TEMPERATURE, &metric, 40.55555555555556, "40.56", "40.6 °C" },
  { BB_QUANTITY_TEMPERATURE, &metric, 40.25, "40.25", "40.2 °C" },
  { BB_QUANTITY_TEMPERATURE, &us, 0, "32", "32 °F" },
  { BB_QUANTITY_TEMPERATURE_DIFFERENCE, &us, 5, "9", "9 °F" },
  { BB_QUANTITY_TIME, &us, 90, "90", "90 s" },
  { BB_QUANTITY_PRESSURE, &metric, 275.79029172673444, "2.76", "2.76 bar" },
  { BB_QUANTITY_PRESSURE, &us, 275.79029172673444, "40", "40 psi" },
  { BB_QUANTITY_SPEED, &metric, 20.32, "20.32", "20.32 mm/s" },
  { BB_QUANTITY_SPEED, &us, 20.32, "4", "4 ft/min" },
  { BB_QUANTITY_FRACTION, &us, 0.1, "10", "10 %" },
  { BB_QUANTITY_FRACTION, &us, 1.0 / 3.0, "33.33", "33.33 %" },
  { BB_QUANTITY_MONEY, &us, 12.5, "12.50", "$12.50" },
  { BB_QUANTITY_MONEY, &us, -12, "-12", "-$12" },
  { BB_QUANTITY_MONEY, &metric, 0.0123, "0.0123", "€0.0123" },
  { BB_QUANTITY_MONEY, &comma, 12.5, "12,50", "12,50 kr" },
  { BB_QUANTITY_MONEY, &bare, 2.0 / 3.0, "0.667", "0.667" },
  { BB_QUANTITY_ENERGY, &us, 60, "60", "60 kJ" },
  { BB_QUANTITY_HEAT_FLOW, &us, 900, "900", "900 W" },
  { BB_QUANTITY_NONE, &us, 3, "3", "3" },
};

static void
test_shows_as_few_decimals_as_read_back (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (showings); i++)
    {
      const Showing *s = &showings[i];
      g_autofree char *typed = bb_quantity_format_typed (s->quantity, s->canonical, s->context);
      g_autofree char *read = bb_quantity_format (s->quantity, s->canonical, s->context);
      g_autofree char *with_unit = bb_quantity_format_with_unit (s->quantity, s->canonical, s->context);

      g_assert_cmpstr (typed, ==, s->typed);
      g_assert_nonnull (strstr (with_unit, *read == '-' ? read + 1 : read));
      g_assert_cmpstr (with_unit, ==, s->with_unit);
    }
}

static void
test_shows_nothing_for_no_number (void)
{
  const double values[] = { (double) NAN, (double) INFINITY, -(double) INFINITY };

  for (guint i = 0; i < G_N_ELEMENTS (values); i++)
    {
      g_autofree char *number = bb_quantity_format (BB_QUANTITY_LENGTH, values[i], &us);
      g_autofree char *with_unit = bb_quantity_format_with_unit (BB_QUANTITY_MONEY, values[i], &us);

      g_assert_cmpstr (number, ==, "");
      g_assert_cmpstr (with_unit, ==, "");
    }
}

static void
test_every_quantity_has_its_units (void)
{
  const char * const canonical[BB_N_QUANTITIES] = {
    "", "mm", "m²", "g", "ml", "g/m²", "g/ml", "°C", "°C", "s", "kPa", "mm/s", "", "", "kJ", "W",
  };
  const char * const shown_metric[BB_N_QUANTITIES] = {
    "", "mm", "cm²", "g", "ml", "g/m²", "g/ml", "°C", "°C", "s", "bar", "mm/s", "%", "€", "kJ", "W",
  };
  const char * const shown_us[BB_N_QUANTITIES] = {
    "", "in", "in²", "g", "ml", "oz/yd²", "g/ml", "°F", "°F", "s", "psi", "ft/min", "%", "$", "kJ", "W",
  };

  for (int q = 0; q < BB_N_QUANTITIES; q++)
    {
      g_assert_cmpstr (bb_quantity_get_canonical_unit ((BbQuantity) q), ==, canonical[q]);
      g_assert_cmpstr (bb_quantity_get_unit ((BbQuantity) q, &metric), ==, shown_metric[q]);
      g_assert_cmpstr (bb_quantity_get_unit ((BbQuantity) q, &us), ==, shown_us[q]);
    }

  g_assert_cmpstr (bb_quantity_get_unit (BB_QUANTITY_MONEY, NULL), ==, "");
  g_assert_cmpstr (bb_quantity_get_unit (BB_QUANTITY_LENGTH, NULL), ==, "mm");
  g_assert_cmpfloat (bb_quantity_to_shown (BB_QUANTITY_LENGTH, 355.6, &us), ==, 14);
  g_assert_cmpfloat (bb_quantity_to_shown (BB_QUANTITY_TEMPERATURE, 165, &us), ==, 329);
  g_assert_cmpfloat (bb_quantity_to_shown (BB_QUANTITY_NONE, 3, &us), ==, 3);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/quantity/reads-what-benches-write", test_reads_what_benches_write);
  g_test_add_func ("/quantity/refuses-nonsense-and-says-why", test_refuses_nonsense_and_says_why);
  g_test_add_func ("/quantity/refuses-what-is-too-large-or-long", test_refuses_what_is_too_large_or_long);
  g_test_add_func ("/quantity/shows-as-few-decimals-as-read-back", test_shows_as_few_decimals_as_read_back);
  g_test_add_func ("/quantity/shows-nothing-for-no-number", test_shows_nothing_for_no_number);
  g_test_add_func ("/quantity/every-quantity-has-its-units", test_every_quantity_has_its_units);

  return g_test_run ();
}
