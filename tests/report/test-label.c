/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bb-label.h"

#include <glib/gstdio.h>
#include <string.h>

#include "bb-error.h"
#include "bb-qr.h"

typedef struct {
  char *folder;
  char *path;
} Fixture;

static void
set_up (Fixture      *self,
        gconstpointer unused G_GNUC_UNUSED)
{
  g_autoptr (GError) error = NULL;

  self->folder = g_dir_make_tmp ("label-XXXXXX", &error);
  g_assert_no_error (error);
  self->path = g_build_filename (self->folder, "labels.pdf", NULL);
}

static void
tear_down (Fixture      *self,
           gconstpointer unused G_GNUC_UNUSED)
{
  g_autofree char *picture = g_build_filename (self->folder, "page.png", NULL);

  g_unlink (picture);
  g_unlink (self->path);
  g_assert_cmpint (g_rmdir (self->folder), ==, 0);
  g_free (self->folder);
  g_free (self->path);
}

/* What a program of another house says of the file. */
static char *
ask (const char * const *argv)
{
  g_autoptr (GError) error = NULL;
  char *answer = NULL;
  int status = 0;

  g_spawn_sync (NULL, (char **) argv, NULL, G_SPAWN_SEARCH_PATH | G_SPAWN_STDERR_TO_DEV_NULL, NULL, NULL, &answer, NULL,
                &status, &error);
  g_assert_no_error (error);
  g_assert_cmpint (status, ==, 0);

  return answer;
}

static GPtrArray *
make_labels (guint n)
{
  GPtrArray *labels = g_ptr_array_new_with_free_func ((GDestroyNotify) bb_label_free);

  for (guint i = 0; i < n; i++)
    {
      g_autofree char *code = g_strdup_printf ("2610-%02u", i + 1);

      g_ptr_array_add (labels, bb_label_new (BB_TAG_SPECIMEN, code, "Kilnhood pullover hoodie, black, tunnel cure",
                                             "1:2, 160 g/m²\nISO 6330, 20 washes"));
    }

  return labels;
}

/* Takes the labels; whether there is a file now. */
static gboolean
save (Fixture              *self,
      const BbLabelLayout  *layout,
      GPtrArray            *labels,
      guint                 skip,
      GError              **error)
{
  g_autoptr (BbLabelSheets) sheets = bb_label_sheets_new (layout, labels, skip);
  g_autoptr (GBytes) file = bb_label_sheets_to_pdf (sheets, error);

  return file != NULL && g_file_set_contents (self->path, g_bytes_get_data (file, NULL),
                                              (gssize) g_bytes_get_size (file), error);
}

/* Every code of a full sheet is read back by zbar, an independent reader, as an office printer would print it. */
static void
test_codes_read_back (Fixture      *self,
                      gconstpointer layout)
{
  g_autoptr (GPtrArray) labels = make_labels (21);
  g_autoptr (GError) error = NULL;
  g_autofree char *stem = g_build_filename (self->folder, "page", NULL);
  g_autofree char *picture = g_strconcat (stem, ".png", NULL);
  g_autofree char *drawn = NULL;
  g_autofree char *read = NULL;

  g_assert_true (save (self, layout, g_ptr_array_ref (labels), 0, &error));
  g_assert_no_error (error);
  drawn = ask ((const char *[]) { "pdftoppm", "-gray", "-png", "-singlefile", "-r", "300", self->path, stem, NULL });
  read = ask ((const char *[]) { "zbarimg", "-q", "--nodbus", "--raw", "-Sdisable", "-Sqrcode.enable", picture,
                                 NULL });
  for (guint i = 0; i < labels->len; i++)
    {
      const BbLabel *label = g_ptr_array_index (labels, i);

      g_assert_nonnull (strstr (read, label->tag));
    }
}

