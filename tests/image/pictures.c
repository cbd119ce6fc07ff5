/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-test"

#include "pictures.h"

#include <string.h>

/* Where a committed picture lies. */
char *
picture_path (const char *name)
{
  g_autofree char *base = g_strconcat (name, ".png", NULL);

  return g_test_build_filename (G_TEST_DIST, "image", "pictures", base, NULL);
}

GBytes *
picture_load (const char *name)
{
  g_autofree char *path = picture_path (name);
  char *data = NULL;
  gsize length = 0;
  g_autoptr (GError) error = NULL;

  g_file_get_contents (path, &data, &length, &error);
  g_assert_no_error (error);

  return g_bytes_new_take (data, length);
}

static int
compare_names (gconstpointer a,
               gconstpointer b)
{
  return strcmp (*(const char * const *) a, *(const char * const *) b);
}

/* The names of all committed pictures. */
GStrv
picture_list (void)
{
  g_autofree char *folder = g_test_build_filename (G_TEST_DIST, "image", "pictures", NULL);
  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);
  GPtrArray *names = g_ptr_array_new ();
  const char *base = NULL;

  g_assert_nonnull (dir);
  while ((base = g_dir_read_name (dir)) != NULL)
    if (g_str_has_suffix (base, ".png"))
      g_ptr_array_add (names, g_strndup (base, strlen (base) - strlen (".png")));
  g_ptr_array_sort (names, compare_names);
  g_ptr_array_add (names, NULL);

  return (GStrv) g_ptr_array_free (names, FALSE);
}

typedef struct {
  Plane *plane;
  const BbPngInfo *info;
} Painting;

static guint
sample_at (const BbPngInfo *info,
           const guint8    *pixels,
           gsize            index)
{
  guint16 deep = 0;
  guint bits = info->sample_bits;

  if (bits == 16)
    {
      memcpy (&deep, pixels + 2 * index, 2);
      /* To the nearest of 8 bits, in floating point so as to be no copy of what is tested. */
      return (guint) ((double) deep / 257.0 + 0.5);
    }

  return (guint) (pixels[index * bits / 8] >> (8 - bits - index * bits % 8)) & ((1u << bits) - 1);
}

static void
paint_row (const BbPngRow *row,
           gpointer        data)
{
  Painting *self = data;
  const BbPngInfo *info = self->info;

  g_assert_cmpuint (row->y, <, info->height);
  for (guint32 i = 0; i < row->n_pixels; i++)
    {
      guint32 x = row->x + i * row->step;
      guint8 *out = self->plane->pixels + 4 * ((gsize) row->y * info->width + x);
      guint value[4] = { 0, 0, 0, 255 };

      g_assert_cmpuint (x, <, info->width);
      for (guint c = 0; c < info->channels; c++)
        value[info->channels == 2 && c == 1 ? 3 : c] = sample_at (info, row->pixels, (gsize) i * info->channels + c);
      if (info->channels <= 2)
        value[1] = value[2] = value[0];
      for (guint c = 0; c < 4; c++)
        out[c] = info->table != NULL ? info->table[value[0]][c] : (guint8) value[c];
    }
}

/* All pixels of a picture as RGBA of 8 bits, whatever the form of its rows. */
Plane *
plane_read (BbPng   *png,
            GError **error)
{
  const BbPngInfo *info = bb_png_get_info (png);
  g_autoptr (Plane) plane = g_new0 (Plane, 1);
  Painting painting = { plane, info };

  plane->width = info->width;
  plane->height = info->height;
  plane->pixels = g_malloc0 ((gsize) info->width * info->height * 4);
  if (!bb_png_read (png, paint_row, &painting, NULL, error))
    return NULL;

  return g_steal_pointer (&plane);
}

Plane *
plane_load (const char *name,
            BbPngForm   form)
{
  g_autofree char *path = picture_path (name);
  g_autoptr (GError) error = NULL;
  g_autoptr (BbPng) png = bb_png_new_for_file (path, form, &error);
  Plane *plane = NULL;

  g_assert_no_error (error);
  plane = plane_read (png, &error);
  g_assert_no_error (error);

  return plane;
}

void
plane_free (Plane *self)
{
  g_free (self->pixels);
  g_free (self);
}

static void
append_bytes (png_structp png,
              png_bytep   data,
              size_t      length)
{
  g_byte_array_append (png_get_io_ptr (png), data, (guint) length);
}

static void
flush_nothing (G_GNUC_UNUSED png_structp png)
{
}

static G_NORETURN void
end_test (G_GNUC_UNUSED png_structp png,
          png_const_charp           message)
{
  g_error ("libpng can't write the picture: %s", message);
}

static png_structp
begin_writing (GByteArray *out)
{
  png_structp png = png_create_write_struct (PNG_LIBPNG_VER_STRING, NULL, end_test, NULL);

  png_set_write_fn (png, out, append_bytes, flush_nothing);

  return png;
}

/* A whole PNG file. The rows are as they stand in PNG: packed, and 16 bits with the high byte first. */
GBytes *
drawing_write (const Drawing *self)
{
  GByteArray *out = g_byte_array_new ();
  png_structp png = begin_writing (out);
  png_infop info = png_create_info_struct (png);
  g_autofree png_bytep *rows = g_new (png_bytep, self->height);

  for (guint32 y = 0; y < self->height; y++)
    rows[y] = (png_bytep) self->rows + y * self->row_bytes;
  png_set_IHDR (png, info, self->width, self->height, self->bit_depth, self->colour_type,
                self->interlaced ? PNG_INTERLACE_ADAM7 : PNG_INTERLACE_NONE, PNG_COMPRESSION_TYPE_DEFAULT,
                PNG_FILTER_TYPE_DEFAULT);
  if (self->palette != NULL)
    png_set_PLTE (png, info, self->palette, self->n_palette);
  if (self->alpha != NULL || self->transparent != NULL)
    png_set_tRNS (png, info, self->alpha, self->n_alpha, self->transparent);
  if (self->profile != NULL)
    png_set_iCCP (png, info, "profile", PNG_COMPRESSION_TYPE_BASE, self->profile, (png_uint_32) self->profile_length);
  png_write_info (png, info);
  png_set_interlace_handling (png);
  png_write_image (png, rows);
  png_write_end (png, NULL);
  png_destroy_write_struct (&png, &info);

  return g_byte_array_free_to_bytes (out);
}

/* A file of chunks that need make no sense: name, data and length of each, then NULL. */
GBytes *
chunks_write (const char *first_name,
              ...)
{
  GByteArray *out = g_byte_array_new ();
  png_structp png = begin_writing (out);
  va_list chunks;

  png_write_sig (png);
  va_start (chunks, first_name);
  for (const char *name = first_name; name != NULL; name = va_arg (chunks, const char *))
    {
      png_const_bytep data = va_arg (chunks, png_const_bytep);
      gsize length = va_arg (chunks, gsize);

      png_write_chunk (png, (png_const_bytep) name, data, length);
    }
  va_end (chunks);
  png_destroy_write_struct (&png, NULL);

  return g_byte_array_free_to_bytes (out);
}
