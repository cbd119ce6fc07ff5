/* SPDX-License-Identifier: GPL-3.0-or-later */

/* For mkfifo(). */
#define _POSIX_C_SOURCE 200809L

#define G_LOG_DOMAIN "bb-test"

#include <glib/gstdio.h>
#include <string.h>
#include <sys/stat.h>

#include "pictures.h"

/* What the reader refuses, and how it says so. Every message is one line that begins with the file's name. */

static const BbPngForm forms[] = { BB_PNG_FORM_COUNTABLE, BB_PNG_FORM_RGBA, BB_PNG_FORM_DEEP };

static void
ignore_row (G_GNUC_UNUSED const BbPngRow *row,
            G_GNUC_UNUSED gpointer        data)
{
}

static gboolean
reads (GBytes    *bytes,
       BbPngForm  form,
       GError   **error)
{
  g_autoptr (BbPng) png = bb_png_new_for_bytes (bytes, "a picture", form, error);

  return png != NULL && bb_png_read (png, ignore_row, NULL, NULL, error);
}

static void
assert_message (const GError *error,
                BbImageError  code,
                const char   *part)
{
  g_assert_nonnull (error);
  g_assert_error (error, BB_IMAGE_ERROR, (int) code);
  g_assert_true (g_str_has_prefix (error->message, "a picture: "));
  g_assert_null (strchr (error->message, '\n'));
  if (strstr (error->message, part) == NULL)
    g_error ("\"%s\" does not say \"%s\"", error->message, part);
}

static void
assert_refused (GBytes      *bytes,
                BbImageError code,
                const char  *part)
{
  for (guint i = 0; i < G_N_ELEMENTS (forms); i++)
    {
      g_autoptr (GError) error = NULL;

      g_assert_false (reads (bytes, forms[i], &error));
      assert_message (error, code, part);
    }
}

static void
test_other_formats (void)
{
  static const struct {
    const char *bytes;
    gsize length;
    const char *part;
  } others[] = {
    { "", 0, "is empty" },
    { "\xff\xd8\xff\xe0\0\x10JFIF", 11, "is a JPEG picture, not a PNG" },
    { "GIF89a\1\0\1\0", 10, "is a GIF picture, not a PNG" },
    { "II*\0\x08\0\0\0\0", 9, "is a TIFF picture, not a PNG" },
    { "MM\0*\0\0\0\x08\0", 9, "is a TIFF picture, not a PNG" },
    { "%PDF-1.7 1 0 obj", 16, "is a PDF document, not a PNG" },
    { "<svg xmlns=\"\"/>", 15, "is a text like SVG or HTML, not a PNG" },
    { "RIFF\0\0\0\0WEBP", 12, "is a WebP picture or something else, not a PNG" },
    { "\x89PNG\n\x1a\n\0\0\0\r", 12, "was changed or cut short on its way" },
    { "\x89PNG\r\n", 6, "was changed or cut short on its way" },
    { "\x89PNQ\r\n\x1a\n", 8, "is not a PNG picture" },
    { "a note", 6, "is not a PNG picture" },
  };

  for (guint i = 0; i < G_N_ELEMENTS (others); i++)
    {
      g_autoptr (GBytes) bytes = g_bytes_new_static (others[i].bytes, others[i].length);

      assert_refused (bytes, BB_IMAGE_ERROR_NOT_PNG, others[i].part);
    }
}

static void
test_files (void)
{
  static const struct {
    const char *base;
    const char *part;
  } files[] = {
    { "missing.png", "missing.png: No such file or directory" },
    { "folder.png", "folder.png: is a folder, not a picture" },
    { "pipe.png", "pipe.png: is not a plain file" },
  };
  g_autofree char *folder = g_dir_make_tmp ("test-png-XXXXXX", NULL);
  g_autofree char *inner = g_build_filename (folder, "folder.png", NULL);
  g_autofree char *pipe = g_build_filename (folder, "pipe.png", NULL);

  g_assert_cmpint (g_mkdir (inner, 0700), ==, 0);
  g_assert_cmpint (mkfifo (pipe, 0600), ==, 0);
  for (guint i = 0; i < G_N_ELEMENTS (files); i++)
    {
      g_autofree char *path = g_build_filename (folder, files[i].base, NULL);
      g_autoptr (GError) error = NULL;

      g_assert_null (bb_png_new_for_file (path, BB_PNG_FORM_RGBA, &error));
      g_assert_error (error, BB_IMAGE_ERROR, BB_IMAGE_ERROR_READ);
      g_assert_true (g_str_has_prefix (error->message, folder));
      g_assert_true (g_str_has_suffix (error->message, files[i].part));
    }
  g_remove (pipe);
  g_rmdir (inner);
  g_rmdir (folder);
}

