/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-test"

#include <string.h>

#include "pictures.h"

/* The reader alone: what it hands out, in which order, and that every form of a picture holds the same pixels. */

#define SEED 20251103

static BbPng *
open_picture (const char *name,
              BbPngForm   form)
{
  g_autofree char *path = picture_path (name);
  g_autoptr (GError) error = NULL;
  BbPng *png = bb_png_new_for_file (path, form, &error);

  g_assert_no_error (error);
  g_assert_cmpstr (bb_png_get_name (png), ==, path);

  return png;
}

static void
assert_planes_equal (const char  *name,
                     const Plane *a,
                     const Plane *b)
{
  g_assert_cmpuint (a->width, ==, b->width);
  g_assert_cmpuint (a->height, ==, b->height);
  if (memcmp (a->pixels, b->pixels, (gsize) a->width * a->height * 4) != 0)
    {
      g_test_message ("%s: the pixels differ", name);
      g_test_fail ();
    }
}

static void
test_forms_agree (void)
{
  g_auto (GStrv) names = picture_list ();

  g_assert_cmpuint (g_strv_length (names), >, 50);
  for (guint i = 0; names[i] != NULL; i++)
    {
      g_autoptr (Plane) whole = plane_load (names[i], BB_PNG_FORM_RGBA);
      g_autoptr (Plane) countable = plane_load (names[i], BB_PNG_FORM_COUNTABLE);
      g_autoptr (Plane) deep = plane_load (names[i], BB_PNG_FORM_DEEP);

      assert_planes_equal (names[i], whole, countable);
      assert_planes_equal (names[i], whole, deep);
    }
}

static void
test_passes_make_the_same_picture (void)
{
  g_auto (GStrv) names = picture_list ();
  guint n_pairs = 0;

  for (guint i = 0; names[i] != NULL; i++)
    {
      g_autofree char *interlaced = g_strconcat (names[i], "-adam7", NULL);

      if (g_strv_contains ((const char * const *) names, interlaced))
        {
          g_autoptr (Plane) plain = plane_load (names[i], BB_PNG_FORM_RGBA);
          g_autoptr (Plane) passes = plane_load (interlaced, BB_PNG_FORM_RGBA);

          assert_planes_equal (interlaced, plain, passes);
          n_pairs++;
        }
    }
  g_assert_cmpuint (n_pairs, ==, 26);
}

/* The simplified interface of libpng decodes in another way, and leaves 8-bit sRGB pictures as they are. */
static void
test_same_as_the_whole_picture (void)
{
  static const char * const names[] = { "rgba-8", "rgba-8-adam7", "rgb-8-trns", "rgb-8-trns-adam7", "palette-1-trns",
                                        "palette-2", "palette-4-trns-adam7", "palette-8-trns", "rgba-8-300ppi" };

  for (guint i = 0; i < G_N_ELEMENTS (names); i++)
    {
      g_autofree char *path = picture_path (names[i]);
      g_autoptr (Plane) plane = plane_load (names[i], BB_PNG_FORM_RGBA);
      gsize length = (gsize) plane->width * plane->height * 4;
      png_image image = { .version = PNG_IMAGE_VERSION };
      g_autofree guint8 *pixels = g_malloc (length);

      g_assert_true (png_image_begin_read_from_file (&image, path) != 0);
      image.format = PNG_FORMAT_RGBA;
      g_assert_cmpuint (image.width, ==, plane->width);
      g_assert_cmpuint (image.height, ==, plane->height);
      g_assert_true (png_image_finish_read (&image, NULL, pixels, 0, NULL) != 0);
      g_assert_true (memcmp (plane->pixels, pixels, length) == 0);
    }
}

static void
test_info (void)
{
  g_autoptr (BbPng) art = open_picture ("rgba-8-300ppi", BB_PNG_FORM_RGBA);
  const BbPngInfo *info = bb_png_get_info (art);

  g_assert_cmpuint (info->width, ==, 29);
  g_assert_cmpuint (info->height, ==, 19);
  g_assert_cmpuint (info->bit_depth, ==, 8);
  g_assert_cmpuint (info->colour_type, ==, 6);
  g_assert_false (info->interlaced);
  g_assert_true (info->has_alpha);
  g_assert_cmpuint (info->pixels_per_metre_x, ==, 11811);
  g_assert_cmpuint (info->pixels_per_metre_y, ==, 11811);
  g_assert_cmpfloat_with_epsilon (info->gamma, 0.45455, 1e-9);
  g_assert_true (info->has_srgb);
  g_assert_null (info->profile);
  g_assert_false (info->profile_bad);
  g_assert_cmpuint (info->channels, ==, 4);
  g_assert_cmpuint (info->sample_bits, ==, 8);
  g_assert_null (info->table);
}

