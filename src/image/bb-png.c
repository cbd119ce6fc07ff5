/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-image"

#include "bb-png.h"

#include <glib/gi18n-lib.h>

#include "bb-png-private.h"

#define BLOCK_PIXELS 65536u

/* Opening */

static gboolean
check_size (BbPng *self)
{
  guint64 n_pixels = (guint64) self->known.width * self->known.height;
  g_autofree char *message = NULL;

  if (self->known.width > BB_PNG_MAX_WIDTH)
    message = g_strdup_printf (_("it is %u pixels wide, the maximum is %u"), self->known.width, BB_PNG_MAX_WIDTH);
  else if (n_pixels > BB_PNG_MAX_PIXELS)
    message = g_strdup_printf (_("it has %u × %u pixels, the maximum is %.0f in all"), self->known.width,
                               self->known.height, (double) BB_PNG_MAX_PIXELS);
  if (message != NULL)
    _bb_png_take_error (self, BB_IMAGE_ERROR_LIMIT, message);

  return message == NULL;
}

static void
read_header (BbPng *self)
{
  _bb_png_set_limits (self);
  png_read_info (self->png, self->info);
  _bb_png_note_info (self);
  if (!check_size (self))
    return;

  _bb_png_ask_for_form (self);
  png_read_update_info (self->png, self->info);
  self->known.channels = png_get_channels (self->png, self->info);
  self->known.sample_bits = png_get_bit_depth (self->png, self->info);
  self->row = g_try_malloc (png_get_rowbytes (self->png, self->info));
  if (self->row == NULL)
    self->out_of_memory = TRUE;
}

static void
open_guarded (BbPng *self)
{
  if (setjmp (png_jmpbuf (self->png)) == 0)
    read_header (self);
}

static BbPng *
open_source (BbPng   *self,
             GError **error)
{
  if (self->error == NULL && _bb_png_take_signature (self) && _bb_png_make_decoder (self))
    open_guarded (self);
  if (self->error == NULL && _bb_png_check_memory (self))
    return self;

  g_propagate_error (error, g_steal_pointer (&self->error));
  bb_png_free (self);

  return NULL;
}

/**
 * bb_png_new_for_file:
 * @path: a file's name
 * @form: what the rows shall hold
 * @error: return location for a #GError in the domain %BB_IMAGE_ERROR
 *
 * Opens a PNG file and reads it up to its first row.
 *
 * Returns: (transfer full): a reader, or %NULL
 */
BbPng *
bb_png_new_for_file (const char *path,
                     BbPngForm   form,
                     GError    **error)
{
  BbPng *self = g_new0 (BbPng, 1);
  g_autoptr (GError) failure = NULL;

  self->name = g_filename_display_name (path);
  self->form = form;
  if (!_bb_png_source_open_file (&self->source, path, &failure))
    _bb_png_take_error (self, BB_IMAGE_ERROR_READ, failure->message);

  return open_source (self, error);
}

/**
 * bb_png_new_for_bytes:
 * @bytes: a whole PNG file
 * @name: what messages call it
 * @form: what the rows shall hold
 * @error: return location for a #GError in the domain %BB_IMAGE_ERROR
 *
 * Opens a PNG file that lies in memory and reads it up to its first row.
 *
 * Returns: (transfer full): a reader, or %NULL
 */
BbPng *
bb_png_new_for_bytes (GBytes     *bytes,
                      const char *name,
                      BbPngForm   form,
                      GError    **error)
{
  BbPng *self = g_new0 (BbPng, 1);

  self->name = g_strdup (name);
  self->form = form;
  _bb_png_source_open_bytes (&self->source, bytes);

  return open_source (self, error);
}

/**
 * bb_png_free:
 * @self: (nullable): a reader
 *
 * Closes the file and frees the reader.
 */
void
bb_png_free (BbPng *self)
{
  if (self == NULL)
    return;

  png_destroy_read_struct (&self->png, &self->info, NULL);
  _bb_png_source_close (&self->source);
  g_clear_error (&self->error);
  g_free (self->row);
  g_free (self->name);
  g_free (self);
}

