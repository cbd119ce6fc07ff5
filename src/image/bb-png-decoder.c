/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-image"

#include <glib/gi18n-lib.h>
#include <string.h>

#include "bb-png-private.h"

/* libpng as it is used here: what it reads from, what it may take, and how it says what is wrong. */

#define CHUNK_IHDR BB_CHUNK ('I', 'H', 'D', 'R')
#define CHUNK_TRNS BB_CHUNK ('t', 'R', 'N', 'S')
#define CHUNK_ICCP BB_CHUNK ('i', 'C', 'C', 'P')
#define CHUNK_IDAT BB_CHUNK ('I', 'D', 'A', 'T')

/* Where the first chunk's data begin: behind the signature, its length and its name. */
#define FIRST_DATA 16

/* What else there is beside the chunks without which nothing can be read; iCCP is the last. */
static const png_byte used_chunks[] = "pHYs\0gAMA\0sRGB\0iCCP";

#define N_USED_CHUNKS 4

/**
 * _bb_png_take_error:
 * @self: a reader
 * @code: what kind of error
 * @message: what is wrong, without the file's name
 *
 * Keeps an error until it can be handed out; the first one stands.
 */
void
_bb_png_take_error (BbPng       *self,
                    BbImageError code,
                    const char  *message)
{
  if (self->error == NULL)
    g_set_error (&self->error, BB_IMAGE_ERROR, (int) code, "%s: %s", self->name, message);
}

/**
 * _bb_png_check_memory:
 * @self: a reader
 *
 * libpng goes on without some of what it has no memory for, a colour profile for one; whoever looks at the picture
 * could not tell that from one that has none. So all that was read counts for nothing if memory was ever short.
 *
 * Returns: %FALSE if memory was short; the error is kept
 */
gboolean
_bb_png_check_memory (BbPng *self)
{
  if (self->out_of_memory)
    _bb_png_take_error (self, BB_IMAGE_ERROR_LIMIT, _("there is not enough memory to read it"));

  return !self->out_of_memory;
}

static png_voidp
take_memory (png_structp      png,
             png_alloc_size_t size)
{
  BbPng *self = png_get_mem_ptr (png);
  gpointer memory = g_try_malloc (size);

  if (memory == NULL)
    self->out_of_memory = TRUE;

  return memory;
}

static void
free_memory (G_GNUC_UNUSED png_structp png,
             png_voidp                 memory)
{
  g_free (memory);
}

static void
take_damage (BbPng      *self,
             const char *what)
{
  g_autofree char *position = g_strdup_printf ("%" G_GUINT64_FORMAT, self->source.position);
  g_autofree char *message = NULL;

  /* Translators: the decoder's own words, which are English, and how many bytes of the file it had read. */
  message = g_strdup_printf (_("the PNG is damaged: %s (at byte %s)"), what, position);
  _bb_png_take_error (self, BB_IMAGE_ERROR_DAMAGED, message);
}

static G_NORETURN void
on_error (png_structp     png,
          png_const_charp message)
{
  BbPng *self = png_get_error_ptr (png);

  /* What is wrong with a header is told as a warning, before the error says no more than that it is invalid. */
  if (*self->warning != '\0' && g_str_equal (message, "Invalid IHDR data"))
    message = self->warning;
  if (_bb_png_check_memory (self))
    take_damage (self, message);
  png_longjmp (png, 1);
}

static void
on_warning (png_structp     png,
            png_const_charp message)
{
  BbPng *self = png_get_error_ptr (png);

  /* libpng would go on as if there were no transparency, and the counts would be those of another picture. */
  if (self->source.chunk == CHUNK_TRNS)
    png_error (png, message);
  if (*self->warning == '\0')
    g_strlcpy (self->warning, message, sizeof self->warning);
}

static void
take_early_end (BbPng *self)
{
  g_autofree char *length = g_strdup_printf ("%" G_GUINT64_FORMAT, self->source.position);
  g_autofree char *message = NULL;

  message = g_strdup_printf (_("the file ends early, after %s bytes: it was cut short when it was saved or copied"),
                             length);
  _bb_png_take_error (self, BB_IMAGE_ERROR_DAMAGED, message);
}

static void
take_long_chunk (BbPng *self)
{
  char chunk[5];
  g_autofree char *message = NULL;

  _bb_png_source_get_chunk (&self->source, chunk);
  message = g_strdup_printf (_("its chunk %s claims %u bytes, the maximum is %u"), chunk, self->source.length,
                             BB_PNG_MAX_CHUNK);
  _bb_png_take_error (self, BB_IMAGE_ERROR_LIMIT, message);
}

/* Ancillary chunks, which a decoder may leave out: the fifth bit of the first letter is set. */
static gboolean
may_be_bad (guint32 chunk)
{
  return (chunk & 0x20000000) != 0 && chunk != CHUNK_TRNS;
}

