/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-test"

#include "bb-placement.h"

/* Expected values: reckoned by hand, as each comment says. */

/* 400 × 300 pixels with 200 × 100 of art in them, 100 from the left and 50 from the top; 10,000 pixels a metre. Of the
 * art 10,000 pixels are opaque, 2,000 of these black and 3,000 white, and 4,000 are half transparent. */
static const BbCounts counts = {
  .width = 400,
  .height = 300,
  .pixels_per_metre_x = 10000,
  .n_pixels = 120000,
  .n_empty = 106000,
  .n_opaque = 10000,
  .n_black = 2000,
  .n_white = 3000,
  .alpha = 10000 * 255 + 4000 * 102,
  .black_alpha = 2000 * 255,
  .white_alpha = 3000 * 255,
  .left = 100,
  .top = 50,
  .right = 300,
  .bottom = 150,
};

static void
assert_rectangle (const BbRectangle *found,
                  double             x_mm,
                  double             y_mm,
                  double             width_mm,
                  double             height_mm)
{
  g_assert_cmpfloat_with_epsilon (found->x_mm, x_mm, 1e-9);
  g_assert_cmpfloat_with_epsilon (found->y_mm, y_mm, 1e-9);
  g_assert_cmpfloat_with_epsilon (found->width_mm, width_mm, 1e-9);
  g_assert_cmpfloat_with_epsilon (found->height_mm, height_mm, 1e-9);
}

static void
test_sizes (void)
{
  BbCounts unsized = counts;

  /* 10 pixels a mm. */
  g_assert_cmpfloat_with_epsilon (bb_placement_natural_width (&counts), 20, 1e-9);
  unsized.pixels_per_metre_x = 0;
  g_assert_true (isnan (bb_placement_natural_width (&unsized)));

  /* The art is twice as wide as high, and half as wide as the picture. */
  g_assert_cmpfloat_with_epsilon (bb_placement_width_for_height (&counts, 150), 300, 1e-9);
  g_assert_cmpfloat_with_epsilon (bb_placement_height_for_width (&counts, 300), 150, 1e-9);
  g_assert_cmpfloat_with_epsilon (bb_placement_picture_width (&counts, 300), 600, 1e-9);
}

static void
test_place (void)
{
  BbPlacement placement;

  /* 300 mm for 200 pixels are 1.5 mm a pixel; a margin of 10 mm on each side. */
  bb_placement_fill (&placement, &counts, 300, 320, 170);
  assert_rectangle (&placement.picture, 0, 0, 600, 450);
  assert_rectangle (&placement.art, 150, 75, 300, 150);
  assert_rectangle (&placement.box, 140, 65, 320, 170);
  assert_rectangle (&placement.view, 140, 65, 320, 170);

  /* A margin that is cut below the art on one axis: the view holds both. */
  bb_placement_fill (&placement, &counts, 300, 320, 100);
  assert_rectangle (&placement.box, 140, 100, 320, 100);
  assert_rectangle (&placement.view, 140, 75, 320, 150);
}

/* The margin and the size go by the art, so the box is the one that the calculator artwork names. */
static void
test_agrees_with_artwork (void)
{
  g_autoptr (BbArtworkIn) in = bb_artwork_in_new ();
  g_autoptr (BbArtworkOut) out = bb_artwork_out_new ();
  BbPlacement placement;

  in->print_width_mm = bb_placement_picture_width (&counts, 300);
  in->mode = BB_PRINT_UNDERBASE;
  in->margin_mm = 10;
  bb_artwork_fill (in, &counts, out);
  bb_placement_fill (&placement, &counts, 300, out->box_width_mm, out->box_height_mm);
  assert_rectangle (&placement.box, 140, 65, 320, 170);
}

static void
test_empty (void)
{
  BbCounts empty = counts;
  BbPlacement placement;

  empty.left = empty.right = empty.top = empty.bottom = 0;
  g_assert_cmpfloat_with_epsilon (bb_placement_natural_width (&empty), 40, 1e-9);
  bb_placement_fill (&placement, &empty, 100, 100, 75);
  assert_rectangle (&placement.art, 0, 0, 100, 75);
  assert_rectangle (&placement.view, 0, 0, 100, 75);
}

static void
assert_share (const BbShare *share,
              double         fraction,
              double         area_m2)
{
  g_assert_cmpfloat_with_epsilon (share->fraction, fraction, 1e-12);
  g_assert_cmpfloat_with_epsilon (share->area_m2, area_m2, 1e-12);
}

static void
fill_coverage (BbCoverage     *coverage,
               const BbCounts *counted,
               BbPrintMode     mode)
{
  g_autoptr (BbArtworkIn) in = bb_artwork_in_new ();
  g_autoptr (BbArtworkOut) out = bb_artwork_out_new ();

  in->print_width_mm = 400;
  in->mode = (int) mode;
  in->margin_mm = 10;
  bb_artwork_fill (in, counted, out);
  bb_coverage_fill (coverage, in, out);
}

/* At 1 mm² a pixel the art box has 20,000 mm². Covered are 10,000 + 0.4 × 4,000 = 11,600. */
static void
test_coverage (void)
{
  BbCoverage coverage;

  fill_coverage (&coverage, &counts, BB_PRINT_COLOUR_ONLY);
  assert_share (&coverage.colour, 0.58, 0.0116);
  assert_share (&coverage.underbase, 0, 0);
  assert_share (&coverage.highlight, 0, 0);
  assert_share (&coverage.knockout, 0, 0);
  assert_share (&coverage.soft, 0.2, 0.004);

  fill_coverage (&coverage, &counts, BB_PRINT_UNDERBASE);
  assert_share (&coverage.colour, 0.43, 0.0086);
  assert_share (&coverage.underbase, 0.58, 0.0116);
  assert_share (&coverage.highlight, 0.15, 0.003);
  assert_share (&coverage.knockout, 0, 0);

  fill_coverage (&coverage, &counts, BB_PRINT_UNDERBASE_KNOCKOUT);
  assert_share (&coverage.colour, 0.33, 0.0066);
  assert_share (&coverage.underbase, 0.48, 0.0096);
  assert_share (&coverage.highlight, 0.15, 0.003);
  assert_share (&coverage.knockout, 0.1, 0.002);
  assert_share (&coverage.soft, 0.2, 0.004);
}

static void
test_coverage_of_nothing (void)
{
  BbCounts empty = { .width = 10, .height = 10, .n_pixels = 100, .n_empty = 100 };
  BbCoverage coverage;

  fill_coverage (&coverage, &empty, BB_PRINT_UNDERBASE_KNOCKOUT);
  assert_share (&coverage.colour, 0, 0);
  assert_share (&coverage.underbase, 0, 0);
  assert_share (&coverage.soft, 0, 0);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/placement/sizes", test_sizes);
  g_test_add_func ("/placement/place", test_place);
  g_test_add_func ("/placement/agrees-with-artwork", test_agrees_with_artwork);
  g_test_add_func ("/placement/empty", test_empty);
  g_test_add_func ("/placement/coverage", test_coverage);
  g_test_add_func ("/placement/coverage-of-nothing", test_coverage_of_nothing);

  return g_test_run ();
}