/**
 * bb_png_get_info:
 * @self: a reader
 *
 * Returns: (transfer none): what is known of the picture
 */
const BbPngInfo *
bb_png_get_info (const BbPng *self)
{
  return &self->known;
}

/**
 * bb_png_get_name:
 * @self: a reader
 *
 * Returns: (transfer none): what messages call the file
 */
const char *
bb_png_get_name (const BbPng *self)
{
  return self->name;
}

/**
 * bb_png_get_block:
 * @self: a reader
 *
 * Returns: how many rows are read between two looks at whether the work was cancelled
 */
guint32
bb_png_get_block (const BbPng *self)
{
  return MAX (1, BLOCK_PIXELS / self->known.width);
}

/* Rows */

static gboolean
look_up (BbPng *self)
{
  const BbImageWork *work = self->work;
  double n_pixels = (double) self->known.width * self->known.height;

  if (work == NULL)
    return TRUE;
  if (work->progress != NULL)
    work->progress ((double) self->n_done / n_pixels, work->data);

  return !g_cancellable_set_error_if_cancelled (work->cancellable, &self->error);
}

static gboolean
read_pass (BbPng    *self,
           BbPngRow *row,
           guint32   n_rows,
           guint32   row_step)
{
  guint32 block = bb_png_get_block (self);

  for (guint32 i = 0; i < n_rows; i++)
    {
      png_read_row (self->png, self->row, NULL);
      self->func (row, self->data);
      self->n_done += row->n_pixels;
      row->y += row_step;
      if ((i + 1) % block == 0 && !look_up (self))
        return FALSE;
    }

  return look_up (self);
}

static gboolean
read_passes (BbPng *self)
{
  for (int pass = 0; pass < PNG_INTERLACE_ADAM7_PASSES; pass++)
    {
      BbPngRow row = {
        .pixels = self->row,
        .n_pixels = (guint32) PNG_PASS_COLS ((int) self->known.width, pass),
        .y = (guint32) PNG_PASS_START_ROW (pass),
        .x = (guint32) PNG_PASS_START_COL (pass),
        .step = (guint32) PNG_PASS_COL_OFFSET (pass),
      };
      guint32 n_rows = (guint32) PNG_PASS_ROWS ((int) self->known.height, pass);

      if (row.n_pixels > 0 && n_rows > 0 && !read_pass (self, &row, n_rows, (guint32) PNG_PASS_ROW_OFFSET (pass)))
        return FALSE;
    }

  return TRUE;
}

static void
read_all (BbPng *self)
{
  BbPngRow row = { .pixels = self->row, .n_pixels = self->known.width, .step = 1 };

  if (self->known.interlaced ? read_passes (self) : read_pass (self, &row, self->known.height, 1))
    png_read_end (self->png, NULL);
}

static void
read_guarded (BbPng *self)
{
  if (setjmp (png_jmpbuf (self->png)) == 0)
    read_all (self);
}

/**
 * bb_png_read:
 * @self: a reader whose rows were not read yet
 * @func: (scope call): takes one row; it must not leave by longjmp()
 * @data: for @func
 * @work: (nullable): how the work is watched and stopped
 * @error: return location for a #GError in the domain %BB_IMAGE_ERROR, or %G_IO_ERROR_CANCELLED
 *
 * Reads all rows, and the file to its end. What @func has gathered is of use only if the whole file was read.
 *
 * Returns: %TRUE if every row was read and the file is whole
 */
gboolean
bb_png_read (BbPng             *self,
             BbPngRowFunc       func,
             gpointer           data,
             const BbImageWork *work,
             GError           **error)
{
  g_return_val_if_fail (!self->started, FALSE);

  self->started = TRUE;
  self->func = func;
  self->data = data;
  self->work = work;
  if (work == NULL || !g_cancellable_set_error_if_cancelled (work->cancellable, &self->error))
    read_guarded (self);
  self->work = NULL;
  if (self->error == NULL && _bb_png_check_memory (self))
    return TRUE;

  g_propagate_error (error, g_steal_pointer (&self->error));

  return FALSE;
}
