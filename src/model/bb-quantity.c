/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-model"

#include "bb-quantity.h"

#include <math.h>
#include <string.h>

#include "bb-units-private.h"

/* Decimals of a temperature for reading. */
#define TEMPERATURE_DECIMALS_READ 1

/* A number in a form shows back as typed if it has up to this many decimals. */
#define MOST_TYPED_DECIMALS 4
#define SAME_WITHIN 1e-9

/* A small number that is rounded keeps this many digits, within the decimals that anyone reads. */
#define LEAST_DIGITS 3
#define MOST_DECIMALS 6

#define PLAIN_DECIMALS 4
#define MONEY_DECIMALS 2

/* Longest double in plain notation: 309 digits, sign, point, decimals. */
#define BUFFER_SIZE 340

static BbUnitSystem
get_system (const BbUnitContext *context)
{
  return context != NULL ? context->system : BB_UNITS_METRIC;
}

static const char *
get_currency (const BbUnitContext *context)
{
  return context != NULL && context->currency != NULL ? context->currency : "";
}

/**
 * bb_quantity_get_canonical_unit:
 * @quantity: a quantity
 *
 * Returns: the symbol of the unit in which it is stored and computed; "" for plain numbers,
 *   fractions and money
 */
const char *
bb_quantity_get_canonical_unit (BbQuantity quantity)
{
  const BbUnit *unit = NULL;

  g_return_val_if_fail ((guint) quantity < BB_N_QUANTITIES, "");

  unit = _bb_unit_get_canonical (quantity);

  return unit != NULL ? unit->symbol : "";
}

/**
 * bb_quantity_get_unit:
 * @quantity: a quantity
 * @context: (nullable): which units are shown
 *
 * Gives the unit that stands beside a number: mm, cm², g, ml, g/m², g/ml, °C, s, bar, mm/s in the
 * metric system; in, in², g, ml, oz/yd², g/ml, °F, s, psi, ft/min in US shop units, whose benches
 * weigh on gram scales too. Fractions are shown in percent, energy in kJ and heat flow in W in
 * both.
 *
 * Returns: (transfer none): the unit's symbol; the currency for money, "" where there is none
 */
const char *
bb_quantity_get_unit (BbQuantity           quantity,
                      const BbUnitContext *context)
{
  const BbUnit *unit = NULL;

  g_return_val_if_fail ((guint) quantity < BB_N_QUANTITIES, "");

  if (quantity == BB_QUANTITY_MONEY)
    return get_currency (context);

  unit = _bb_unit_get_shown (quantity, get_system (context));

  return unit != NULL ? unit->symbol : "";
}

/**
 * bb_quantity_to_shown:
 * @quantity: a quantity
 * @canonical: a value in its canonical unit
 * @context: (nullable): which units are shown
 *
 * Returns: the same value in the unit that bb_quantity_get_unit() gives, not rounded
 */
double
bb_quantity_to_shown (BbQuantity           quantity,
                      double               canonical,
                      const BbUnitContext *context)
{
  const BbUnit *unit = NULL;

  g_return_val_if_fail ((guint) quantity < BB_N_QUANTITIES, canonical);

  unit = _bb_unit_get_shown (quantity, get_system (context));

  return unit != NULL ? _bb_unit_from_canonical (unit, canonical) : canonical;
}

static void
print_number (char   *buffer,
              double  value,
              int     decimals)
{
  char format[8];

  g_snprintf (format, sizeof format, "%%.%df", decimals);
  g_ascii_formatd (buffer, BUFFER_SIZE, format, value);
}

static gboolean
reads_back (const char   *text,
            const BbUnit *unit,
            double        canonical)
{
  double value = g_ascii_strtod (text, NULL);

  if (unit != NULL)
    value = _bb_unit_to_canonical (unit, value);

  return fabs (value - canonical) <= SAME_WITHIN * fabs (canonical);
}

static void
strip_zeros (char *text)
{
  if (strchr (text, '.') != NULL)
    {
      gsize n = strlen (text);

      while (text[n - 1] == '0')
        text[--n] = '\0';
      if (text[n - 1] == '.')
        text[--n] = '\0';
    }

  /* Minus nothing is nothing. */
  if (g_str_equal (text, "-0"))
    g_strlcpy (text, "0", 2);
}

static void
print_rounded (char   *buffer,
               double  value,
               int     decimals)
{
  if (value != 0.0)
    {
      int leading = (int) floor (log10 (fabs (value)));

      decimals = CLAMP (LEAST_DIGITS - 1 - leading, decimals, MOST_DECIMALS);
    }

  print_number (buffer, value, decimals);
  strip_zeros (buffer);
}

static int
get_decimals (BbQuantity    quantity,
              const BbUnit *unit)
{
  if (unit != NULL)
    return unit->decimals;

  return quantity == BB_QUANTITY_MONEY ? MONEY_DECIMALS : PLAIN_DECIMALS;
}

static void
pad_money (char *buffer)
{
  const char *point = strchr (buffer, '.');

  if (point != NULL && strlen (point) == 2)
    g_strlcat (buffer, "0", BUFFER_SIZE);
}

/*
 * Lengths and areas mostly follow from pixels and other lengths, and have more decimals than anybody reads off a
 * garment: of an inch the eighth, which has three. A temperature that was typed in the other scale has more than a
 * thermometer of the trade shows. Common practice, no source.
 */
