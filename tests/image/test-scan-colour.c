/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-test"

#include <math.h>
#include <string.h>

#include "bb-colour.h"
#include "bb-error.h"
#include "bb-scan-colour.h"
#include "pictures.h"
#include "reference.h"

/* The colour of rectangles, against Little CMS's own tool and published values. */

#define SEED 20251106

static gboolean
measure (GBytes           *bytes,
         const gint64      rectangle[4],
         BbScanColourOut  *out,
         GError          **error)
{
  g_autoptr (BbPng) png = bb_png_new_for_bytes (bytes, "a scan", BB_PNG_FORM_DEEP, error);
  BbScanColourIn in = { .x_px = rectangle[0], .y_px = rectangle[1], .width_px = rectangle[2],
                        .height_px = rectangle[3] };

  return png != NULL && bb_scan_colour_measure (&in, png, out, NULL, error);
}

static BbScanColourOut *
measure_well (GBytes       *bytes,
              const gint64  rectangle[4])
{
  BbScanColourOut *out = bb_scan_colour_out_new ();
  g_autoptr (GError) error = NULL;

  measure (bytes, rectangle, out, &error);
  g_assert_no_error (error);

  return out;
}

static gboolean
has_warning (const BbScanColourOut *out,
             BbScanWarning          warning)
{
  return g_strv_contains ((const char * const *) out->warnings,
                          bb_choices_get_key (&bb_scan_warning_choices, (int) warning));
}

static void
assert_near (const char *name,
             double      is,
             double      should,
             double      tolerance)
{
  if (isnan (should) ? isnan (is) : fabs (is - should) <= tolerance)
    return;
  g_test_message ("%s: is %.6f, not %.6f", name, is, should);
  g_test_fail ();
}

/* transicc prints four decimals. */
static void
test_transicc (void)
{
  g_autoptr (Reference) reference = reference_load ("scan-colour-transicc");

  g_assert_cmpuint (reference_get_length (reference), >=, 20);
  for (guint i = 0; i < reference_get_length (reference); i++)
    {
      const char *name = reference_get_text (reference, i, "name");
      g_autoptr (GBytes) bytes = picture_load (name);
      const gint64 rectangle[4] = {
        (gint64) reference_get_number (reference, i, "x"), (gint64) reference_get_number (reference, i, "y"),
        (gint64) reference_get_number (reference, i, "width"), (gint64) reference_get_number (reference, i, "height"),
      };
      g_autoptr (BbScanColourOut) out = measure_well (bytes, rectangle);

      g_assert_cmpint (out->pixels, ==, rectangle[2] * rectangle[3]);
      assert_near (name, out->l, reference_get_number (reference, i, "l"), 1e-4);
      assert_near (name, out->a, reference_get_number (reference, i, "a"), 1e-4);
      assert_near (name, out->b, reference_get_number (reference, i, "b"), 1e-4);
      assert_near (name, out->l_sd, reference_get_number (reference, i, "l_sd"), 1e-4);
      assert_near (name, out->a_sd, reference_get_number (reference, i, "a_sd"), 1e-4);
      assert_near (name, out->b_sd, reference_get_number (reference, i, "b_sd"), 1e-4);
    }
}

/* The file's own tolerance, for the white point that differs in its fourth decimal. */
static void
test_published_srgb (void)
{
  g_autoptr (Reference) reference = reference_load ("srgb-lab");
  guint n = reference_get_length (reference);
  g_autofree guint8 *row = g_malloc (3 * (gsize) n);
  Drawing drawing = { .width = n, .height = 1, .colour_type = PNG_COLOR_TYPE_RGB, .bit_depth = 8, .rows = row,
                      .row_bytes = 3 * (gsize) n };
  g_autoptr (GBytes) bytes = NULL;

  g_assert_cmpuint (n, ==, 51);
  for (guint i = 0; i < n; i++)
    {
      row[3 * i] = (guint8) reference_get_number (reference, i, "R_8bit");
      row[3 * i + 1] = (guint8) reference_get_number (reference, i, "G_8bit");
      row[3 * i + 2] = (guint8) reference_get_number (reference, i, "B_8bit");
    }
  bytes = drawing_write (&drawing);
  for (guint i = 0; i < n; i++)
    {
      const char *name = reference_get_text (reference, i, "name");
      const gint64 rectangle[4] = { i, 0, 1, 1 };
      g_autoptr (BbScanColourOut) out = measure_well (bytes, rectangle);

      assert_near (name, out->l, reference_get_number (reference, i, "L_D50_culori"), 0.01);
      assert_near (name, out->a, reference_get_number (reference, i, "a_D50_culori"), 0.01);
      assert_near (name, out->b, reference_get_number (reference, i, "b_D50_culori"), 0.01);
      assert_near (name, out->l, reference_get_number (reference, i, "L_D50_lcms2"), 1e-4);
      assert_near (name, out->a, reference_get_number (reference, i, "a_D50_lcms2"), 1e-4);
      assert_near (name, out->b, reference_get_number (reference, i, "b_D50_lcms2"), 1e-4);
    }
}