/* Whatever is lost at the end of a file is noticed. */
static void
test_cut (void)
{
  static const char * const names[] = { "rgba-8-300ppi", "palette-4-trns-adam7", "grey-16-trns", "rgb-8-wide-profile" };

  for (guint i = 0; i < G_N_ELEMENTS (names); i++)
    {
      g_autoptr (GBytes) whole = picture_load (names[i]);
      g_autoptr (GError) error = NULL;

      for (gsize length = 8; length < g_bytes_get_size (whole); length++)
        {
          g_autoptr (GBytes) cut = g_bytes_new_from_bytes (whole, 0, length);
          g_autofree char *part = g_strdup_printf ("the file ends early, after %" G_GSIZE_FORMAT " bytes", length);

          assert_refused (cut, BB_IMAGE_ERROR_DAMAGED, part);
        }
      g_assert_true (reads (whole, BB_PNG_FORM_DEEP, &error));
      g_assert_no_error (error);
    }
}

/* No chunk of these but has to be right: each has a checksum, and so any byte that changes is noticed. */
static void
test_changed_bytes (void)
{
  static const char * const names[] = { "rgba-8", "palette-4-trns-adam7", "grey-16-trns", "rgb-8-trns", "grey-1" };

  for (guint i = 0; i < G_N_ELEMENTS (names); i++)
    {
      g_autoptr (GBytes) whole = picture_load (names[i]);
      gsize length = 0;
      const guint8 *data = g_bytes_get_data (whole, &length);

      for (gsize at = 0; at < length; at++)
        {
          guint8 *copy = g_memdup2 (data, length);
          g_autoptr (GBytes) changed = g_bytes_new_take (copy, length);
          g_autoptr (GError) error = NULL;

          copy[at] ^= (guint8) (1 << at % 8);
          if (reads (changed, BB_PNG_FORM_COUNTABLE, &error))
            g_error ("%s reads although byte %" G_GSIZE_FORMAT " is wrong", names[i], at);
          g_assert_true (error->domain == BB_IMAGE_ERROR);
        }
    }
}

/* Rows end early although each chunk is whole; and too many rows come. */
static void
test_wrong_amount_of_rows (void)
{
  static const guint8 rows[6 * 6] = { 1, 2, 3 };
  Drawing drawing = { .width = 6, .height = 4, .colour_type = PNG_COLOR_TYPE_GRAY, .bit_depth = 8, .rows = rows,
                      .row_bytes = 6 };
  g_autoptr (GBytes) bytes = drawing_write (&drawing);
  gsize length = 0;
  const guint8 *data = g_bytes_get_data (bytes, &length);
  /* Signature, IHDR of 13 bytes, and then one IDAT and IEND of no bytes. */
  const guint8 *body = data + 8 + 25 + 8;
  gsize body_length = length - (8 + 25 + 8) - 4 - 12;
  const guint8 taller[] = { 0, 0, 0, 6, 0, 0, 0, 5, 8, 0, 0, 0, 0 };
  const guint8 lower[] = { 0, 0, 0, 6, 0, 0, 0, 3, 8, 0, 0, 0, 0 };
  g_autoptr (GBytes) too_few = chunks_write ("IHDR", taller, sizeof taller, "IDAT", body, body_length, "IEND", NULL,
                                             (gsize) 0, NULL);
  g_autoptr (GBytes) too_many = chunks_write ("IHDR", lower, sizeof lower, "IDAT", body, body_length, "IEND", NULL,
                                              (gsize) 0, NULL);

  assert_refused (too_few, BB_IMAGE_ERROR_DAMAGED, "Not enough image data");
  assert_refused (too_many, BB_IMAGE_ERROR_DAMAGED, "Too much image data");
}