static void
test_papers (Fixture      *self,
             gconstpointer unused G_GNUC_UNUSED)
{
  const struct {
    const BbLabelLayout *layout;
    guint n;
    guint skip;
    const char *pages;
    const char *size;
  } rows[] = {
    { &bb_label_layout_a4, 24, 0, "Pages:           1\n", "595.276 x 841.89 pts (A4)" },
    { &bb_label_layout_a4, 25, 0, "Pages:           2\n", "595.276 x 841.89 pts (A4)" },
    { &bb_label_layout_a4, 1, 23, "Pages:           1\n", "595.276 x 841.89 pts (A4)" },
    { &bb_label_layout_a4, 2, 23, "Pages:           2\n", "595.276 x 841.89 pts (A4)" },
    { &bb_label_layout_letter, 21, 0, "Pages:           1\n", "612 x 792 pts (letter)" },
    { &bb_label_layout_letter, 22, 0, "Pages:           2\n", "612 x 792 pts (letter)" },
  };

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autoptr (GPtrArray) labels = make_labels (rows[i].n);
      g_autoptr (GError) error = NULL;
      g_autofree char *info = NULL;

      g_assert_true (save (self, rows[i].layout, g_ptr_array_ref (labels), rows[i].skip, &error));
      g_assert_no_error (error);
      info = ask ((const char *[]) { "pdfinfo", self->path, NULL });
      g_assert_nonnull (strstr (info, rows[i].pages));
      g_assert_nonnull (strstr (info, rows[i].size));
    }
}

static void
test_words (Fixture      *self,
            gconstpointer unused G_GNUC_UNUSED)
{
  g_autoptr (GPtrArray) labels = g_ptr_array_new_with_free_func ((GDestroyNotify) bb_label_free);
  g_autoptr (GError) error = NULL;
  g_autofree char *words = NULL;

  g_ptr_array_add (labels, bb_label_new (BB_TAG_JOB, "1042", "Želva & Söhne: club hoodies", "Due 3 Dec 2026"));
  g_ptr_array_add (labels, bb_label_new (BB_TAG_LOT, "B77", "Bittern", NULL));
  g_assert_true (save (self, &bb_label_layout_a4, g_ptr_array_ref (labels), 0, &error));
  g_assert_no_error (error);
  words = ask ((const char *[]) { "pdftotext", "-raw", self->path, "-", NULL });
  g_assert_nonnull (strstr (words, "JOB 1042\n"));
  g_assert_nonnull (strstr (words, "Želva & Söhne"));
  g_assert_nonnull (strstr (words, "Due 3 Dec 2026\n"));
  g_assert_nonnull (strstr (words, "LOT B77\n"));
}

static void
test_refuses (Fixture      *self,
              gconstpointer unused G_GNUC_UNUSED)
{
  g_autoptr (GPtrArray) labels = g_ptr_array_new_with_free_func ((GDestroyNotify) bb_label_free);
  g_autofree char *code = g_strnfill (3000, 'X');
  g_autoptr (GError) too_long = NULL;
  g_autoptr (GError) empty = NULL;

  g_assert_null (bb_qr_new ("", &empty));
  g_assert_error (empty, BB_MODEL_ERROR, BB_MODEL_ERROR_VALUE);

  g_ptr_array_add (labels, bb_label_new (BB_TAG_JOB, "1", "One", NULL));
  g_ptr_array_add (labels, bb_label_new (BB_TAG_JOB, code, "Too long", NULL));
  g_assert_false (save (self, &bb_label_layout_a4, g_steal_pointer (&labels), 0, &too_long));
  g_assert_error (too_long, BB_MODEL_ERROR, BB_MODEL_ERROR_VALUE);
}

#define ADD(path, data, function) g_test_add (path, Fixture, data, set_up, function, tear_down)

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);

  ADD ("/label/codes-read-back/a4", &bb_label_layout_a4, test_codes_read_back);
  ADD ("/label/codes-read-back/letter", &bb_label_layout_letter, test_codes_read_back);
  ADD ("/label/papers", NULL, test_papers);
  ADD ("/label/words", NULL, test_words);
  ADD ("/label/refuses", NULL, test_refuses);

  return g_test_run ();
}
