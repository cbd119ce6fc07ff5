/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-image"

/* For O_CLOEXEC and fstat(). */
#define _POSIX_C_SOURCE 200809L

#include "bb-png-source-private.h"

#include <errno.h>
#include <fcntl.h>
#include <glib/gi18n-lib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

#include "bb-image-error.h"

#define AHEAD 65536
#define SIGNATURE 8
#define CHECKSUM 4

static void
init (BbPngSource *self)
{
  *self = (BbPngSource) { .fd = -1, .left = SIGNATURE };
}

/**
 * _bb_png_source_open_file:
 * @self: (out caller-allocates): a source
 * @path: a file's name
 * @error: return location for a #GError; its message does not name the file
 *
 * Opens a file. Anything but a plain file is refused: a pipe that nobody writes to would never answer.
 *
 * Returns: %TRUE if it is open; it has to be closed in both cases
 */
gboolean
_bb_png_source_open_file (BbPngSource *self,
                          const char  *path,
                          GError     **error)
{
  struct stat info;
  int code = 0;

  init (self);
  self->fd = open (path, O_RDONLY | O_CLOEXEC | O_NONBLOCK);
  if (self->fd < 0 || fstat (self->fd, &info) != 0)
    {
      code = errno;
      g_set_error_literal (error, BB_IMAGE_ERROR, BB_IMAGE_ERROR_READ, g_strerror (code));
      return FALSE;
    }
  if (!S_ISREG (info.st_mode))
    {
      g_set_error_literal (error, BB_IMAGE_ERROR, BB_IMAGE_ERROR_READ,
                           S_ISDIR (info.st_mode) ? _("is a folder, not a picture") : _("is not a plain file"));
      return FALSE;
    }
  self->buffer = g_malloc (AHEAD);

  return TRUE;
}

/**
 * _bb_png_source_open_bytes:
 * @self: (out caller-allocates): a source
 * @bytes: a whole file
 *
 * Takes the bytes from memory.
 */
void
_bb_png_source_open_bytes (BbPngSource *self,
                           GBytes      *bytes)
{
  gsize length = 0;

  init (self);
  self->bytes = g_bytes_ref (bytes);
  self->next = g_bytes_get_data (bytes, &length);
  self->end = self->next + length;
}

/**
 * _bb_png_source_close:
 * @self: a source
 *
 * Lets go of the file or the bytes.
 */
void
_bb_png_source_close (BbPngSource *self)
{
  if (self->fd >= 0)
    close (self->fd);
  self->fd = -1;
  g_clear_pointer (&self->buffer, g_free);
  g_clear_pointer (&self->bytes, g_bytes_unref);
}

/* FALSE where no more is to be had; *code is 0 at the end of the file. */
static gboolean
read_ahead (BbPngSource *self,
            int         *code)
{
  gssize n = 0;

  *code = 0;
  if (self->fd < 0)
    return FALSE;

  do
    n = read (self->fd, self->buffer, AHEAD);
  while (n < 0 && errno == EINTR);
  if (n < 0)
    *code = errno;
  if (n <= 0)
    return FALSE;

  self->next = self->buffer;
  self->end = self->buffer + n;

  return TRUE;
}

/**
 * _bb_png_source_take:
 * @self: a source
 * @out: (out caller-allocates): where to put the bytes
 * @n: how many are wanted
 * @code: (out): the system's error number where -1 is returned
 *
 * Returns: how many there were, fewer than @n only at the end; -1 if they can't be read
 */
gssize
_bb_png_source_take (BbPngSource *self,
                     guint8      *out,
                     gsize        n,
                     int         *code)
{
  gsize done = 0;

  while (done < n)
    {
      gsize ahead = (gsize) (self->end - self->next);

      if (ahead == 0)
        {
          if (read_ahead (self, code))
            continue;
          if (*code != 0)
            return -1;
          break;
        }
      ahead = MIN (ahead, n - done);
      memcpy (out + done, self->next, ahead);
      self->next += ahead;
      done += ahead;
    }
  self->position += done;

  return (gssize) done;
}

static guint32
big_endian (const guint8 *p)
{
  return BB_CHUNK (p[0], p[1], p[2], p[3]);
}

/**
 * _bb_png_source_follow:
 * @self: a source
 * @data: the bytes that were taken last
 * @n: how many
 *
 * Follows the chunks as they pass. What is taken at a time never holds more than one beginning of a chunk.
 *
 * Returns: %TRUE if a chunk has just begun: its name and length are known, and nothing of it was taken
 */
gboolean
_bb_png_source_follow (BbPngSource  *self,
                       const guint8 *data,
                       gsize         n)
{
  gboolean begun = FALSE;

  while (n > 0)
    {
      gsize step = (gsize) MIN (self->left, n);

      if (step == 0)
        {
          step = MIN (sizeof self->header - self->n_header, n);
          memcpy (self->header + self->n_header, data, step);
          self->n_header += (guint) step;
          if (self->n_header == sizeof self->header)
            {
              self->length = big_endian (self->header);
              self->chunk = big_endian (self->header + 4);
              self->left = (guint64) self->length + CHECKSUM;
              self->n_header = 0;
              begun = TRUE;
            }
        }
      else
        self->left -= step;
      data += step;
      n -= step;
    }

  return begun;
}

/**
 * _bb_png_source_get_chunk:
 * @self: a source
 * @name: (out) (array fixed-size=5): the current chunk's name, fit for a message
 */
void
_bb_png_source_get_chunk (const BbPngSource *self,
                          char               name[5])
{
  for (guint i = 0; i < 4; i++)
    {
      char c = (char) (self->chunk >> (24 - 8 * i) & 0xff);

      name[i] = g_ascii_isalpha (c) ? c : '?';
    }
  name[4] = '\0';
}