/* Limits */

static GBytes *
header_of (guint32 width,
           guint32 height,
           guint8  bit_depth,
           guint8  colour_type)
{
  guint8 header[13] = { 0 };

  for (guint i = 0; i < 4; i++)
    {
      header[i] = (guint8) (width >> (24 - 8 * i));
      header[4 + i] = (guint8) (height >> (24 - 8 * i));
    }
  header[8] = bit_depth;
  header[9] = colour_type;

  return chunks_write ("IHDR", header, sizeof header, "IDAT", "x", (gsize) 1, "IEND", NULL, (gsize) 0, NULL);
}

static void
test_sizes (void)
{
  static const struct {
    guint32 width;
    guint32 height;
    guint8 bit_depth;
    guint8 colour_type;
    BbImageError code;
    const char *part;
  } sizes[] = {
    { 200001, 1, 8, 6, BB_IMAGE_ERROR_LIMIT, "it is 200001 pixels wide, the maximum is 200000" },
    { 0x7fffffff, 0x7fffffff, 16, 6, BB_IMAGE_ERROR_LIMIT, "it is 2147483647 pixels wide, the maximum is 200000" },
    { 0x7fffffff, 1, 1, 0, BB_IMAGE_ERROR_LIMIT, "it is 2147483647 pixels wide" },
    { 200000, 5001, 8, 2, BB_IMAGE_ERROR_LIMIT, "it has 200000 × 5001 pixels, the maximum is 1000000000 in all" },
    { 1, 1000000001, 1, 0, BB_IMAGE_ERROR_LIMIT, "it has 1 × 1000000001 pixels" },
    { 200000, 5000, 8, 6, BB_IMAGE_ERROR_DAMAGED, "Not enough image data" },
    { 0, 5, 8, 6, BB_IMAGE_ERROR_DAMAGED, "Image width is zero in IHDR" },
    { 5, 0, 8, 6, BB_IMAGE_ERROR_DAMAGED, "Image height is zero in IHDR" },
    { 5, 5, 3, 0, BB_IMAGE_ERROR_DAMAGED, "Invalid bit depth in IHDR" },
    { 5, 5, 8, 5, BB_IMAGE_ERROR_DAMAGED, "Invalid color type in IHDR" },
    { 5, 5, 4, 6, BB_IMAGE_ERROR_DAMAGED, "Invalid color type/bit depth combination in IHDR" },
    { 5, 5, 8, 3, BB_IMAGE_ERROR_DAMAGED, "Missing PLTE before IDAT" },
  };

  for (guint i = 0; i < G_N_ELEMENTS (sizes); i++)
    {
      g_autoptr (GBytes) bytes = header_of (sizes[i].width, sizes[i].height, sizes[i].bit_depth,
                                            sizes[i].colour_type);

      assert_refused (bytes, sizes[i].code, sizes[i].part);
    }
}

static const guint8 small_header[] = { 0, 0, 0, 1, 0, 0, 0, 1, 8, 6, 0, 0, 0 };

/* The most memory that this program had claimed at any time, in KiB. */
static guint64
get_peak (void)
{
  g_autofree char *status = NULL;
  const char *line = NULL;

  g_assert_true (g_file_get_contents ("/proc/self/status", &status, NULL, NULL));
  line = strstr (status, "VmPeak:");
  g_assert_nonnull (line);

  return g_ascii_strtoull (line + strlen ("VmPeak:"), NULL, 10);
}

