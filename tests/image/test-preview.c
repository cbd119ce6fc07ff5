/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-test"

#include <math.h>
#include <string.h>

#include "bb-preview.h"
#include "pictures.h"

#define SEED 20251107

static BbPreview *
shrink (GBytes *bytes,
        guint   longest_side)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (BbPng) png = bb_png_new_for_bytes (bytes, "a picture", BB_PNG_FORM_RGBA, &error);
  BbPreview *preview = NULL;

  g_assert_no_error (error);
  preview = bb_preview_read (png, longest_side, NULL, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (g_bytes_get_size (preview->pixels), ==, 4 * preview->width * preview->height);

  return preview;
}

static const guint8 *
pixel_of (const BbPreview *preview,
          guint            x,
          guint            y)
{
  const guint8 *pixels = g_bytes_get_data (preview->pixels, NULL);

  return pixels + 4 * (y * preview->width + x);
}

static void
assert_pixel (const BbPreview *preview,
              guint            x,
              guint            y,
              const guint8     expected[4],
              int              tolerance)
{
  const guint8 *is = pixel_of (preview, x, y);

  for (guint c = 0; c < 4; c++)
    if (ABS ((int) is[c] - (int) expected[c]) > tolerance)
      g_error ("pixel %u, %u is %u %u %u %u, not %u %u %u %u", x, y, is[0], is[1], is[2], is[3], expected[0],
               expected[1], expected[2], expected[3]);
}

/* As large as the picture, or larger: each pixel stays what it is, but for the colour of what can't be seen. */
static void
test_not_smaller (void)
{
  static const guint sides[] = { 29, 30, 2048 };
  static const guint8 nothing[4] = { 0 };
  g_autoptr (GBytes) bytes = picture_load ("rgba-8");
  g_autoptr (Plane) plane = plane_load ("rgba-8", BB_PNG_FORM_RGBA);

  for (guint i = 0; i < G_N_ELEMENTS (sides); i++)
    {
      g_autoptr (BbPreview) preview = shrink (bytes, sides[i]);

      g_assert_cmpuint (preview->width, ==, 29);
      g_assert_cmpuint (preview->height, ==, 19);
      g_assert_cmpuint (preview->full_width, ==, 29);
      for (guint y = 0; y < 19; y++)
        for (guint x = 0; x < 29; x++)
          {
            const guint8 *pixel = plane->pixels + 4 * (y * 29 + x);

            assert_pixel (preview, x, y, pixel[3] == 0 ? nothing : pixel, 0);
          }
    }
}

static void
test_interlaced (void)
{
  static const char * const names[] = { "rgba-8", "palette-4-trns", "grey-16", "rgb-16" };

  for (guint i = 0; i < G_N_ELEMENTS (names); i++)
    for (guint side = 1; side < 29; side += 3)
      {
        g_autofree char *interlaced = g_strconcat (names[i], "-adam7", NULL);
        g_autoptr (GBytes) plain = picture_load (names[i]);
        g_autoptr (GBytes) passes = picture_load (interlaced);
        g_autoptr (BbPreview) a = shrink (plain, side);
        g_autoptr (BbPreview) b = shrink (passes, side);

        for (guint y = 0; y < a->height; y++)
          for (guint x = 0; x < a->width; x++)
            assert_pixel (b, x, y, pixel_of (a, x, y), 1);
      }
}

/* IEC 61966-2-1 by hand: half the light of white is 187.5 of 255; half the pixels are half the cover. */
static void
test_light_is_averaged (void)
{
  static const guint8 rows[] = {
    0, 0, 0, 255,     255, 255, 255, 255, 9, 200, 9, 255, 77, 77, 77, 0,
    255, 255, 255, 255, 0, 0, 0, 255,     9, 200, 9, 255, 5, 5, 5, 0,
  };
  static const guint8 grey[4] = { 188, 188, 188, 255 };
  static const guint8 green[4] = { 9, 200, 9, 128 };
  Drawing drawing = { .width = 4, .height = 2, .colour_type = PNG_COLOR_TYPE_RGBA, .bit_depth = 8, .rows = rows,
                      .row_bytes = 16 };
  g_autoptr (GBytes) bytes = drawing_write (&drawing);
  g_autoptr (BbPreview) preview = shrink (bytes, 2);

  g_assert_cmpuint (preview->width, ==, 2);
  g_assert_cmpuint (preview->height, ==, 1);
  g_assert_cmpuint (preview->full_height, ==, 2);
  assert_pixel (preview, 0, 0, grey, 0);
  assert_pixel (preview, 1, 0, green, 0);
}

