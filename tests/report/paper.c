/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "paper.h"

#include <glib/gstdio.h>
#include <string.h>

struct _Picture {
  cairo_surface_t *surface;
};

static char *
run_on (GBytes             *pdf,
        const char * const *before,
        const char * const *after)
{
  g_autofree char *path = g_build_filename (g_get_user_cache_dir (), "read.pdf", NULL);
  g_autoptr (GPtrArray) arguments = g_ptr_array_new ();
  g_autoptr (GSubprocess) process = NULL;
  g_autoptr (GError) error = NULL;
  char *out = NULL;

  g_assert_cmpint (g_mkdir_with_parents (g_get_user_cache_dir (), 0700), ==, 0);
  g_assert_true (g_file_set_contents (path, g_bytes_get_data (pdf, NULL), (gssize) g_bytes_get_size (pdf), NULL));
  for (guint i = 0; before[i] != NULL; i++)
    g_ptr_array_add (arguments, (gpointer) before[i]);
  g_ptr_array_add (arguments, path);
  for (guint i = 0; after[i] != NULL; i++)
    g_ptr_array_add (arguments, (gpointer) after[i]);
  g_ptr_array_add (arguments, NULL);
  process = g_subprocess_newv ((const char * const *) arguments->pdata, G_SUBPROCESS_FLAGS_STDOUT_PIPE, &error);
  g_assert_no_error (error);
  g_subprocess_communicate_utf8 (process, NULL, NULL, &out, NULL, &error);
  g_assert_no_error (error);
  g_assert_true (g_subprocess_get_successful (process));

  return out;
}

char *
paper_read_text (GBytes *pdf)
{
  return run_on (pdf, (const char * const[]) { "pdftotext", "-layout", NULL }, (const char * const[]) { "-", NULL });
}

char *
paper_read_page (GBytes *pdf,
                 guint   page)
{
  g_autofree char *number = g_strdup_printf ("%u", page);

  return run_on (pdf, (const char * const[]) { "pdftotext", "-layout", "-f", number, "-l", number, NULL },
                 (const char * const[]) { "-", NULL });
}

char *
paper_read_facts (GBytes *pdf)
{
  return run_on (pdf, (const char * const[]) { "pdfinfo", NULL }, (const char * const[]) { NULL });
}

typedef struct {
  const guint8 *data;
  gsize left;
} Reading;

static cairo_status_t
read_bytes (void          *closure,
            unsigned char *data,
            unsigned int   length)
{
  Reading *self = closure;

  if (length > self->left)
    return CAIRO_STATUS_READ_ERROR;
  memcpy (data, self->data, length);
  self->data += length;
  self->left -= length;

  return CAIRO_STATUS_SUCCESS;
}

Picture *
picture_read (GBytes *png)
{
  Reading reading = { NULL, 0 };

  reading.data = g_bytes_get_data (png, &reading.left);

  return picture_take (cairo_image_surface_create_from_png_stream (read_bytes, &reading));
}

Picture *
picture_take (cairo_surface_t *surface)
{
  Picture *self = g_new0 (Picture, 1);

  g_assert_cmpint (cairo_surface_status (surface), ==, CAIRO_STATUS_SUCCESS);
  cairo_surface_flush (surface);
  self->surface = surface;

  return self;
}

void
picture_free (Picture *self)
{
  cairo_surface_destroy (self->surface);
  g_free (self);
}

int
picture_get_width (const Picture *self)
{
  return cairo_image_surface_get_width (self->surface);
}

int
picture_get_height (const Picture *self)
{
  return cairo_image_surface_get_height (self->surface);
}

guint
picture_get (const Picture *self,
             int            x,
             int            y)
{
  const unsigned char *row = cairo_image_surface_get_data (self->surface) +
                             y * cairo_image_surface_get_stride (self->surface);
  guint32 pixel = 0;

  memcpy (&pixel, row + 4 * x, sizeof pixel);

  return pixel & 0xffffff;
}

guint
picture_count (const Picture *self,
               guint          colour)
{
  guint n = 0;

  for (int y = 0; y < picture_get_height (self); y++)
    for (int x = 0; x < picture_get_width (self); x++)
      n += picture_get (self, x, y) == colour ? 1 : 0;

  return n;
}

gboolean
picture_equal (const Picture *self,
               const Picture *other)
{
  for (int y = 0; y < picture_get_height (self); y++)
    for (int x = 0; x < picture_get_width (self); x++)
      if (picture_get (self, x, y) != picture_get (other, x, y))
        return FALSE;

  return TRUE;
}
