/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bb-error.h"
#include "bb-quantity.h"

#include <math.h>
#include <string.h>

/* What holds of every quantity, tried on random values and texts. The seed is fixed: a failure repeats. */

#define SEED 20250314
#define N_VALUES 100
#define N_TEXTS 10000
#define BOX_M2 0.14451584

static const BbUnitContext contexts[] = {
  { BB_UNITS_METRIC, BOX_M2, NULL, NULL },
  { BB_UNITS_METRIC, BOX_M2, ".", "€" },
  { BB_UNITS_METRIC, BOX_M2, ",", "kr" },
  { BB_UNITS_US, BOX_M2, ".", "$" },
  { BB_UNITS_US, BOX_M2, ",", "$" },
};

typedef void (*EachFunc) (BbQuantity           quantity,
                          const BbUnitContext *context,
                          GRand               *rand);

static void
for_each (EachFunc func)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (SEED);

  for (int q = 0; q < BB_N_QUANTITIES; q++)
    for (guint c = 0; c < G_N_ELEMENTS (contexts); c++)
      for (guint i = 0; i < N_VALUES; i++)
        func ((BbQuantity) q, &contexts[c], rand);
}

static double
parse (BbQuantity           quantity,
       const char          *text,
       const BbUnitContext *context)
{
  g_autoptr (GError) error = NULL;
  double value = (double) NAN;

  bb_quantity_parse (quantity, text, context, &value, &error);
  g_assert_no_error (error);

  return value;
}

/* As a form would show it: no needless zeros, and money with two decimals. */
static char *
write_typed (GRand               *rand,
             BbQuantity           quantity,
             const BbUnitContext *context)
{
  int decimals = g_rand_int_range (rand, 0, 5);
  int whole = g_rand_int_range (rand, 0, 9999);
  const char *sign = whole > 0 && g_rand_boolean (rand) ? "-" : "";
  const char *point = context->decimal != NULL ? context->decimal : ".";
  g_autoptr (GString) digits = g_string_new (NULL);

  for (int i = 0; i < decimals; i++)
    g_string_append_c (digits, (char) ('0' + g_rand_int_range (rand, i == decimals - 1 ? 1 : 0, 10)));
  if (quantity == BB_QUANTITY_MONEY && digits->len == 1)
    g_string_append_c (digits, '0');

  return digits->len == 0 ? g_strdup_printf ("%s%d", sign, whole)
                          : g_strdup_printf ("%s%d%s%s", sign, whole, point, digits->str);
}

static void
check_typed_comes_back (BbQuantity           quantity,
                        const BbUnitContext *context,
                        GRand               *rand)
{
  g_autofree char *typed = write_typed (rand, quantity, context);
  double value = parse (quantity, typed, context);
  g_autofree char *number = bb_quantity_format_typed (quantity, value, context);

  g_assert_cmpstr (number, ==, typed);
  g_assert_cmpfloat (parse (quantity, number, context), ==, value);
}

static void
test_typed_comes_back (void)
{
  for_each (check_typed_comes_back);
}

/* The coarsest rounding that bb_quantity_format() names for the quantity, in the unit shown. */
static double
coarsest (BbQuantity           quantity,
          const BbUnitContext *context)
{
  const char *unit = bb_quantity_get_unit (quantity, context);
  const char * const one_decimal[] = { "mm", "cm²", "ml", "g/m²", "s", "psi", "mm/s", "W", NULL };
  const char * const four_decimals[] = { "g/ml", NULL };

  if (quantity == BB_QUANTITY_NONE || g_strv_contains (four_decimals, unit))
    return 1e-4;

  return quantity == BB_QUANTITY_TEMPERATURE || g_strv_contains (one_decimal, unit) ? 0.1 : 0.01;
}

static void
check_rounding (BbQuantity           quantity,
                const BbUnitContext *context,
                GRand               *rand)
{
  double value = pow (10, g_rand_double_range (rand, -9, 9)) * (g_rand_boolean (rand) ? 1 : -1);
  g_autofree char *number = bb_quantity_format (quantity, value, context);
  double again = parse (quantity, number, context);
  g_autofree char *same = bb_quantity_format (quantity, again, context);
  double shown = bb_quantity_to_shown (quantity, value, context);
  double off = fabs (bb_quantity_to_shown (quantity, again, context) - shown);

  /* Beyond this a fourth decimal is less than one part in 1e9, which counts as the same value. */
  if (fabs (shown) < 1e5)
    g_assert_cmpstr (same, ==, number);
  g_assert_cmpfloat (off, <=, fmax (0.501 * coarsest (quantity, context), 1e-9 * fabs (shown)));
  /* Three digits are left of a small number that six decimals can show. */
  if (fabs (shown) > 1e-4)
    g_assert_cmpfloat (off, <=, 0.00501 * fabs (shown));
}

static void
test_rounds_as_it_says_and_stays (void)
{
  for_each (check_rounding);
}

