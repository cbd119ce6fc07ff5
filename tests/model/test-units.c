/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bb-quantity.h"

#include <math.h>
#include <string.h>

/*
 * Holds the conversions against tests/reference/units.csv, whose head names its source. A row's
 * expressions are turned into what a person would type; the rows that measure nothing Blankbook knows
 * are listed, not passed over.
 */

#define N_ROWS 83
#define N_ELSEWHERE 16

/* Printed to 15 significant digits. */
#define PRINTED_WITHIN 1e-14

static const char * const elsewhere[] = {
  "lb/ft^2", "brfloz", "brgallon", "atm", "mil", "grain", "cal", "cP", "dyne/cm", "W/in^2", "btu/lb",
  "pL", "/in", "denier", "g/m^2 * 14 in * 16 in", NULL,
};

typedef struct {
  const char *expression;
  BbQuantity quantity;
  const char *typed;
} Spelling;

static const Spelling spellings[] = {
  { "mm", BB_QUANTITY_LENGTH, "mm" },
  { "um", BB_QUANTITY_LENGTH, "um" },
  { "in", BB_QUANTITY_LENGTH, "in" },
  { "ft", BB_QUANTITY_LENGTH, "ft" },
  { "m^2", BB_QUANTITY_AREA, "m^2" },
  { "cm^2", BB_QUANTITY_AREA, "cm^2" },
  { "in^2", BB_QUANTITY_AREA, "in^2" },
  { "yd^2", BB_QUANTITY_AREA, "yd^2" },
  { "g", BB_QUANTITY_MASS, "g" },
  { "kg", BB_QUANTITY_MASS, "kg" },
  { "oz", BB_QUANTITY_MASS, "oz" },
  { "lb", BB_QUANTITY_MASS, "lb" },
  { "mL", BB_QUANTITY_VOLUME, "ml" },
  { "L", BB_QUANTITY_VOLUME, "l" },
  { "usfloz", BB_QUANTITY_VOLUME, "fl oz" },
  { "uspint", BB_QUANTITY_VOLUME, "pt" },
  { "usquart", BB_QUANTITY_VOLUME, "qt" },
  { "usgallon", BB_QUANTITY_VOLUME, "gal" },
  { "g/m^2", BB_QUANTITY_MASS_PER_AREA, "g/m^2" },
  { "oz/yd^2", BB_QUANTITY_MASS_PER_AREA, "oz/yd^2" },
  { "g/in^2", BB_QUANTITY_MASS_PER_AREA, "g/in^2" },
  { "g/ft^2", BB_QUANTITY_MASS_PER_AREA, "g/ft^2" },
  { "mg/cm^2", BB_QUANTITY_MASS_PER_AREA, "mg/cm^2" },
  { "g/(14 in * 16 in)", BB_QUANTITY_MASS_PER_AREA, "g/box" },
  { "g/mL", BB_QUANTITY_DENSITY, "g/ml" },
  { "lb/usgallon", BB_QUANTITY_DENSITY, "lb/gal" },
  { "kg/m^3", BB_QUANTITY_DENSITY, "kg/m^3" },
  { "tempC", BB_QUANTITY_TEMPERATURE, "°C" },
  { "tempF", BB_QUANTITY_TEMPERATURE, "°F" },
  { "tempK", BB_QUANTITY_TEMPERATURE, "K" },
  { "degC", BB_QUANTITY_TEMPERATURE_DIFFERENCE, "°C" },
  { "degF", BB_QUANTITY_TEMPERATURE_DIFFERENCE, "°F" },
  { "kPa", BB_QUANTITY_PRESSURE, "kPa" },
  { "bar", BB_QUANTITY_PRESSURE, "bar" },
  { "psi", BB_QUANTITY_PRESSURE, "psi" },
  { "lbf/in^2", BB_QUANTITY_PRESSURE, "lbf/in^2" },
  { "kgf/cm^2", BB_QUANTITY_PRESSURE, "kgf/cm^2" },
  { "btu", BB_QUANTITY_ENERGY, "Btu" },
  { "J", BB_QUANTITY_ENERGY, "J" },
  { "kWh", BB_QUANTITY_ENERGY, "kWh" },
  { "MJ", BB_QUANTITY_ENERGY, "MJ" },
};

