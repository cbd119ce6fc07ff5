/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-test"

#include "bb-print-view.h"

/*
 * The model of bb-print-view.h by hand, light by IEC 61966-2-1: 188 of 255 stands for 0.5029 of the light, whose square
 * is 138 (137.69); a quarter of the light is 137 (136.96), 0.498 of it 187 (187.18), 0.502 of it 188 (187.85).
 */

#define BLACK_AT 24

static const guint8 black[3] = { 0, 0, 0 };
static const guint8 white[3] = { 255, 255, 255 };
static const guint8 red[3] = { 156, 31, 43 };
static const guint8 half[3] = { 188, 188, 188 };

typedef struct {
  guint8 rgb[3];
} Seen;

static Seen
look (const guint8 art[4],
      const guint8 garment[3],
      BbPrintMode  mode)
{
  g_autoptr (GBytes) bytes = g_bytes_new (art, 4);
  g_autoptr (BbPreview) preview = bb_preview_new (1, 1, bytes);
  g_autoptr (BbPreview) view = bb_print_view_new (preview, garment, mode, BLACK_AT);
  const guint8 *pixel = g_bytes_get_data (view->pixels, NULL);

  g_assert_cmpuint (view->width, ==, 1);
  g_assert_cmpuint (g_bytes_get_size (view->pixels), ==, 4);
  g_assert_cmpuint (pixel[3], ==, 255);

  return (Seen) { { pixel[0], pixel[1], pixel[2] } };
}

static void
assert_seen (Seen  seen,
             guint r,
             guint g,
             guint b)
{
  if (seen.rgb[0] != r || seen.rgb[1] != g || seen.rgb[2] != b)
    g_error ("seen is %u %u %u, not %u %u %u", seen.rgb[0], seen.rgb[1], seen.rgb[2], r, g, b);
}

static void
test_nothing_is_the_garment (void)
{
  for (int mode = BB_PRINT_COLOUR_ONLY; mode <= BB_PRINT_UNDERBASE_KNOCKOUT; mode++)
    assert_seen (look ((const guint8[]) { 12, 200, 77, 0 }, red, (BbPrintMode) mode), 156, 31, 43);
}

/* Every value of sRGB comes back from light. */
static void
test_underbase_shows_art_as_it_is (void)
{
  for (guint value = 0; value < 256; value++)
    {
      const guint8 art[] = { (guint8) value, (guint8) (255 - value), 100, 255 };

      assert_seen (look (art, red, BB_PRINT_UNDERBASE), value, 255 - value, 100);
      assert_seen (look (art, white, BB_PRINT_COLOUR_ONLY), value, 255 - value, 100);
    }
}

static void
test_colour_only_multiplies (void)
{
  assert_seen (look ((const guint8[]) { 255, 255, 255, 255 }, red, BB_PRINT_COLOUR_ONLY), 156, 31, 43);
  assert_seen (look ((const guint8[]) { 200, 90, 255, 255 }, black, BB_PRINT_COLOUR_ONLY), 0, 0, 0);
  assert_seen (look ((const guint8[]) { 188, 188, 188, 255 }, half, BB_PRINT_COLOUR_ONLY), 138, 138, 138);
}

static void
test_knockout_leaves_the_garment (void)
{
  assert_seen (look ((const guint8[]) { 24, 0, 24, 255 }, red, BB_PRINT_UNDERBASE_KNOCKOUT), 156, 31, 43);
  assert_seen (look ((const guint8[]) { 25, 0, 24, 255 }, red, BB_PRINT_UNDERBASE_KNOCKOUT), 25, 0, 24);
  assert_seen (look ((const guint8[]) { 24, 0, 24, 255 }, red, BB_PRINT_UNDERBASE), 24, 0, 24);
}

/*
 * Half covered, as nearly as 8 bits have it (128 ÷ 255 = 0.502): black art on black shows a quarter of the light of its
 * underbase, 0.502 · 0.498, and none without one.
 */
static void
test_soft_edges_show_the_underbase (void)
{
  static const guint8 art[] = { 0, 0, 0, 128 };

  assert_seen (look (art, black, BB_PRINT_UNDERBASE), 137, 137, 137);
  assert_seen (look (art, black, BB_PRINT_COLOUR_ONLY), 0, 0, 0);
  assert_seen (look (art, black, BB_PRINT_UNDERBASE_KNOCKOUT), 0, 0, 0);
  /* On white no underbase can be told: 0.498 of the light is left. */
  assert_seen (look (art, white, BB_PRINT_UNDERBASE), 187, 187, 187);
  assert_seen (look (art, white, BB_PRINT_COLOUR_ONLY), 187, 187, 187);
  /* Wholly white art, half covered, on black: its own half of light. */
  assert_seen (look ((const guint8[]) { 255, 255, 255, 128 }, black, BB_PRINT_UNDERBASE), 188, 188, 188);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/print-view/nothing-is-the-garment", test_nothing_is_the_garment);
  g_test_add_func ("/print-view/underbase-shows-art-as-it-is", test_underbase_shows_art_as_it_is);
  g_test_add_func ("/print-view/colour-only-multiplies", test_colour_only_multiplies);
  g_test_add_func ("/print-view/knockout-leaves-the-garment", test_knockout_leaves_the_garment);
  g_test_add_func ("/print-view/soft-edges-show-the-underbase", test_soft_edges_show_the_underbase);

  return g_test_run ();
}
