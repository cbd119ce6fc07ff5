/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-test"

#include "art.h"

#include <glib/gstdio.h>
#include <png.h>

#include "store-helpers.h"

#define WIDTH 40
#define HEIGHT 20

static void
draw (guint8 *rgba,
      int     x,
      int     y)
{
  static const struct {
    int end;
    guint8 rgba[4];
  } columns[] = {
    { 10, { 0, 0, 0, 0 } },     { 20, { 255, 0, 0, 255 } }, { 25, { 0, 0, 0, 255 } }, { 28, { 255, 255, 255, 255 } },
    { 30, { 0, 0, 255, 51 } },  { 40, { 0, 0, 0, 0 } },
  };
  int i = 0;

  while (x >= columns[i].end)
    i++;
  memcpy (rgba, columns[y < 5 || y >= 15 ? 0 : i].rgba, 4);
}

char *
art_new_path (const char *name)
{
  g_autofree char *neighbour = helper_new_path ();
  g_autofree char *folder = g_path_get_dirname (neighbour);

  return g_build_filename (folder, name, NULL);
}

char *
art_write (const char *name,
           guint       scale,
           guint32     pixels_per_metre)
{
  char *path = art_new_path (name);
  FILE *file = g_fopen (path, "wb");
  png_structp png = png_create_write_struct (PNG_LIBPNG_VER_STRING, NULL, NULL, NULL);
  png_infop info = png_create_info_struct (png);
  g_autofree guint8 *row = g_new (guint8, 4 * (gsize) WIDTH * scale);

  png_init_io (png, file);
  png_set_IHDR (png, info, WIDTH * scale, HEIGHT * scale, 8, PNG_COLOR_TYPE_RGB_ALPHA, PNG_INTERLACE_NONE,
                PNG_COMPRESSION_TYPE_DEFAULT, PNG_FILTER_TYPE_DEFAULT);
  if (pixels_per_metre > 0)
    png_set_pHYs (png, info, pixels_per_metre, pixels_per_metre, PNG_RESOLUTION_METER);
  png_write_info (png, info);
  for (guint y = 0; y < HEIGHT * scale; y++)
    {
      for (guint x = 0; x < WIDTH * scale; x++)
        draw (row + 4 * x, (int) (x / scale), (int) (y / scale));
      png_write_row (png, row);
    }
  png_write_end (png, NULL);
  png_destroy_write_struct (&png, &info);
  fclose (file);

  return path;
}

char *
art_write_broken (const char *name)
{
  g_autofree char *whole = art_write (name, 1, ART_PIXELS_PER_METRE);
  char *path = art_new_path (name);
  g_autofree char *contents = NULL;
  gsize length = 0;

  g_assert_true (g_file_get_contents (whole, &contents, &length, NULL));
  g_assert_true (g_file_set_contents (path, contents, (gssize) (length - 30), NULL));

  return path;
}