/* A file of 57 bytes whose chunk claims a whole GiB: nothing may be made ready to hold it. */
static void
test_long_chunks (void)
{
  static const char * const names[] = { "tEXt", "zTXt", "iTXt", "sPLT", "iCCP", "PLTE", "tRNS", "pHYs", "gAMA", "eXIf",
                                        "prIv", "IHDR", "IEND" };
  g_autoptr (GBytes) start = chunks_write ("IHDR", small_header, sizeof small_header, NULL);
  guint64 peak = get_peak ();

  for (guint i = 0; i < G_N_ELEMENTS (names); i++)
    {
      g_autoptr (GByteArray) file = g_byte_array_new ();
      g_autoptr (GBytes) bytes = NULL;
      g_autofree char *part = g_strdup_printf ("its chunk %s claims 1073741824 bytes, the maximum is 33554432",
                                               names[i]);

      g_byte_array_append (file, g_bytes_get_data (start, NULL), (guint) g_bytes_get_size (start));
      g_byte_array_append (file, (const guint8 *) "\x40\0\0\0", 4);
      g_byte_array_append (file, (const guint8 *) names[i], 4);
      g_byte_array_append (file, (const guint8 *) "Comment\0 and more", 16);
      g_assert_cmpuint (file->len, ==, 57);
      bytes = g_byte_array_free_to_bytes (g_steal_pointer (&file));
      assert_refused (bytes, BB_IMAGE_ERROR_LIMIT, part);
    }
  g_assert_cmpuint (get_peak () - peak, <, 64 * 1024);
}

/* A chunk within the limit that nobody needs is passed over, whatever is in it. */
static void
test_unused_chunks (void)
{
  g_autofree guint8 *text = g_malloc0 (8 * 1024 * 1024);
  g_autoptr (GBytes) picture = picture_load ("rgba-8");
  const guint8 *data = g_bytes_get_data (picture, NULL);
  gsize length = g_bytes_get_size (picture);
  g_autoptr (GBytes) extra = chunks_write ("tEXt", text, (gsize) (8 * 1024 * 1024), "sBIT", "", (gsize) 0, "bKGD", "x",
                                           (gsize) 1, "pHYs", "x", (gsize) 1, "gAMA", "\0\0\0\0", (gsize) 4, "sRGB",
                                           "\x09", (gsize) 1, "eXIf", "?", (gsize) 1, "prIv", "?", (gsize) 1, NULL);
  GByteArray *file = g_byte_array_new ();
  g_autoptr (GBytes) bytes = NULL;

  g_byte_array_append (file, data, 8 + 25);
  g_byte_array_append (file, (const guint8 *) g_bytes_get_data (extra, NULL) + 8, (guint) g_bytes_get_size (extra) - 8);
  g_byte_array_append (file, data + 8 + 25, (guint) (length - 8 - 25));
  bytes = g_byte_array_free_to_bytes (file);
  for (guint i = 0; i < G_N_ELEMENTS (forms); i++)
    {
      g_autoptr (GError) error = NULL;
      g_autoptr (BbPng) png = bb_png_new_for_bytes (bytes, "a picture", forms[i], &error);

      g_assert_no_error (error);
      g_assert_cmpuint (bb_png_get_info (png)->pixels_per_metre_x, ==, 0);
      g_assert_cmpfloat (bb_png_get_info (png)->gamma, ==, 0);
      g_assert_false (bb_png_get_info (png)->has_srgb);
      g_assert_true (bb_png_read (png, ignore_row, NULL, NULL, &error));
      g_assert_no_error (error);
    }
}

/* Also if it is one that a form passes over and another reads. */
static void
test_first_chunk (void)
{
  static const guint8 header[] = { 0, 0, 0, 1, 0, 0, 0, 1, 8, 0, 0, 0, 0 };
  static const char * const names[] = { "iCCP", "gAMA", "pHYs", "tEXt", "abCd" };
  g_autoptr (GBytes) nothing = chunks_write ("IEND", NULL, (gsize) 0, NULL);

  assert_refused (nothing, BB_IMAGE_ERROR_DAMAGED, "IHDR is not the first chunk");
  for (guint i = 0; i < G_N_ELEMENTS (names); i++)
    {
      g_autoptr (GBytes) bytes = chunks_write (names[i], "x", (gsize) 1, "IHDR", header, sizeof header, "IDAT",
                                               "\x78\x9c\x63\x60\0\0\0\2\0\1", (gsize) 10, "IEND", NULL, (gsize) 0,
                                               NULL);

      assert_refused (bytes, BB_IMAGE_ERROR_DAMAGED, "IHDR is not the first chunk");
    }
}