static int
get_most_read (BbQuantity    quantity,
               const BbUnit *unit)
{
  if (quantity == BB_QUANTITY_LENGTH)
    return unit->decimals + 1;

  if (quantity == BB_QUANTITY_TEMPERATURE)
    return TEMPERATURE_DECIMALS_READ;

  return quantity == BB_QUANTITY_AREA ? unit->decimals : MOST_TYPED_DECIMALS;
}

/* With as few decimals as read back to the same value, up to @most; else rounded. */
static char *
write_number (BbQuantity           quantity,
              double               canonical,
              const BbUnitContext *context,
              const BbUnit        *unit,
              int                  most)
{
  const double shown = bb_quantity_to_shown (quantity, canonical, context);
  char buffer[BUFFER_SIZE];
  gboolean exact = FALSE;

  if (!isfinite (canonical) || !isfinite (shown))
    return g_strdup ("");

  for (int decimals = 0; decimals <= most && !exact; decimals++)
    {
      print_number (buffer, shown, decimals);
      exact = reads_back (buffer, unit, canonical);
    }

  if (exact)
    strip_zeros (buffer);
  else
    print_rounded (buffer, shown, MIN (most, get_decimals (quantity, unit)));
  if (quantity == BB_QUANTITY_MONEY)
    pad_money (buffer);

  if (context != NULL && context->decimal != NULL && *context->decimal != '\0')
    {
      g_auto (GStrv) halves = g_strsplit (buffer, ".", 2);

      return g_strjoinv (context->decimal, halves);
    }

  return g_strdup (buffer);
}

/**
 * bb_quantity_format_typed:
 * @quantity: a quantity
 * @canonical: a value in its canonical unit
 * @context: (nullable): the units and the decimal separator shown; %NULL for metric and "."
 *
 * Writes a number without its unit for a form, with as few decimals as read back to the same value (relative 1e-9), up
 * to four: what was typed as 14 in shows as 14 again. A value that has no such form is rounded as in
 * bb_quantity_format().
 *
 * A rounded text does not read back to the same value: a form should read only a text that a person has changed.
 *
 * Returns: (transfer full): the number; "" for one that is not finite
 */
char *
bb_quantity_format_typed (BbQuantity           quantity,
                          double               canonical,
                          const BbUnitContext *context)
{
  g_return_val_if_fail ((guint) quantity < BB_N_QUANTITIES, g_strdup (""));

  return write_number (quantity, canonical, context, _bb_unit_get_shown (quantity, get_system (context)),
                       MOST_TYPED_DECIMALS);
}

/**
 * bb_quantity_format:
 * @quantity: a quantity
 * @canonical: a value in its canonical unit
 * @context: (nullable): the units and the decimal separator shown; %NULL for metric and "."
 *
 * Writes a number without its unit for reading: as bb_quantity_format_typed() does where that is short, which is up to
 * 1 decimal in cm² and for temperatures, 2 in mm and in², 3 in inches and 4 in other units. Any other value is rounded:
 * to 1 decimal in mm, cm², ml, g/m², s, psi, mm/s and W and for temperatures, to 2 in g, inches, in², bar, ft/min,
 * oz/yd², %, kJ and money and for differences of temperature, to 4 in g/ml and for plain numbers; a small one keeps
 * three digits, but never more than 6 decimals. Money that has decimals has at least two.
 *
 * Returns: (transfer full): the number; "" for one that is not finite
 */
char *
bb_quantity_format (BbQuantity           quantity,
                    double               canonical,
                    const BbUnitContext *context)
{
  const BbUnit *unit = NULL;

  g_return_val_if_fail ((guint) quantity < BB_N_QUANTITIES, g_strdup (""));

  unit = _bb_unit_get_shown (quantity, get_system (context));

  return write_number (quantity, canonical, context, unit, get_most_read (quantity, unit));
}

static gboolean
is_currency_symbol (const char *currency)
{
  return g_utf8_strlen (currency, -1) == 1 && !g_unichar_isalpha (g_utf8_get_char (currency));
}

/**
 * bb_quantity_format_with_unit:
 * @quantity: a quantity
 * @canonical: a value in its canonical unit
 * @context: (nullable): the units and the decimal separator shown; %NULL for metric and "."
 *
 * Writes a number as bb_quantity_format() and its unit after a space, like `355.6 mm` or `10 %`. A
 * currency that is a single sign stands before the number without a space (`€12.50`), one of
 * letters after it (`12.50 kr`).
 *
 * Returns: (transfer full): the text; "" for a value that is not finite
 */
char *
bb_quantity_format_with_unit (BbQuantity           quantity,
                              double               canonical,
                              const BbUnitContext *context)
{
  g_autofree char *number = bb_quantity_format (quantity, canonical, context);
  const char *unit = bb_quantity_get_unit (quantity, context);

  if (*number == '\0' || *unit == '\0')
    return g_steal_pointer (&number);

  if (quantity == BB_QUANTITY_MONEY && is_currency_symbol (unit))
    {
      gboolean negative = *number == '-';

      return g_strconcat (negative ? "-" : "", unit, number + (negative ? 1 : 0), NULL);
    }

  return g_strconcat (number, " ", unit, NULL);
}
