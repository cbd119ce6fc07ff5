/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-test"

#include <string.h>

#include "memory.h"
#include "pictures.h"

/*
 * The pictures of PngSuite, held against what other decoders read in them: pngsuite/expected.csv, by make-expected.py.
 * Its broken ones, and files with which PNG decoders were once made to crash or to take all memory, have to be refused.
 */

/* Common practice, no source: for files of less than 1 KiB, whose largest picture has 32 × 32 pixels. */
#define MAX_BYTES (1024 * 1024)
#define MAX_SECONDS 2.0

static char *
file_path (const char *folder,
           const char *name)
{
  g_autofree char *base = g_strconcat (name, ".png", NULL);

  return g_test_build_filename (G_TEST_DIST, "image", folder, base, NULL);
}

/* The lines of a picture: name, width, height, pixels a metre across and along, gamma, SHA-256 of its RGBA. */
static GStrv
load_expected (void)
{
  g_autofree char *path = g_test_build_filename (G_TEST_DIST, "image", "pngsuite", "expected.csv", NULL);
  g_autofree char *text = NULL;
  g_autoptr (GError) error = NULL;

  g_file_get_contents (path, &text, NULL, &error);
  g_assert_no_error (error);
  g_strchomp (text);

  return g_strsplit (strchr (text, '\n') + 1, "\n", -1);
}

static void
check_picture (GStrv     expected,
               BbPngForm form)
{
  g_autofree char *path = file_path ("pngsuite", expected[0]);
  g_autofree char *hash = NULL;
  g_autoptr (GError) error = NULL;
  g_autoptr (BbPng) png = bb_png_new_for_file (path, form, &error);
  g_autoptr (Plane) plane = NULL;
  const BbPngInfo *info = NULL;

  g_assert_no_error (error);
  info = bb_png_get_info (png);
  g_assert_cmpuint (info->width, ==, g_ascii_strtoull (expected[1], NULL, 10));
  g_assert_cmpuint (info->height, ==, g_ascii_strtoull (expected[2], NULL, 10));
  g_assert_cmpuint (info->pixels_per_metre_x, ==, g_ascii_strtoull (expected[3], NULL, 10));
  g_assert_cmpuint (info->pixels_per_metre_y, ==, g_ascii_strtoull (expected[4], NULL, 10));
  g_assert_cmpfloat_with_epsilon (info->gamma, g_ascii_strtod (expected[5], NULL), 1e-9);
  plane = plane_read (png, &error);
  g_assert_no_error (error);
  hash = g_compute_checksum_for_data (G_CHECKSUM_SHA256, plane->pixels, (gsize) 4 * plane->width * plane->height);
  if (!g_str_equal (hash, expected[6]))
    g_error ("%s: other decoders read other pixels in form %d", expected[0], form);
}

static void
test_valid (void)
{
  g_auto (GStrv) lines = load_expected ();

  g_assert_cmpuint (g_strv_length (lines), ==, 161);
  for (guint i = 0; lines[i] != NULL; i++)
    {
      g_auto (GStrv) expected = g_strsplit (lines[i], ",", -1);

      g_assert_cmpuint (g_strv_length (expected), ==, 7);
      for (BbPngForm form = BB_PNG_FORM_COUNTABLE; form <= BB_PNG_FORM_DEEP; form++)
        check_picture (expected, form);
    }
}

static void
ignore_row (G_GNUC_UNUSED const BbPngRow *row,
            G_GNUC_UNUSED gpointer        data)
{
}

/* Reads a file in all forms, within the limits of memory and time. The part is what follows the file's name in
 * the message; NULL where the file reads. */
static void
check_file (const char *folder,
            const char *name,
            const char *part)
{
  g_autofree char *path = file_path (folder, name);
  g_autoptr (GTimer) timer = g_timer_new ();

  for (BbPngForm form = BB_PNG_FORM_COUNTABLE; form <= BB_PNG_FORM_DEEP; form++)
    {
      g_autoptr (GError) error = NULL;
      g_autoptr (BbPng) png = NULL;
      Memory memory;

      memory_begin (0, 0);
      png = bb_png_new_for_file (path, form, &error);
      if (png != NULL)
        bb_png_read (png, ignore_row, NULL, NULL, &error);
      memory = memory_end ();
      g_assert_cmpuint (memory.n_bytes, <, MAX_BYTES);
      if (part == NULL)
        g_assert_no_error (error);
      else if (error == NULL || error->domain != BB_IMAGE_ERROR || !g_str_has_prefix (error->message, path) ||
               !g_str_has_prefix (error->message + strlen (path), part))
        g_error ("%s: not \"%s\" but \"%s\"", name, part, error != NULL ? error->message : "read");
    }
  g_assert_cmpfloat (g_timer_elapsed (timer, NULL), <, MAX_SECONDS);
}

