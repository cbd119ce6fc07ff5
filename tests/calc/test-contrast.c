/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bb-contrast.h"

#include <math.h>

/* W3C WCAG 2.2, "contrast ratio": ratios range from 1 to 21, which black on white has. */
static void
test_ends (void)
{
  const double white = bb_contrast_luminance (1, 1, 1);
  const double black = bb_contrast_luminance (0, 0, 0);

  g_assert_cmpfloat_with_epsilon (white, 1.0, 1e-12);
  g_assert_cmpfloat_with_epsilon (black, 0.0, 1e-12);
  g_assert_cmpfloat_with_epsilon (bb_contrast_ratio (white, black), 21.0, 1e-9);
  g_assert_cmpfloat_with_epsilon (bb_contrast_ratio (black, black), 1.0, 1e-12);
}

/* The primaries' shares of white, ITU-R BT.709-6, item 3.2. */
static void
test_primaries (void)
{
  g_assert_cmpfloat_with_epsilon (bb_contrast_luminance (1, 0, 0), 0.2126, 1e-12);
  g_assert_cmpfloat_with_epsilon (bb_contrast_luminance (0, 1, 0), 0.7152, 1e-12);
  g_assert_cmpfloat_with_epsilon (bb_contrast_luminance (0, 0, 1), 0.0722, 1e-12);
}

/* Whatever the ground, the text that is chosen has what WCAG 2.2, success criterion 1.4.3, asks of text: 4.5. */
static void
test_always_readable (void)
{
  double least = INFINITY;

  for (int red = 0; red < 256; red += 3)
    for (int green = 0; green < 256; green += 3)
      for (int blue = 0; blue < 256; blue += 3)
        {
          const double ground = bb_contrast_luminance (red / 255.0, green / 255.0, blue / 255.0);
          const gboolean white = bb_contrast_wants_white_text (red / 255.0, green / 255.0, blue / 255.0);
          const double ratio = bb_contrast_ratio (ground, white ? 1.0 : 0.0);

          least = fmin (least, ratio);
        }

  g_test_message ("Least contrast of all grounds: %.3f", least);
  g_assert_cmpfloat (least, >=, 4.5);
  g_assert_cmpfloat (least, <=, 4.6);
}

static void
test_choice (void)
{
  g_assert_true (bb_contrast_wants_white_text (0.0, 0.0, 0.0));
  g_assert_true (bb_contrast_wants_white_text (0.1, 0.17, 0.29));
  g_assert_false (bb_contrast_wants_white_text (1.0, 1.0, 1.0));
  g_assert_false (bb_contrast_wants_white_text (0.72, 0.83, 0.9));
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/calc/contrast/ends", test_ends);
  g_test_add_func ("/calc/contrast/primaries", test_primaries);
  g_test_add_func ("/calc/contrast/always-readable", test_always_readable);
  g_test_add_func ("/calc/contrast/choice", test_choice);

  return g_test_run ();
}
