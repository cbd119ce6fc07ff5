/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bb-mixture.h"
#include "bb-rounding.h"
#include "bb-water.h"
#include "reference.h"

/* The table is printed to 0.00001 kg/m³, so that it can't agree better than to half of that. */
#define PRINTED_TO_G_PER_ML 0.5e-8
#define KG_PER_M3_IN_G_PER_ML 1000.0

static void
test_tanaka_table (void)
{
  g_autoptr (Reference) table = reference_load ("water-properties");
  double largest = 0.0;
  guint n = 0;

  for (guint row = 0; row < reference_get_length (table); row++)
    if (g_str_equal (reference_get_text (table, row, "quantity"), "density"))
      {
        double celsius = reference_get_number (table, row, "temperature_C");
        double density = reference_get_number (table, row, "value") / KG_PER_M3_IN_G_PER_ML;

        largest = fmax (largest, fabs (bb_water_density_g_per_ml (celsius) - density));
        n++;
      }

  g_test_message ("Largest deviation from Tanaka's table: %.3g g/ml in %u temperatures", largest, n);
  g_assert_cmpuint (n, ==, 41);
  g_assert_cmpfloat (largest, <=, PRINTED_TO_G_PER_ML * 1.001);
}

/* An equation of state that owes nothing to Tanaka's: the two may differ by what both claim, 0.001 kg/m³. */
static void
test_iapws_95 (void)
{
  g_autoptr (Reference) table = reference_load ("water-properties");
  double largest = 0.0;

  for (guint row = 0; row < reference_get_length (table); row++)
    if (g_str_equal (reference_get_text (table, row, "quantity"), "density"))
      {
        double celsius = reference_get_number (table, row, "temperature_C");
        double density = reference_get_number (table, row, "crosscheck_value") / KG_PER_M3_IN_G_PER_ML;

        largest = fmax (largest, fabs (bb_water_density_g_per_ml (celsius) - density));
      }

  g_test_message ("Largest deviation from IAPWS-95: %.3g g/ml", largest);
  g_assert_cmpfloat (largest, <, 1.3e-6);
}

static void
test_outside_the_range (void)
{
  g_assert_true (isnan (bb_water_density_g_per_ml (-0.001)));
  g_assert_true (isnan (bb_water_density_g_per_ml (40.001)));
  g_assert_true (isnan (bb_water_density_g_per_ml ((double) NAN)));
  g_assert_true (isnan (bb_water_density_g_per_ml ((double) INFINITY)));
  g_assert_false (isnan (bb_water_density_g_per_ml (BB_WATER_COLDEST_C)));
  g_assert_false (isnan (bb_water_density_g_per_ml (BB_WATER_WARMEST_C)));
}

/* Water is densest near 4 °C and falls on both sides. */
static void
test_one_maximum (void)
{
  for (double celsius = 0.0; celsius < 3.9; celsius += 0.1)
    g_assert_cmpfloat (bb_water_density_g_per_ml (celsius), <, bb_water_density_g_per_ml (celsius + 0.1));
  for (double celsius = 4.0; celsius < 39.9; celsius += 0.1)
    g_assert_cmpfloat (bb_water_density_g_per_ml (celsius), >, bb_water_density_g_per_ml (celsius + 0.1));
}

static void
test_shares (void)
{
  double water = 0.0;

  g_assert_cmpfloat (bb_mixture_concentrate_share (1, 3, BB_BASIS_MASS, 5, 7, &water), ==, 0.25);
  g_assert_cmpfloat (water, ==, 0.75);
  /* 1 · 2 to 3 · 2 by mass, where both weigh the same. */
  g_assert_cmpfloat (bb_mixture_concentrate_share (1, 3, BB_BASIS_VOLUME, 2, 2, NULL), ==, 0.25);
  /* 1 · 3 to 3 · 1. */
  g_assert_cmpfloat (bb_mixture_concentrate_share (1, 3, BB_BASIS_VOLUME, 3, 1, &water), ==, 0.5);
  g_assert_cmpfloat (water, ==, 0.5);
  g_assert_cmpfloat (bb_mixture_concentrate_share (1e-6, 0, BB_BASIS_VOLUME, 3, 1, &water), ==, 1.0);
  g_assert_cmpfloat (water, ==, 0.0);
}

static void
test_steady_rounding (void)
{
  g_assert_cmpfloat (100 * 0.07, >, 7.0);
  g_assert_cmpfloat (bb_ceil_steady (100 * 0.07), ==, 7.0);
  g_assert_cmpfloat (0.3 / 0.1, <, 3.0);
  g_assert_cmpfloat (bb_floor_steady (0.3 / 0.1), ==, 3.0);
  g_assert_cmpfloat (bb_floor_steady (2.9999), ==, 2.0);
  g_assert_cmpfloat (bb_ceil_steady (3.0001), ==, 4.0);
  g_assert_cmpfloat (bb_floor_steady (3.0), ==, 3.0);
  g_assert_cmpfloat (bb_ceil_steady (3.0), ==, 3.0);
  g_assert_cmpfloat (bb_ceil_steady (0.0), ==, 0.0);
  g_assert_cmpfloat (bb_floor_steady (0.0), ==, 0.0);
  g_assert_cmpfloat (bb_ceil_steady (1e-300), ==, 1.0);
  g_assert_cmpfloat (bb_floor_steady (1e-300), ==, 0.0);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/water/tanaka-table", test_tanaka_table);
  g_test_add_func ("/water/iapws-95", test_iapws_95);
  g_test_add_func ("/water/outside-the-range", test_outside_the_range);
  g_test_add_func ("/water/one-maximum", test_one_maximum);
  g_test_add_func ("/water/shares", test_shares);
  g_test_add_func ("/water/steady-rounding", test_steady_rounding);

  return g_test_run ();
}
