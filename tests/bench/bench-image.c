/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-test"

/* For clock_gettime(). */
#define _POSIX_C_SOURCE 200809L

#include <glib/gstdio.h>
#include <stdio.h>
#include <stdlib.h>
#include <time.h>

#include "bb-counts.h"
#include "bb-preview.h"
#include "bb-scan-colour.h"
#include "peak.h"
#include "scene.h"

/*
 * How long counting takes beside what can't be avoided: libpng decoding the same file, row by row, expanded to RGBA of
 * 8 bits; of an interlaced file, the whole picture at once, as libpng gives it. The two take turns in one run; times
 * are of the processor, so that other work on the machine counts little; medians. And how much memory it needs, where
 * BB_CLI names the built program. `bench-image [ROUNDS]`
 */

#define WIDTH 5000
#define HEIGHT 4000
#define ROUNDS 9
#define PREVIEW 900
#define PATCH 600

static double
now_ms (void)
{
  struct timespec time;

  clock_gettime (CLOCK_THREAD_CPUTIME_ID, &time);

  return (double) time.tv_sec * 1e3 + (double) time.tv_nsec / 1e6;
}

static void
decode_rows (png_structp png,
             png_infop   info)
{
  g_autofree guint8 *row = g_malloc (png_get_rowbytes (png, info));
  guint32 height = png_get_image_height (png, info);

  for (guint32 y = 0; y < height; y++)
    png_read_row (png, row, NULL);
}

static void
decode_whole (png_structp png,
              png_infop   info)
{
  gsize stride = png_get_rowbytes (png, info);
  guint32 height = png_get_image_height (png, info);
  g_autofree guint8 *pixels = g_malloc (height * stride);
  g_autofree png_bytep *rows = g_new (png_bytep, height);

  for (guint32 y = 0; y < height; y++)
    rows[y] = pixels + y * stride;
  png_read_image (png, rows);
}

static void
decode_bare (const char *path)
{
  FILE *file = fopen (path, "rb");
  png_structp png = png_create_read_struct (PNG_LIBPNG_VER_STRING, NULL, NULL, NULL);
  png_infop info = png_create_info_struct (png);

  png_init_io (png, file);
  png_read_info (png, info);
  png_set_expand (png);
  png_set_scale_16 (png);
  png_set_gray_to_rgb (png);
  png_set_add_alpha (png, 255, PNG_FILLER_AFTER);
  if (png_get_interlace_type (png, info) != PNG_INTERLACE_NONE)
    png_set_interlace_handling (png);
  png_read_update_info (png, info);
  if (png_get_interlace_type (png, info) != PNG_INTERLACE_NONE)
    decode_whole (png, info);
  else
    decode_rows (png, info);
  png_read_end (png, NULL);
  png_destroy_read_struct (&png, &info, NULL);
  fclose (file);
}

static void
count (const char *path,
       BbCounts   *counts)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (BbPng) png = bb_png_new_for_file (path, BB_PNG_FORM_COUNTABLE, &error);

  if (png == NULL || !bb_counts_read (counts, png, 24, 245, NULL, &error))
    g_error ("%s", error->message);
}

static void
shrink (const char *path)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (BbPng) png = bb_png_new_for_file (path, BB_PNG_FORM_RGBA, &error);
  g_autoptr (BbPreview) preview = png != NULL ? bb_preview_read (png, PREVIEW, NULL, &error) : NULL;

  if (preview == NULL)
    g_error ("%s", error->message);
}

static void
measure (const char *path)
{
  const BbScanColourIn in = { .x_px = WIDTH / 2, .y_px = HEIGHT / 2, .width_px = PATCH, .height_px = PATCH };
  g_autoptr (BbScanColourOut) out = bb_scan_colour_out_new ();
  g_autoptr (GError) error = NULL;
  g_autoptr (BbPng) png = bb_png_new_for_file (path, BB_PNG_FORM_DEEP, &error);

  if (png == NULL || !bb_scan_colour_measure (&in, png, out, NULL, &error))
    g_error ("%s", error->message);
}

static int
compare_numbers (gconstpointer a,
                 gconstpointer b)
{
  double first = *(const double *) a;
  double second = *(const double *) b;

  return (first > second) - (first < second);
}

static double
median (GArray *values)
{
  g_array_sort (values, compare_numbers);

  return g_array_index (values, double, values->len / 2);
}

static void
add (GArray *values,
     double  value)
{
  g_array_append_val (values, value);
}