static void
test_warnings (void)
{
  static const struct {
    const char *name;
    gboolean no_profile;
    gboolean bad_profile;
    gboolean transparent;
  } pictures[] = {
    { "rgb-8", TRUE, FALSE, FALSE },
    { "rgba-8-300ppi", FALSE, FALSE, TRUE },
    { "rgb-8-wide-profile", FALSE, FALSE, FALSE },
    { "rgb-8-cut-profile", FALSE, TRUE, FALSE },
    { "rgb-8-grey-profile", FALSE, TRUE, FALSE },
    { "grey-8-grey-profile", FALSE, FALSE, FALSE },
    { "palette-4-trns", TRUE, FALSE, TRUE },
  };
  const gint64 whole[4] = { 0, 0, 29, 19 };

  for (guint i = 0; i < G_N_ELEMENTS (pictures); i++)
    {
      g_autoptr (GBytes) bytes = picture_load (pictures[i].name);
      g_autoptr (BbScanColourOut) out = measure_well (bytes, whole);

      g_test_message ("%s", pictures[i].name);
      g_assert_true (has_warning (out, BB_SCAN_NO_PROFILE) == pictures[i].no_profile);
      g_assert_true (has_warning (out, BB_SCAN_BAD_PROFILE) == pictures[i].bad_profile);
      g_assert_true (has_warning (out, BB_SCAN_TRANSPARENT) == pictures[i].transparent);
    }
}

/* 251 of the picture's pixels are wholly opaque, by ImageMagick: tests/reference/artwork-imagemagick.csv. */
static void
test_transparent_pixels (void)
{
  g_autoptr (GBytes) bytes = picture_load ("rgba-8");
  g_autoptr (GBytes) without = picture_load ("rgb-8");
  const gint64 whole[4] = { 0, 0, 29, 19 };
  const gint64 opaque[4] = { 10, 6, 8, 6 };
  const gint64 corner[4] = { 0, 0, 3, 2 };
  g_autoptr (BbScanColourOut) all = measure_well (bytes, whole);
  g_autoptr (BbScanColourOut) inside = measure_well (bytes, opaque);
  g_autoptr (BbScanColourOut) same = measure_well (without, opaque);
  g_autoptr (BbScanColourOut) none = bb_scan_colour_out_new ();
  g_autoptr (GError) error = NULL;

  g_assert_cmpint (all->pixels, ==, 251);
  g_assert_cmpint (inside->pixels, ==, 48);
  g_assert_false (has_warning (inside, BB_SCAN_TRANSPARENT));
  g_assert_cmpfloat (inside->l, ==, same->l);
  g_assert_cmpfloat (inside->a_sd, ==, same->a_sd);
  g_assert_false (measure (bytes, corner, none, &error));
  g_assert_error (error, BB_MODEL_ERROR, BB_MODEL_ERROR_UNDETERMINED);
}

static void
test_rectangles_beyond (void)
{
  static const struct {
    gint64 rectangle[4];
    const char *message;
  } cases[] = {
    { { 29, 0, 1, 1 }, "x_px: 29 is above the maximum 28, where the picture ends" },
    { { 199999, 0, 1, 1 }, "x_px: 199999 is above the maximum 28, where the picture ends" },
    { { 20, 0, 10, 1 }, "width_px: 10 is above the maximum 9, with which the picture ends" },
    { { 0, 19, 1, 1 }, "y_px: 19 is above the maximum 18, where the picture ends" },
    { { 0, 18, 29, 1000000000 }, "height_px: 1000000000 is above the maximum 1, with which the picture ends" },
  };
  g_autoptr (GBytes) bytes = picture_load ("rgb-8");

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (BbScanColourOut) out = bb_scan_colour_out_new ();
      g_autoptr (GError) error = NULL;

      g_assert_false (measure (bytes, cases[i].rectangle, out, &error));
      g_assert_error (error, BB_MODEL_ERROR, BB_MODEL_ERROR_VALUE);
      g_assert_cmpstr (error->message, ==, cases[i].message);
    }
}