static double
to_light (guint8 value)
{
  double v = value / 255.0;

  return v <= 0.04045 ? v / 12.92 : pow ((v + 0.055) / 1.055, 2.4);
}

static guint8
from_light (double light)
{
  return (guint8) floor (255 * (light <= 0.0031308 ? light * 12.92 : 1.055 * pow (light, 1 / 2.4) - 0.055) + 0.5);
}

/* What one pixel of the preview should be: the mean of the picture's pixels that fall into it. */
static void
average (const guint8    *pixels,
         const BbPreview *preview,
         guint            px,
         guint            py,
         guint8           out[4])
{
  double light[3] = { 0 };
  double alpha = 0;
  guint n = 0;

  for (guint y = 0; y < preview->full_height; y++)
    for (guint x = 0; x < preview->full_width; x++)
      if (x * preview->width / preview->full_width == px && y * preview->height / preview->full_height == py)
        {
          const guint8 *pixel = pixels + 4 * (y * preview->full_width + x);

          n++;
          alpha += pixel[3];
          for (guint c = 0; c < 3; c++)
            light[c] += pixel[3] * to_light (pixel[c]);
        }
  g_assert_cmpuint (n, >, 0);
  for (guint c = 0; c < 3; c++)
    out[c] = alpha > 0 ? from_light (light[c] / alpha) : 0;
  out[3] = (guint8) floor (alpha / n + 0.5);
}

static void
test_random (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (SEED);

  for (guint i = 0; i < 60; i++)
    {
      guint32 width = (guint32) g_rand_int_range (rand, 1, 60);
      guint32 height = (guint32) g_rand_int_range (rand, 1, 60);
      g_autofree guint8 *rows = g_malloc (4 * (gsize) width * height);
      Drawing drawing = { .width = width, .height = height, .colour_type = PNG_COLOR_TYPE_RGBA, .bit_depth = 8,
                          .interlaced = g_rand_boolean (rand), .rows = rows, .row_bytes = 4 * (gsize) width };
      g_autoptr (GBytes) bytes = NULL;
      g_autoptr (BbPreview) preview = NULL;

      for (gsize k = 0; k < 4 * (gsize) width * height; k++)
        rows[k] = (guint8) g_rand_int_range (rand, 0, 256);
      bytes = drawing_write (&drawing);
      preview = shrink (bytes, (guint) g_rand_int_range (rand, 1, 40));
      for (guint y = 0; y < preview->height; y++)
        for (guint x = 0; x < preview->width; x++)
          {
            guint8 expected[4];

            average (rows, preview, x, y, expected);
            assert_pixel (preview, x, y, expected, 1);
          }
    }
}

/* transicc 5.1 of Little CMS 2.14, -t1 -c0, from the picture's own profile to its sRGB, clipped and rounded. */
static void
test_profile (void)
{
  static const guint8 row[] = { 128, 128, 128, 200, 100, 50, 40, 160, 90, 0, 255, 0 };
  static const guint8 expected[4][4] = {
    { 142, 142, 142, 255 }, { 228, 113, 59, 255 }, { 0, 173, 101, 255 }, { 0, 255, 0, 255 },
  };
  g_autoptr (GBytes) picture = picture_load ("rgb-8-wide-profile");
  g_autoptr (BbPng) png = bb_png_new_for_bytes (picture, "wide", BB_PNG_FORM_RGBA, NULL);
  const BbPngInfo *info = bb_png_get_info (png);
  Drawing drawing = { .width = 4, .height = 1, .colour_type = PNG_COLOR_TYPE_RGB, .bit_depth = 8, .rows = row,
                      .row_bytes = 12, .profile = info->profile, .profile_length = info->profile_length };
  g_autoptr (GBytes) bytes = drawing_write (&drawing);
  g_autoptr (BbPreview) preview = shrink (bytes, 4);

  for (guint x = 0; x < 4; x++)
    assert_pixel (preview, x, 0, expected[x], 1);
}