static void
test_info_of_little (void)
{
  g_autoptr (BbPng) aspect = open_picture ("rgba-8-aspect", BB_PNG_FORM_RGBA);
  g_autoptr (BbPng) palette = open_picture ("palette-2-trns-adam7", BB_PNG_FORM_COUNTABLE);
  const BbPngInfo *info = bb_png_get_info (palette);

  g_assert_cmpuint (bb_png_get_info (aspect)->pixels_per_metre_x, ==, 0);
  g_assert_true (info->interlaced);
  g_assert_true (info->has_alpha);
  g_assert_cmpuint (info->pixels_per_metre_x, ==, 0);
  g_assert_cmpfloat (info->gamma, ==, 0);
  g_assert_false (info->has_srgb);
  g_assert_cmpuint (info->channels, ==, 1);
  g_assert_cmpuint (info->sample_bits, ==, 2);
  g_assert_nonnull (info->table);
  g_assert_cmpuint (info->table[1][3], ==, 100);
}

static void
test_profiles (void)
{
  g_autoptr (BbPng) good = open_picture ("rgb-8-wide-profile", BB_PNG_FORM_DEEP);
  g_autoptr (BbPng) unread = open_picture ("rgb-8-wide-profile", BB_PNG_FORM_COUNTABLE);
  g_autoptr (BbPng) cut = open_picture ("rgb-8-cut-profile", BB_PNG_FORM_DEEP);
  g_autoptr (BbPng) grey = open_picture ("rgb-8-grey-profile", BB_PNG_FORM_RGBA);

  g_assert_true (memcmp (bb_png_get_info (good)->profile + 36, "acsp", 4) == 0);
  g_assert_cmpuint (bb_png_get_info (good)->profile_length, >, 400);
  g_assert_false (bb_png_get_info (good)->profile_bad);
  g_assert_null (bb_png_get_info (unread)->profile);
  g_assert_false (bb_png_get_info (unread)->profile_bad);
  g_assert_null (bb_png_get_info (cut)->profile);
  g_assert_true (bb_png_get_info (cut)->profile_bad);
  g_assert_null (bb_png_get_info (grey)->profile);
  g_assert_true (bb_png_get_info (grey)->profile_bad);
}

/* Pictures of one, two, … pixels a side, where some of the seven passes are empty. */
static void
test_empty_passes (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (SEED);
  guint8 samples[10 * 10 * 4];

  for (gsize i = 0; i < sizeof samples; i++)
    samples[i] = (guint8) g_rand_int_range (rand, 0, 256);
  for (guint32 width = 1; width <= 10; width++)
    for (guint32 height = 1; height <= 10; height++)
      {
        Drawing drawing = { .width = width, .height = height, .colour_type = PNG_COLOR_TYPE_RGBA, .bit_depth = 8,
                            .interlaced = TRUE, .rows = samples, .row_bytes = 4 * width };
        g_autoptr (GBytes) bytes = drawing_write (&drawing);
        g_autoptr (GError) error = NULL;
        g_autoptr (BbPng) png = bb_png_new_for_bytes (bytes, "small", BB_PNG_FORM_COUNTABLE, &error);
        g_autoptr (Plane) plane = plane_read (png, &error);

        g_assert_no_error (error);
        g_assert_true (memcmp (plane->pixels, samples, (gsize) 4 * width * height) == 0);
      }
}

/* How the work is watched */

#define TALL 5000

static GBytes *
write_tall (gboolean interlaced)
{
  g_autofree guint8 *rows = g_malloc0 (TALL * 300);
  Drawing drawing = { .width = 300, .height = TALL, .colour_type = PNG_COLOR_TYPE_GRAY, .bit_depth = 8,
                      .interlaced = interlaced, .rows = rows, .row_bytes = 300 };

  return drawing_write (&drawing);
}