/* More pixels than are converted at a time, and one of them far from the others. */
static void
test_small_spread (void)
{
  const gsize n = 5000;
  g_autofree guint8 *row = g_malloc (n);
  Drawing drawing = { .width = (guint32) n, .height = 1, .colour_type = PNG_COLOR_TYPE_GRAY, .bit_depth = 8,
                      .rows = row, .row_bytes = n };
  const gint64 all[4] = { 0, 0, (gint64) n, 1 };
  const gint64 rest[4] = { 1, 0, (gint64) n - 1, 1 };
  g_autoptr (GBytes) bytes = NULL;
  g_autoptr (BbScanColourOut) with = NULL;
  g_autoptr (BbScanColourOut) without = NULL;

  memset (row, 128, n);
  row[0] = 255;
  bytes = drawing_write (&drawing);
  with = measure_well (bytes, all);
  without = measure_well (bytes, rest);
  /* L* of grey 128 is 53.5850, of white 100: tests/reference/srgb-lab.csv; the rest by hand. */
  g_assert_cmpfloat_with_epsilon (without->l, 53.5850, 1e-4);
  g_assert_cmpfloat (without->l_sd, ==, 0);
  g_assert_cmpfloat_with_epsilon (with->l, 53.5850 + 46.4150 / 5000, 1e-4);
  g_assert_cmpfloat_with_epsilon (with->l_sd, 46.4150 / sqrt (5000), 1e-4);
}

/* A profile may hold anything: it is used or passed over, and colours stay finite. */
static void
test_changed_profiles (void)
{
  static const char * const names[] = { "rgb-8-wide-profile", "rgb-8-table-profile", "grey-8-grey-profile" };
  g_autoptr (GRand) rand = g_rand_new_with_seed (SEED);
  guint n_used = 0;
  guint n_passed = 0;

  for (guint i = 0; i < 3000; i++)
    {
      g_autofree char *path = picture_path (names[i % 3]);
      g_autoptr (BbPng) png = bb_png_new_for_file (path, BB_PNG_FORM_DEEP, NULL);
      BbPngInfo info = *bb_png_get_info (png);
      g_autofree guint8 *profile = g_memdup2 (info.profile, info.profile_length);
      g_autoptr (BbColour) colour = NULL;
      const double rgb[3] = { 0.25, 0.25, 0.25 };
      double lab[3] = { 0 };

      for (gint32 k = g_rand_int_range (rand, 1, 4); k > 0; k--)
        profile[g_rand_int_range (rand, 0, (gint32) info.profile_length)] = (guint8) g_rand_int_range (rand, 0, 256);
      if (i % 10 == 0)
        info.profile_length = (gsize) g_rand_int_range (rand, 0, (gint32) info.profile_length);
      info.profile = profile;
      colour = bb_colour_new (&info, BB_COLOUR_LAB);
      bb_colour_convert (colour, rgb, lab, 1);
      g_assert_true (isfinite (lab[0]) && isfinite (lab[1]) && isfinite (lab[2]));
      if (bb_colour_get_source (colour) == BB_COLOUR_BY_PROFILE)
        n_used++;
      else
        n_passed++;
    }
  g_assert_cmpuint (n_used, >, 100);
  g_assert_cmpuint (n_passed, >, 100);
}

static void
test_srgb_stays (void)
{
  BbPngInfo info = { .colour_type = 2, .has_srgb = TRUE };
  g_autoptr (BbColour) colour = bb_colour_new (&info, BB_COLOUR_SRGB);

  g_assert_cmpint (bb_colour_get_source (colour), ==, BB_COLOUR_BY_SRGB);
  for (int i = 0; i < 256; i++)
    {
      const double rgb[3] = { i / 255.0, (255 - i) / 255.0, 0.5 };
      double out[3] = { 0 };

      bb_colour_convert (colour, rgb, out, 1);
      for (guint c = 0; c < 3; c++)
        g_assert_cmpfloat_with_epsilon (out[c], rgb[c], 1e-4);
    }
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/scan-colour/transicc", test_transicc);
  g_test_add_func ("/scan-colour/published-srgb", test_published_srgb);
  g_test_add_func ("/scan-colour/warnings", test_warnings);
  g_test_add_func ("/scan-colour/transparent-pixels", test_transparent_pixels);
  g_test_add_func ("/scan-colour/rectangles-beyond", test_rectangles_beyond);
  g_test_add_func ("/scan-colour/small-spread", test_small_spread);
  g_test_add_func ("/scan-colour/changed-profiles", test_changed_profiles);
  g_test_add_func ("/scan-colour/srgb-stays", test_srgb_stays);

  return g_test_run ();
}