static void
test_extreme_shapes (void)
{
  g_autofree guint8 *rows = g_malloc0 (BB_PNG_MAX_WIDTH);
  Drawing wide = { .width = BB_PNG_MAX_WIDTH, .height = 1, .colour_type = PNG_COLOR_TYPE_GRAY, .bit_depth = 8,
                   .rows = rows, .row_bytes = BB_PNG_MAX_WIDTH };
  Drawing tall = { .width = 1, .height = BB_PNG_MAX_WIDTH, .colour_type = PNG_COLOR_TYPE_GRAY, .bit_depth = 8,
                   .rows = rows, .row_bytes = 1 };
  static const guint8 white[4] = { 255, 255, 255, 255 };
  g_autoptr (GBytes) wide_bytes = NULL;
  g_autoptr (GBytes) tall_bytes = NULL;
  g_autoptr (BbPreview) wide_preview = NULL;
  g_autoptr (BbPreview) tall_preview = NULL;

  memset (rows, 255, BB_PNG_MAX_WIDTH);
  wide_bytes = drawing_write (&wide);
  tall_bytes = drawing_write (&tall);
  wide_preview = shrink (wide_bytes, BB_PREVIEW_LONGEST);
  tall_preview = shrink (tall_bytes, 1);
  g_assert_cmpuint (wide_preview->width, ==, BB_PREVIEW_LONGEST);
  g_assert_cmpuint (wide_preview->height, ==, 1);
  g_assert_cmpuint (tall_preview->width, ==, 1);
  g_assert_cmpuint (tall_preview->height, ==, 1);
  assert_pixel (wide_preview, BB_PREVIEW_LONGEST - 1, 0, white, 0);
  assert_pixel (tall_preview, 0, 0, white, 0);
}

/* Off the main loop */

typedef struct {
  BbPreview *preview;
  GError *error;
  gboolean done;
} Answer;

static void
loaded_cb (G_GNUC_UNUSED GObject *source,
           GAsyncResult          *result,
           gpointer               data)
{
  Answer *self = data;

  self->preview = bb_preview_load_finish (result, &self->error);
  self->done = TRUE;
}

static void
wait_for (Answer *self)
{
  gint64 deadline = g_get_monotonic_time () + 30 * G_TIME_SPAN_SECOND;

  while (!self->done && g_get_monotonic_time () < deadline)
    g_main_context_iteration (NULL, TRUE);
  g_assert_true (self->done);
  g_assert_true ((self->preview != NULL) != (self->error != NULL));
}

static void
clear_answer (Answer *self)
{
  g_clear_pointer (&self->preview, bb_preview_free);
  g_clear_error (&self->error);
}

static void
test_async (void)
{
  g_autofree char *path = picture_path ("rgba-8");
  g_autofree char *missing = picture_path ("none");
  g_autoptr (GBytes) bytes = picture_load ("rgb-8");
  Answer by_path = { 0 };
  Answer by_bytes = { 0 };
  Answer none = { 0 };

  bb_preview_load_async (path, 10, NULL, loaded_cb, &by_path);
  bb_preview_load_bytes_async (bytes, "from the book", 20, NULL, loaded_cb, &by_bytes);
  bb_preview_load_async (missing, 10, NULL, loaded_cb, &none);
  wait_for (&by_path);
  wait_for (&by_bytes);
  wait_for (&none);
  g_assert_no_error (by_path.error);
  g_assert_cmpuint (by_path.preview->width, ==, 10);
  g_assert_no_error (by_bytes.error);
  g_assert_cmpuint (by_bytes.preview->width, ==, 20);
  g_assert_error (none.error, BB_IMAGE_ERROR, BB_IMAGE_ERROR_READ);
  clear_answer (&by_path);
  clear_answer (&by_bytes);
  clear_answer (&none);
}

static void
test_async_cancelled (void)
{
  g_autofree char *path = picture_path ("rgba-8");
  g_autoptr (GCancellable) cancellable = g_cancellable_new ();
  Answer answer = { 0 };

  bb_preview_load_async (path, 10, cancellable, loaded_cb, &answer);
  g_cancellable_cancel (cancellable);
  wait_for (&answer);
  g_assert_error (answer.error, G_IO_ERROR, G_IO_ERROR_CANCELLED);
  clear_answer (&answer);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/preview/not-smaller", test_not_smaller);
  g_test_add_func ("/preview/interlaced", test_interlaced);
  g_test_add_func ("/preview/light-is-averaged", test_light_is_averaged);
  g_test_add_func ("/preview/random", test_random);
  g_test_add_func ("/preview/profile", test_profile);
  g_test_add_func ("/preview/extreme-shapes", test_extreme_shapes);
  g_test_add_func ("/preview/async", test_async);
  g_test_add_func ("/preview/async-cancelled", test_async_cancelled);

  return g_test_run ();
}