typedef struct {
  GCancellable *cancellable;
  double cancel_at;
  double last;
  guint n_calls;
  guint n_rows;
  guint n_rows_at_cancel;
} Watch;

static void
count_row (G_GNUC_UNUSED const BbPngRow *row,
           gpointer                      data)
{
  Watch *self = data;

  self->n_rows++;
}

static void
note_progress (double   fraction,
               gpointer data)
{
  Watch *self = data;

  g_assert_cmpfloat (fraction, >=, self->last);
  g_assert_cmpfloat (fraction, <=, 1.0);
  self->last = fraction;
  self->n_calls++;
  if (fraction >= self->cancel_at && !g_cancellable_is_cancelled (self->cancellable))
    {
      self->n_rows_at_cancel = self->n_rows;
      g_cancellable_cancel (self->cancellable);
    }
}

static void
test_progress (gconstpointer data)
{
  g_autoptr (GBytes) bytes = write_tall (GPOINTER_TO_INT (data));
  g_autoptr (GError) error = NULL;
  g_autoptr (BbPng) png = bb_png_new_for_bytes (bytes, "tall", BB_PNG_FORM_COUNTABLE, &error);
  Watch watch = { .cancel_at = 2 };
  BbImageWork work = { .progress = note_progress, .data = &watch };

  g_assert_no_error (error);
  g_assert_true (bb_png_read (png, count_row, &watch, &work, &error));
  g_assert_no_error (error);
  g_assert_cmpfloat (watch.last, ==, 1);
  g_assert_cmpuint (watch.n_calls, >=, TALL / bb_png_get_block (png));
}

static void
test_cancel (gconstpointer data)
{
  g_autoptr (GBytes) bytes = write_tall (GPOINTER_TO_INT (data));
  g_autoptr (GError) error = NULL;
  g_autoptr (GCancellable) cancellable = g_cancellable_new ();
  g_autoptr (BbPng) png = bb_png_new_for_bytes (bytes, "tall", BB_PNG_FORM_COUNTABLE, &error);
  Watch watch = { .cancellable = cancellable, .cancel_at = 0.5 };
  BbImageWork work = { .cancellable = cancellable, .progress = note_progress, .data = &watch };

  g_assert_no_error (error);
  g_assert_false (bb_png_read (png, count_row, &watch, &work, &error));
  g_assert_error (error, G_IO_ERROR, G_IO_ERROR_CANCELLED);
  g_assert_cmpuint (watch.n_rows_at_cancel, >, 0);
  g_assert_cmpuint (watch.n_rows - watch.n_rows_at_cancel, <=, bb_png_get_block (png));
}

static void
test_cancelled_before (void)
{
  g_autoptr (GCancellable) cancellable = g_cancellable_new ();
  g_autoptr (BbPng) png = open_picture ("rgba-8", BB_PNG_FORM_COUNTABLE);
  Watch watch = { .cancel_at = 2 };
  BbImageWork work = { .cancellable = cancellable };
  g_autoptr (GError) error = NULL;

  g_cancellable_cancel (cancellable);
  g_assert_false (bb_png_read (png, count_row, &watch, &work, &error));
  g_assert_error (error, G_IO_ERROR, G_IO_ERROR_CANCELLED);
  g_assert_cmpuint (watch.n_rows, ==, 0);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/png/forms-agree", test_forms_agree);
  g_test_add_func ("/png/passes-make-the-same-picture", test_passes_make_the_same_picture);
  g_test_add_func ("/png/same-as-the-whole-picture", test_same_as_the_whole_picture);
  g_test_add_func ("/png/info", test_info);
  g_test_add_func ("/png/info-of-little", test_info_of_little);
  g_test_add_func ("/png/profiles", test_profiles);
  g_test_add_func ("/png/empty-passes", test_empty_passes);
  g_test_add_data_func ("/png/progress", GINT_TO_POINTER (FALSE), test_progress);
  g_test_add_data_func ("/png/progress-interlaced", GINT_TO_POINTER (TRUE), test_progress);
  g_test_add_data_func ("/png/cancel", GINT_TO_POINTER (FALSE), test_cancel);
  g_test_add_data_func ("/png/cancel-interlaced", GINT_TO_POINTER (TRUE), test_cancel);
  g_test_add_func ("/png/cancelled-before", test_cancelled_before);

  return g_test_run ();
}