static void
check_extremes (BbQuantity           quantity,
                const BbUnitContext *context,
                GRand               *rand)
{
  double value = ldexp (g_rand_double_range (rand, -1, 1), g_rand_int_range (rand, -1070, 1024));
  g_autofree char *text = bb_quantity_format_with_unit (quantity, value, context);

  g_assert_true (g_utf8_validate (text, -1, NULL));
  if (*text != '\0' && fabs (value) < 1e300)
    g_assert_true (isfinite (parse (quantity, text, context)));
}

static void
test_stands_any_double (void)
{
  for_each (check_extremes);
}

/* Pieces from which texts come out that nearly are quantities. */
static const char * const pieces[] = {
  "0", "1", "14", "330", "1.5", "1,5", ".", ",", "-", "−", "+", " ", "\u00a0", "\t", "/", ":", "x", "×",
  "*", "½", "⅜", "²", "°C", "°F", "in", "ft", "'", "\"", "″", "mm", "cm", "m", "m²", "g", "box", "g/box",
  "g/m²", "oz", "lb", "ml", "fl oz", "s", "min", "h", "psi", "bar", "%", "€", "$", "kr", "to", "rtu",
  "nan", "inf", "0x1f", "1e9", "1/2", "1/0", "per", "\xff", "\xc3", "\x01", "\u202e", "\u200b", "٣",
  "^2", "999999999999999999999999", "\n",
};

static char *
random_text (GRand *rand)
{
  GString *text = g_string_new (NULL);
  int n = g_rand_int_range (rand, 0, 9);

  for (int i = 0; i < n; i++)
    if (g_rand_int_range (rand, 0, 12) == 0)
      g_string_append_c (text, (char) g_rand_int_range (rand, 1, 256));
    else
      g_string_append (text, pieces[g_rand_int_range (rand, 0, G_N_ELEMENTS (pieces))]);

  return g_string_free (text, FALSE);
}

static void
check_refusal (const GError *error)
{
  g_assert_error (error, BB_MODEL_ERROR, BB_MODEL_ERROR_TEXT);
  g_assert_true (g_utf8_validate (error->message, -1, NULL));
  g_assert_null (strchr (error->message, '\n'));
  g_assert_cmpuint (strlen (error->message), <, 300);
}

static void
test_stands_any_text (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (SEED);
  guint n_read = 0;

  for (guint i = 0; i < N_TEXTS; i++)
    {
      BbQuantity quantity = (BbQuantity) g_rand_int_range (rand, 0, BB_N_QUANTITIES);
      const BbUnitContext *context = &contexts[g_rand_int_range (rand, 0, G_N_ELEMENTS (contexts))];
      g_autofree char *text = random_text (rand);
      g_autoptr (GError) error = NULL;
      double value = 7;

      if (bb_quantity_parse (quantity, text, context, &value, &error))
        {
          g_assert_no_error (error);
          g_assert_true (isfinite (value));
          n_read++;
        }
      else
        {
          check_refusal (error);
          g_assert_cmpfloat (value, ==, 7);
        }
    }

  /* If hardly any text were read, the ones that are refused would prove little. */
  g_assert_cmpuint (n_read, >, N_TEXTS / 200);
}

static void
test_stands_any_dilution (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (SEED);

  for (guint i = 0; i < N_TEXTS; i++)
    {
      const BbUnitContext *context = &contexts[g_rand_int_range (rand, 0, G_N_ELEMENTS (contexts))];
      g_autofree char *half = random_text (rand);
      g_autofree char *text = g_rand_boolean (rand) ? g_strconcat ("1:", half, NULL) : g_strdup (half);
      g_autoptr (GError) error = NULL;
      double concentrate = 7;
      double water = 8;

      if (bb_dilution_parse (text, context, &concentrate, &water, &error))
        {
          g_autofree char *again = bb_dilution_format (concentrate, water, context);
          double concentrate_again = 0;
          double water_again = 0;

          g_assert_no_error (error);
          g_assert_true (bb_dilution_parse (again, context, &concentrate_again, &water_again, &error));
          g_assert_cmpfloat (concentrate_again, ==, concentrate);
          g_assert_cmpfloat (water_again, ==, water);
        }
      else
        {
          check_refusal (error);
          g_assert_cmpfloat (concentrate, ==, 7);
          g_assert_cmpfloat (water, ==, 8);
        }
    }
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/quantity-random/typed-comes-back", test_typed_comes_back);
  g_test_add_func ("/quantity-random/rounds-as-it-says-and-stays", test_rounds_as_it_says_and_stays);
  g_test_add_func ("/quantity-random/stands-any-double", test_stands_any_double);
  g_test_add_func ("/quantity-random/stands-any-text", test_stands_any_text);
  g_test_add_func ("/quantity-random/stands-any-dilution", test_stands_any_dilution);

  return g_test_run ();
}
