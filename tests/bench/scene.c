/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-test"

#include "scene.h"

#include <math.h>
#include <stdio.h>
#include <string.h>

#define TILE 1024
#define OCTAVES 6
#define DISCS 48
#define SEED 20251104

typedef struct {
  double x;
  double y;
  double radius;
  guint8 colour[3];
  int fill;
} Disc;

typedef struct {
  guint32 width;
  guint32 height;
  float *tile;
  Disc discs[DISCS];
  guint32 grain;
} Scene;

static double
lattice (const float *noise,
         guint        n,
         double       x,
         double       y)
{
  guint x0 = (guint) x % n;
  guint y0 = (guint) y % n;
  guint x1 = (x0 + 1) % n;
  guint y1 = (y0 + 1) % n;
  double u = x - floor (x);
  double v = y - floor (y);

  u = u * u * (3 - 2 * u);
  v = v * v * (3 - 2 * v);

  return (1 - v) * ((1 - u) * (double) noise[y0 * TILE + x0] + u * (double) noise[y0 * TILE + x1]) +
         v * ((1 - u) * (double) noise[y1 * TILE + x0] + u * (double) noise[y1 * TILE + x1]);
}

/* Clouds that repeat seamlessly, from 0 to 1. */
static float *
make_tile (GRand *rand)
{
  g_autofree float *noise = g_new (float, TILE * TILE);
  float *tile = g_new0 (float, TILE * TILE);

  for (guint i = 0; i < TILE * TILE; i++)
    noise[i] = (float) g_rand_double (rand);
  for (guint octave = 0; octave < OCTAVES; octave++)
    {
      guint n = 4u << octave;

      for (guint y = 0; y < TILE; y++)
        for (guint x = 0; x < TILE; x++)
          tile[y * TILE + x] += (float) (lattice (noise, n, x * (double) n / TILE, y * (double) n / TILE) /
                                         pow (2, octave + 1));
    }

  return tile;
}

static void
scene_init (Scene  *self,
            guint32 width,
            guint32 height)
{
  GRand *rand = g_rand_new_with_seed (SEED);

  self->width = width;
  self->height = height;
  self->grain = SEED;
  self->tile = make_tile (rand);
  for (guint i = 0; i < DISCS; i++)
    {
      Disc *disc = &self->discs[i];

      disc->x = width * g_rand_double_range (rand, 0.2, 0.8);
      disc->y = height * g_rand_double_range (rand, 0.2, 0.8);
      disc->radius = width * g_rand_double_range (rand, 0.02, 0.16);
      disc->fill = g_rand_int_range (rand, 0, 3);
      for (guint c = 0; c < 3; c++)
        disc->colour[c] = (guint8) g_rand_int_range (rand, 0, 256);
    }
  g_rand_free (rand);
}

/* From -3 to 3. */
static int
next_grain (Scene *self)
{
  self->grain ^= self->grain << 13;
  self->grain ^= self->grain >> 17;
  self->grain ^= self->grain << 5;

  return (int) (self->grain >> 8) % 7 - 3;
}

static guint8
photo_at (Scene  *self,
          guint32 x,
          guint32 y,
          guint   channel)
{
  guint32 tx = (x * (3 + channel) / 8 + 301 * channel) % TILE;
  guint32 ty = (y * (4 - channel) / 8 + 173 * channel) % TILE;
  int value = (int) (300.0f * self->tile[ty * TILE + tx]) - 25 + next_grain (self);

  return (guint8) CLAMP (value, 0, 255);
}

static void
paint_disc (Scene      *self,
            const Disc *disc,
            gboolean    painting,
            guint32     y,
            guint8     *row)
{
  double dy = y - disc->y;
  double half = disc->radius + 2;
  guint32 from = (guint32) fmax (0, disc->x - half);
  guint32 to = (guint32) fmin (self->width, disc->x + half);

  if (fabs (dy) > half)
    return;
  for (guint32 x = from; x < to; x++)
    {
      double edge = disc->radius - hypot (x - disc->x, dy);
      double cover = edge > 1 ? 1 : edge < -1 ? 0 : (edge + 1) / 2;
      guint8 *pixel = row + 4 * x;

      if (cover <= 0)
        continue;
      for (guint c = 0; c < 3; c++)
        {
          int shade = disc->fill == 1 ? (int) (60 * dy / disc->radius) : 0;
          gboolean painted = painting || disc->fill == 2;
          guint8 paint = painted ? photo_at (self, x, y, c) : (guint8) CLAMP (disc->colour[c] + shade, 0, 255);

          pixel[c] = (guint8) (cover * paint + (1 - cover) * (pixel[3] == 0 ? paint : pixel[c]));
        }
      pixel[3] = (guint8) fmax (pixel[3], 255 * cover);
    }
}

static void
paint_art (Scene   *self,
           gboolean painting,
           guint32  y,
           guint8  *row)
{
  memset (row, 0, 4 * (gsize) self->width);
  for (guint i = 0; i < DISCS; i++)
    paint_disc (self, &self->discs[i], painting, y, row);
}