/* A bad tRNS is refused, as the picture without it is another one; so is a critical chunk that nobody knows. */
static void
test_chunks_that_matter (void)
{
  static const guint8 rgb[] = { 0, 0, 0, 1, 0, 0, 0, 1, 8, 2, 0, 0, 0 };
  static const guint8 palette[] = { 0, 0, 0, 1, 0, 0, 0, 1, 8, 3, 0, 0, 0 };
  g_autoptr (GBytes) short_trns = chunks_write ("IHDR", rgb, sizeof rgb, "tRNS", "xy", (gsize) 2, "IDAT", "x",
                                                (gsize) 1, NULL);
  g_autoptr (GBytes) long_trns = chunks_write ("IHDR", palette, sizeof palette, "PLTE", "abc", (gsize) 3, "tRNS", "xy",
                                               (gsize) 2, "IDAT", "x", (gsize) 1, NULL);
  g_autoptr (GBytes) odd_plte = chunks_write ("IHDR", palette, sizeof palette, "PLTE", "abcd", (gsize) 4, NULL);
  g_autoptr (GBytes) unknown = chunks_write ("IHDR", rgb, sizeof rgb, "ABCD", "x", (gsize) 1, "IDAT", "x", (gsize) 1,
                                             NULL);

  assert_refused (short_trns, BB_IMAGE_ERROR_DAMAGED, "tRNS");
  assert_refused (long_trns, BB_IMAGE_ERROR_DAMAGED, "tRNS");
  assert_refused (odd_plte, BB_IMAGE_ERROR_DAMAGED, "PLTE");
  assert_refused (unknown, BB_IMAGE_ERROR_DAMAGED, "unhandled critical chunk");
}

/* A small chunk that unpacks to a profile of a GiB. */
static void
test_profile_that_grows (void)
{
  g_autofree guint8 *zeros = g_malloc0 (65536);
  guint8 *profile = zeros;
  g_autoptr (GConverter) compressor = G_CONVERTER (g_zlib_compressor_new (G_ZLIB_COMPRESSOR_FORMAT_ZLIB, 9));
  guint8 chunk[4096] = "bomb\0";
  gsize n_read = 0;
  gsize n_written = 0;
  g_autoptr (GBytes) bytes = NULL;
  g_autoptr (BbPng) png = NULL;
  g_autoptr (GError) error = NULL;

  memcpy (profile, "\x40\0\0\0", 4);
  memcpy (profile + 12, "mntrRGB XYZ ", 12);
  memcpy (profile + 36, "acsp", 4);
  g_assert_cmpint (g_converter_convert (compressor, zeros, 65536, chunk + 6, sizeof chunk - 6,
                                        G_CONVERTER_INPUT_AT_END, &n_read, &n_written, &error),
                   ==, G_CONVERTER_FINISHED);
  bytes = chunks_write ("IHDR", small_header, sizeof small_header, "iCCP", chunk, 6 + n_written, "IDAT", "x",
                        (gsize) 1, NULL);
  png = bb_png_new_for_bytes (bytes, "a picture", BB_PNG_FORM_DEEP, &error);
  g_assert_no_error (error);
  g_assert_true (bb_png_get_info (png)->profile_bad);
  g_assert_null (bb_png_get_info (png)->profile);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/png-refusals/other-formats", test_other_formats);
  g_test_add_func ("/png-refusals/files", test_files);
  g_test_add_func ("/png-refusals/cut", test_cut);
  g_test_add_func ("/png-refusals/changed-bytes", test_changed_bytes);
  g_test_add_func ("/png-refusals/wrong-amount-of-rows", test_wrong_amount_of_rows);
  g_test_add_func ("/png-refusals/sizes", test_sizes);
  g_test_add_func ("/png-refusals/long-chunks", test_long_chunks);
  g_test_add_func ("/png-refusals/unused-chunks", test_unused_chunks);
  g_test_add_func ("/png-refusals/first-chunk", test_first_chunk);
  g_test_add_func ("/png-refusals/chunks-that-matter", test_chunks_that_matter);
  g_test_add_func ("/png-refusals/profile-that-grows", test_profile_that_grows);

  return g_test_run ();
}