static void
bench_counts (const char *what,
              const char *path,
              guint       n_rounds,
              double      target)
{
  g_autoptr (GArray) bare = g_array_new (FALSE, FALSE, sizeof (double));
  g_autoptr (GArray) ours = g_array_new (FALSE, FALSE, sizeof (double));
  g_autoptr (GArray) ratios = g_array_new (FALSE, FALSE, sizeof (double));
  BbCounts counts;
  GStatBuf info;

  g_assert_cmpint (g_stat (path, &info), ==, 0);
  for (guint i = 0; i < n_rounds; i++)
    {
      double start = now_ms ();
      double middle = 0;
      double end = 0;

      decode_bare (path);
      middle = now_ms ();
      count (path, &counts);
      end = now_ms ();
      add (bare, middle - start);
      add (ours, end - middle);
      add (ratios, (end - middle) / (middle - start));
    }
  printf ("%-28s %5.1f MB  bare %7.1f ms  counts %7.1f ms  ratio %.3f", what, (double) info.st_size / 1e6,
          median (bare), median (ours), median (ratios));
  printf (target > 0 ? "  (at most %.2f)" : "  (no target)", target);
  printf ("  empty %.0f %%\n", 100.0 * (double) counts.n_empty / (double) counts.n_pixels);
}

/* Once each, without a target: they run off the main loop, and are cancelled within a block of rows. */
static void
bench_rest (const char *path)
{
  double start = now_ms ();
  double middle = 0;
  double end = 0;

  shrink (path);
  middle = now_ms ();
  measure (path);
  end = now_ms ();
  printf ("%-28s preview of %u pixels %.1f ms, colour of %u × %u pixels %.1f ms\n", "the same", PREVIEW,
          middle - start, PATCH, PATCH, end - middle);
}

/* The program itself, on one file: how much memory it needs above what it needs to say its version. */
static void
bench_memory (const char *what,
              const char *path)
{
  const char *program = g_getenv ("BB_CLI");
  g_autofree char *input = g_strconcat (path, ".json", NULL);
  g_autofree char *json = g_strdup_printf ("{\"file\":\"%s\",\"print_width_mm\":300,\"mode\":\"underbase\"}", path);
  const char * const version[] = { program, "--version", NULL };
  const char * const artwork[] = { program, "calc", "artwork", "--in", input, NULL };
  guint64 base = 0;
  guint64 peak = 0;

  if (program == NULL)
    return;

  g_assert_true (g_file_set_contents (input, json, -1, NULL));
  base = peak_of (version);
  peak = peak_of (artwork);
  printf ("%-28s VmHWM %.1f MiB, of which %.1f are the program's own: %.2f MiB more  (at most 8)\n", what,
          (double) peak / 1024, (double) base / 1024, ((double) peak - (double) base) / 1024);
  g_remove (input);
}

static const struct {
  SceneKind kind;
  const char *what;
  double target;
} scenes[] = {
  { SCENE_PHOTO_RGB, "photograph, RGB 8", 1.05 },
  { SCENE_ART_RGBA, "artwork, RGBA 8", 1.05 },
  { SCENE_PAINTING_RGBA, "painting, RGBA 8", 1.05 },
  { SCENE_PHOTO_GREY, "photograph, grey 8", 0.95 },
  { SCENE_ART_PALETTE, "artwork, palette 8", 0.95 },
  { SCENE_ART_RGBA_ADAM7, "artwork, RGBA 8, Adam7", 0.90 },
  { SCENE_PHOTO_RGB_16, "photograph, RGB 16", 0 },
  { SCENE_ART_GREY_ALPHA, "artwork, grey + alpha 8", 0 },
};

int
main (int   argc,
      char *argv[])
{
  guint n_rounds = argc > 1 ? (guint) atoi (argv[1]) : ROUNDS;
  g_autofree char *folder = g_dir_make_tmp ("bench-image-XXXXXX", NULL);
  g_autofree char *path = g_build_filename (folder, "scene.png", NULL);

  printf ("%u × %u pixels, medians of %u rounds, processor time\n", WIDTH, HEIGHT, n_rounds);
  for (guint i = 0; i < G_N_ELEMENTS (scenes); i++)
    {
      scene_write (scenes[i].kind, WIDTH, HEIGHT, path);
      bench_counts (scenes[i].what, path, n_rounds, scenes[i].target);
      bench_memory (scenes[i].what, path);
      bench_rest (path);
      fflush (stdout);
    }
  scene_write (SCENE_PHOTO_RGB_16, BB_PNG_MAX_WIDTH, 40, path);
  bench_memory ("200,000 wide, RGB 16", path);
  scene_write (SCENE_ART_RGBA_ADAM7, BB_PNG_MAX_WIDTH, 40, path);
  bench_memory ("200,000 wide, RGBA 8, Adam7", path);
  g_remove (path);
  g_rmdir (folder);

  return 0;
}