/* Eight reds, eight greens, four blues, dithered by the grain; what is less than half there is transparent. */
static guint8
nearest_in_palette (Scene        *self,
                    const guint8 *pixel)
{
  int grain = 5 * next_grain (self);
  guint red = (guint) CLAMP (pixel[0] + grain, 0, 255) >> 5;
  guint green = (guint) CLAMP (pixel[1] + grain, 0, 255) >> 5;
  guint blue = (guint) CLAMP (pixel[2] + 2 * grain, 0, 255) >> 6;

  return pixel[3] < 128 ? 0 : (guint8) MAX (1, red << 5 | green << 2 | blue);
}

static void
write_row (Scene    *self,
           SceneKind kind,
           guint32   y,
           guint8   *row)
{
  guint channels = kind == SCENE_PHOTO_GREY ? 1 : 3;

  switch (kind)
    {
    case SCENE_PHOTO_RGB:
    case SCENE_PHOTO_GREY:
      for (guint32 i = 0; i < self->width * channels; i++)
        row[i] = photo_at (self, i / channels, y, i % channels);
      break;
    case SCENE_PHOTO_RGB_16:
      for (guint32 i = 0; i < self->width * 3; i++)
        {
          row[2 * i] = photo_at (self, i / 3, y, i % 3);
          row[2 * i + 1] = (guint8) (self->grain >> 16);
        }
      break;
    case SCENE_ART_PALETTE:
      paint_art (self, FALSE, y, row);
      for (guint32 x = 0; x < self->width; x++)
        row[x] = nearest_in_palette (self, row + 4 * x);
      break;
    case SCENE_ART_GREY_ALPHA:
      paint_art (self, FALSE, y, row);
      for (guint32 x = 0; x < self->width; x++)
        {
          row[2 * x] = row[4 * x + 1];
          row[2 * x + 1] = row[4 * x + 3];
        }
      break;
    case SCENE_ART_RGBA:
    case SCENE_ART_RGBA_ADAM7:
    case SCENE_PAINTING_RGBA:
    default:
      paint_art (self, kind == SCENE_PAINTING_RGBA, y, row);
      break;
    }
}

static void
set_header (png_structp png,
            png_infop   info,
            Scene      *self,
            SceneKind   kind)
{
  static const int types[] = {
    [SCENE_PHOTO_RGB] = PNG_COLOR_TYPE_RGB, [SCENE_PHOTO_GREY] = PNG_COLOR_TYPE_GRAY,
    [SCENE_PHOTO_RGB_16] = PNG_COLOR_TYPE_RGB, [SCENE_ART_RGBA] = PNG_COLOR_TYPE_RGBA,
    [SCENE_PAINTING_RGBA] = PNG_COLOR_TYPE_RGBA,
    [SCENE_ART_RGBA_ADAM7] = PNG_COLOR_TYPE_RGBA, [SCENE_ART_PALETTE] = PNG_COLOR_TYPE_PALETTE,
    [SCENE_ART_GREY_ALPHA] = PNG_COLOR_TYPE_GRAY_ALPHA,
  };
  png_color palette[256];
  const png_byte alpha[1] = { 0 };

  png_set_IHDR (png, info, self->width, self->height, kind == SCENE_PHOTO_RGB_16 ? 16 : 8, types[kind],
                kind == SCENE_ART_RGBA_ADAM7 ? PNG_INTERLACE_ADAM7 : PNG_INTERLACE_NONE, PNG_COMPRESSION_TYPE_DEFAULT,
                PNG_FILTER_TYPE_DEFAULT);
  png_set_pHYs (png, info, 11811, 11811, PNG_RESOLUTION_METER);
  if (kind != SCENE_ART_PALETTE)
    return;
  for (guint i = 0; i < 256; i++)
    palette[i] = (png_color) { (png_byte) ((i >> 5) * 36), (png_byte) ((i >> 2 & 7) * 36), (png_byte) ((i & 3) * 85) };
  png_set_PLTE (png, info, palette, 256);
  png_set_tRNS (png, info, alpha, 1, NULL);
}

/* Interlaced pictures are held whole: libpng asks for their rows seven times. */
void
scene_write (SceneKind   kind,
             guint32     width,
             guint32     height,
             const char *path)
{
  Scene scene;
  FILE *file = fopen (path, "wb");
  png_structp png = png_create_write_struct (PNG_LIBPNG_VER_STRING, NULL, NULL, NULL);
  png_infop info = png_create_info_struct (png);
  guint32 n_held = kind == SCENE_ART_RGBA_ADAM7 ? height : 1;
  gsize stride = (gsize) width * 8;
  g_autofree guint8 *rows = g_malloc (n_held * stride);

  g_assert_nonnull (file);
  scene_init (&scene, width, height);
  png_init_io (png, file);
  set_header (png, info, &scene, kind);
  png_write_info (png, info);
  for (guint32 y = 0; y < height; y++)
    {
      guint8 *row = rows + y % n_held * stride;

      write_row (&scene, kind, y, row);
      if (n_held == 1)
        png_write_row (png, row);
    }
  for (int pass = 0; n_held > 1 && pass < png_set_interlace_handling (png); pass++)
    for (guint32 y = 0; y < height; y++)
      png_write_row (png, rows + y * stride);
  png_write_end (png, info);
  png_destroy_write_struct (&png, &info);
  g_assert_cmpint (fclose (file), ==, 0);
  g_free (scene.tile);
}