static void
on_read (png_structp png,
         png_bytep   out,
         size_t      n)
{
  BbPng *self = png_get_io_ptr (png);
  int code = 0;
  gssize taken = _bb_png_source_take (&self->source, out, n, &code);

  if (taken < 0)
    _bb_png_take_error (self, BB_IMAGE_ERROR_READ, g_strerror (code));
  else if ((gsize) taken < n)
    take_early_end (self);
  else if (_bb_png_source_follow (&self->source, out, n))
    {
      /*
       * Unless what libpng calls benign errors are errors, it only warns of a chunk that is longer than it may be, and
       * goes on to make room for it. So they are, but for chunks that may be bad without harm; those are either passed
       * over or, like iCCP, bounded by png_set_chunk_malloc_max() also where it warns.
       */
      png_set_benign_errors (png, may_be_bad (self->source.chunk));
      if (self->source.chunk == CHUNK_ICCP)
        self->has_profile_chunk = TRUE;
      if (self->source.chunk != CHUNK_IHDR && self->source.position == FIRST_DATA)
        take_damage (self, _("IHDR is not the first chunk"));
      if (self->source.chunk != CHUNK_IDAT && self->source.length > BB_PNG_MAX_CHUNK)
        take_long_chunk (self);
    }

  if (self->error != NULL)
    png_longjmp (png, 1);
}

static const struct {
  const char *bytes;
  gsize n_bytes;
  const char *message;
} other_formats[] = {
  { "\xff\xd8\xff", 3, N_("is a JPEG picture, not a PNG. Export the artwork as PNG") },
  { "GIF8", 4, N_("is a GIF picture, not a PNG. Export the artwork as PNG") },
  { "RIFF", 4, N_("is a WebP picture or something else, not a PNG. Export the artwork as PNG") },
  { "II*\0", 4, N_("is a TIFF picture, not a PNG. Export the artwork as PNG") },
  { "MM\0*", 4, N_("is a TIFF picture, not a PNG. Export the artwork as PNG") },
  { "%PDF", 4, N_("is a PDF document, not a PNG. Export the artwork as PNG") },
  { "\x89PNG", 4, N_("begins as a PNG picture does, but was changed or cut short on its way. Fetch it again") },
  { "<", 1, N_("is a text like SVG or HTML, not a PNG. Export the artwork as PNG") },
};

static const char *
name_other_format (const guint8 *bytes,
                   gsize         n)
{
  for (guint i = 0; i < G_N_ELEMENTS (other_formats); i++)
    if (n >= other_formats[i].n_bytes && memcmp (bytes, other_formats[i].bytes, other_formats[i].n_bytes) == 0)
      return _(other_formats[i].message);

  return n == 0 ? _("is empty") : _("is not a PNG picture");
}

/**
 * _bb_png_take_signature:
 * @self: a reader whose source is open
 *
 * Sees to it that the file begins as a PNG does.
 *
 * Returns: %FALSE if it is something else; the error is kept
 */
gboolean
_bb_png_take_signature (BbPng *self)
{
  guint8 bytes[8];
  int code = 0;
  gssize n = _bb_png_source_take (&self->source, bytes, sizeof bytes, &code);

  if (n < 0)
    _bb_png_take_error (self, BB_IMAGE_ERROR_READ, g_strerror (code));
  else if (n < 8 || png_sig_cmp (bytes, 0, sizeof bytes) != 0)
    _bb_png_take_error (self, BB_IMAGE_ERROR_NOT_PNG, name_other_format (bytes, (gsize) n));
  else
    _bb_png_source_follow (&self->source, bytes, sizeof bytes);

  return self->error == NULL;
}

/**
 * _bb_png_set_limits:
 * @self: a reader that has its decoder
 *
 * Tells libpng where to read from, and how much. Memory may be short already here, which it reports as everything.
 */
void
_bb_png_set_limits (BbPng *self)
{
  png_set_read_fn (self->png, self, on_read);
  png_set_sig_bytes (self->png, 8);
  /* The real limits are checked with a better message, before anything is made as wide as the picture. */
  png_set_user_limits (self->png, PNG_UINT_31_MAX, PNG_UINT_31_MAX);
  png_set_chunk_malloc_max (self->png, BB_PNG_MAX_PROFILE);
  png_set_benign_errors (self->png, 0);
  /* A chunk that seems to be one that can be left out may be another that is damaged. */
  png_set_crc_action (self->png, PNG_CRC_ERROR_QUIT, PNG_CRC_ERROR_QUIT);
  /* Little CMS judges profiles; libpng's list of known ones is not needed. */
  png_set_option (self->png, PNG_SKIP_sRGB_CHECK_PROFILE, PNG_OPTION_ON);
  png_set_keep_unknown_chunks (self->png, PNG_HANDLE_CHUNK_NEVER, NULL, -1);
  png_set_keep_unknown_chunks (self->png, PNG_HANDLE_CHUNK_AS_DEFAULT, used_chunks,
                               self->form == BB_PNG_FORM_COUNTABLE ? N_USED_CHUNKS - 1 : N_USED_CHUNKS);
}

/**
 * _bb_png_make_decoder:
 * @self: a reader whose signature was taken
 *
 * Sets libpng up.
 *
 * Returns: %FALSE if there is no memory for it; the error is kept
 */
gboolean
_bb_png_make_decoder (BbPng *self)
{
  self->png = png_create_read_struct_2 (PNG_LIBPNG_VER_STRING, self, on_error, on_warning, self, take_memory,
                                        free_memory);
  if (self->png != NULL)
    self->info = png_create_info_struct (self->png);
  if (self->info == NULL)
    {
      self->out_of_memory = TRUE;
      _bb_png_check_memory (self);
    }

  return self->error == NULL;
}