/* What is wrong with each is told by PngSuite's documentation, "Corrupted files". */
static void
test_broken (void)
{
  static const struct {
    const char *name;
    const char *part;
  } files[] = {
    { "xc1n0g08", ": the PNG is damaged: Invalid color type in IHDR" },
    { "xc9n2c08", ": the PNG is damaged: Invalid color type in IHDR" },
    { "xcrn0g04", ": begins as a PNG picture does, but was changed" },
    { "xcsn0g01", ": the PNG is damaged: IDAT: CRC error" },
    { "xd0n2c08", ": the PNG is damaged: Invalid bit depth in IHDR" },
    { "xd3n2c08", ": the PNG is damaged: Invalid bit depth in IHDR" },
    { "xd9n2c08", ": the PNG is damaged: Invalid bit depth in IHDR" },
    { "xdtn0g01", ": the PNG is damaged: IEND: out of place" },
    { "xhdn0g08", ": the PNG is damaged: IHDR: CRC error" },
    { "xlfn0g04", ": begins as a PNG picture does, but was changed" },
    { "xs1n0g01", ": is not a PNG picture" },
    { "xs2n0g01", ": is not a PNG picture" },
    { "xs4n0g01", ": is not a PNG picture" },
    { "xs7n0g01", ": begins as a PNG picture does, but was changed" },
  };

  for (guint i = 0; i < G_N_ELEMENTS (files); i++)
    check_file ("pngsuite", files[i].name, files[i].part);
}

/* Chunks that claim 1 GiB are refused before they are read, or before there is room for them. */
static void
test_crashers (void)
{
  static const struct {
    const char *name;
    const char *part;
  } files[] = {
    { "bad_iCCP", ": the PNG is damaged: IHDR: CRC error" },
    { "badadler", ": the PNG is damaged: IDAT: incorrect data check" },
    { "badcrc", ": the PNG is damaged: IDAT: CRC error" },
    { "empty_ancillary_chunks", NULL },
    /* too large and cut short: which of them libpng minds first depends on its version */
    { "huge_IDAT", ": the " },
    { "invalid_gray_alpha_sbit", ": the PNG is damaged: sBIT: CRC error" },
    /* a chunk of no known kind, and no palette: so does this */
    { "missing_plte", ": the PNG is damaged: " },
    { "zero_gama", ": the " },
    { "zero_width", ": the PNG is damaged: Image width is zero in IHDR" },
  };
  static const char * const chunks[] = { "bKGD_chunk", "cHRM_chunk", "eXIf_chunk", "gAMA_chunk", "hIST_chunk",
    "iCCP_chunk", "iTXt_chunk", "juNK_unsafe_to_copy", "juNk_safe_to_copy", "pCAL_chunk", "pHYs_chunk", "sCAL_chunk",
    "sPLT_chunk", "sRGB_chunk", "sTER_chunk", "tEXt_chunk", "tIME_chunk", "zTXt_chunk" };

  for (guint i = 0; i < G_N_ELEMENTS (files); i++)
    check_file ("crashers", files[i].name, files[i].part);
  for (guint i = 0; i < G_N_ELEMENTS (chunks); i++)
    {
      g_autofree char *name = g_strconcat ("huge_", chunks[i], NULL);
      g_autofree char *part = g_strdup_printf (": its chunk %.4s claims 1073741823 bytes, the maximum is 33554432",
                                               chunks[i]);

      check_file ("crashers", name, part);
    }
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/pngsuite/valid", test_valid);
  g_test_add_func ("/pngsuite/broken", test_broken);
  g_test_add_func ("/pngsuite/crashers", test_crashers);

  return g_test_run ();
}