static const Spelling *
find_spelling (const char *expression)
{
  for (guint i = 0; i < G_N_ELEMENTS (spellings); i++)
    if (g_str_equal (spellings[i].expression, expression))
      return &spellings[i];

  return NULL;
}

/* Divides `150 g/m^2` and `tempF(330)` into number and unit. */
static void
split_expression (const char  *expression,
                  char       **number,
                  char       **unit)
{
  const char *bracket = strchr (expression, '(');

  if (g_str_has_prefix (expression, "temp"))
    {
      *number = g_strndup (bracket + 1, strlen (bracket) - 2);
      *unit = g_strndup (expression, (gsize) (bracket - expression));
    }
  else
    {
      gsize n = strspn (expression, "0123456789.");

      *number = g_strndup (expression, n);
      *unit = g_strstrip (g_strdup (expression + n));
    }
}

static double
parse (BbQuantity  quantity,
       const char *number,
       const char *unit)
{
  const BbUnitContext context = { BB_UNITS_METRIC, 0.3556 * 0.4064, NULL, NULL };
  g_autofree char *text = g_strconcat (number, " ", unit, NULL);
  g_autoptr (GError) error = NULL;
  double value = (double) NAN;

  bb_quantity_parse (quantity, text, &context, &value, &error);
  g_assert_no_error (error);

  return value;
}

/* @number of a unit, measured in the unit @to. */
static double
measure (BbQuantity  quantity,
         const char *number,
         const char *unit,
         const char *to)
{
  double zero = parse (quantity, "0", to);

  return (parse (quantity, number, unit) - zero) / (parse (quantity, "1", to) - zero);
}

static gboolean
check_row (char **cells)
{
  double exact = g_ascii_strtod (cells[3], NULL);
  g_autofree char *number = NULL;
  g_autofree char *unit = NULL;
  const Spelling *from = NULL;
  const Spelling *to = find_spelling (cells[1]);
  double value = 0;

  if (g_str_equal (cells[0], "14 in * 16 in"))
    {
      g_assert_nonnull (to);
      value = parse (BB_QUANTITY_AREA, "14 in *", "16 in") / parse (BB_QUANTITY_AREA, "1", to->typed);
    }
  else
    {
      split_expression (cells[0], &number, &unit);
      from = find_spelling (unit);
      if (from == NULL || to == NULL)
        {
          const char *foreign = from == NULL ? unit : cells[1];

          g_assert_true (g_strv_contains (elsewhere, foreign));
          return FALSE;
        }
      g_assert_cmpint (from->quantity, ==, to->quantity);
      value = measure (from->quantity, number, from->typed, to->typed);
    }

  g_test_message ("%s is %s %s", cells[0], cells[2], cells[1]);
  g_assert_cmpfloat (fabs (value - exact), <=, PRINTED_WITHIN * fmax (fabs (exact), 1));

  return TRUE;
}

static void
test_agrees_with_the_reference (void)
{
  g_autofree char *path = g_test_build_filename (G_TEST_DIST, "reference", "units.csv", NULL);
  g_autofree char *text = NULL;
  g_auto (GStrv) lines = NULL;
  g_autoptr (GError) error = NULL;
  guint n_rows = 0;
  guint n_checked = 0;

  g_file_get_contents (path, &text, NULL, &error);
  g_assert_no_error (error);
  lines = g_strsplit (text, "\n", -1);

  for (guint i = 0; lines[i] != NULL; i++)
    {
      g_auto (GStrv) cells = g_strsplit (lines[i], ",", -1);

      if (lines[i][0] == '#' || lines[i][0] == '\0' || g_str_has_prefix (lines[i], "from_expression"))
        continue;
      g_assert_cmpuint (g_strv_length (cells), ==, 4);
      n_rows++;
      n_checked += check_row (cells) ? 1 : 0;
    }

  g_assert_cmpuint (n_rows, ==, N_ROWS);
  g_assert_cmpuint (n_checked, ==, N_ROWS - N_ELSEWHERE);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/units/agrees-with-the-reference", test_agrees_with_the_reference);

  return g_test_run ();
}
