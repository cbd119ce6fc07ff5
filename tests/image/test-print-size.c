/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-test"

#include "bb-print-size.h"

/* Expected values: reckoned by hand. The art is 200 × 100 pixels, twice as wide as high, at 10 pixels a mm. */
static const BbCounts art = {
  .width = 200, .height = 100, .pixels_per_metre_x = 10000, .left = 0, .top = 0, .right = 200, .bottom = 100,
};

static void
assert_size (const BbPrintSize *size,
             double             width_mm,
             double             height_mm)
{
  g_assert_cmpfloat_with_epsilon (size->width_mm, width_mm, 1e-9);
  g_assert_cmpfloat_with_epsilon (size->height_mm, height_mm, 1e-9);
}

static void
test_file (void)
{
  BbPrintSize size = BB_PRINT_SIZE_UNKNOWN;
  BbCounts unsized = art;

  unsized.pixels_per_metre_x = 0;
  g_assert_false (bb_print_size_take_art (&size, &unsized));
  g_assert_true (isnan (size.width_mm) && isnan (size.height_mm));

  g_assert_true (bb_print_size_take_art (&size, &art));
  assert_size (&size, 20, 10);
}

/* What a person typed before there was an artwork counts more than what its file says. */
static void
test_typed_before (void)
{
  BbPrintSize by_width = BB_PRINT_SIZE_UNKNOWN;
  BbPrintSize by_height = BB_PRINT_SIZE_UNKNOWN;
  double width_mm = 300;
  double height_mm = (double) NAN;

  g_assert_false (bb_print_size_follow (&by_width, NULL, &width_mm, &height_mm));
  g_assert_true (by_width.is_typed);
  g_assert_true (bb_print_size_take_art (&by_width, &art));
  assert_size (&by_width, 300, 150);

  width_mm = (double) NAN;
  height_mm = 100;
  g_assert_false (bb_print_size_follow (&by_height, NULL, &width_mm, &height_mm));
  g_assert_true (bb_print_size_take_art (&by_height, &art));
  assert_size (&by_height, 200, 100);
}

static void
test_follow (void)
{
  BbPrintSize size = BB_PRINT_SIZE_UNKNOWN;
  double width_mm = 20;
  double height_mm = 10;

  g_assert_true (bb_print_size_take_art (&size, &art));
  g_assert_false (bb_print_size_follow (&size, &art, &width_mm, &height_mm));
  g_assert_false (size.is_typed);

  width_mm = 240;
  g_assert_true (bb_print_size_follow (&size, &art, &width_mm, &height_mm));
  g_assert_true (size.is_typed);
  assert_size (&size, 240, 120);
  g_assert_cmpfloat_with_epsilon (height_mm, 120, 1e-9);

  height_mm = 60;
  g_assert_true (bb_print_size_follow (&size, &art, &width_mm, &height_mm));
  assert_size (&size, 120, 60);
  g_assert_cmpfloat_with_epsilon (width_mm, 120, 1e-9);
}

/* While a person types, a field is empty or holds what no print can have. */
static void
test_half_typed (void)
{
  BbPrintSize size = BB_PRINT_SIZE_UNKNOWN;
  double width_mm = (double) NAN;
  double height_mm = 10;

  g_assert_true (bb_print_size_take_art (&size, &art));
  g_assert_false (bb_print_size_follow (&size, &art, &width_mm, &height_mm));
  assert_size (&size, 20, 10);

  width_mm = 0;
  g_assert_false (bb_print_size_follow (&size, &art, &width_mm, &height_mm));
  g_assert_false (size.is_typed);
  assert_size (&size, 20, 10);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/print-size/file", test_file);
  g_test_add_func ("/print-size/typed-before", test_typed_before);
  g_test_add_func ("/print-size/follow", test_follow);
  g_test_add_func ("/print-size/half-typed", test_half_typed);

  return g_test_run ();
}
