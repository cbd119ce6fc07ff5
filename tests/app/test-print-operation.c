/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-test"

#include "bb-print-operation.h"

#include <string.h>

#include "paper.h"

static BbDocument *
make_document (void)
{
  const BbColumn columns[] = { { "Number", 1, TRUE }, { "Word", 3, FALSE } };
  BbDocument *document = bb_document_new ("Printed", "Left above", "Right above", "Below");
  BbBlock *table = bb_table_new (columns, G_N_ELEMENTS (columns));

  for (guint i = 0; i < 120; i++)
    {
      g_autofree char *number = g_strdup_printf ("row%u.", i);
      const char *cells[] = { number, "word", NULL };

      bb_table_add (table, (GStrv) (gpointer) cells, NULL);
    }
  bb_document_take (document, table);

  return document;
}

/* Prints into a PDF, and reads what is on it. */
static void
print_and_read (GtkPrintOperation  *operation,
                const char         *name,
                char              **text,
                char              **facts)
{
  g_autofree char *path = g_build_filename (g_get_user_cache_dir (), name, NULL);
  g_autoptr (GMappedFile) file = NULL;
  g_autoptr (GBytes) pdf = NULL;
  g_autoptr (GError) error = NULL;

  g_assert_cmpint (g_mkdir_with_parents (g_get_user_cache_dir (), 0700), ==, 0);
  gtk_print_operation_set_export_filename (operation, path);
  g_assert_cmpint (gtk_print_operation_run (operation, GTK_PRINT_OPERATION_ACTION_EXPORT, NULL, &error), ==,
                   GTK_PRINT_OPERATION_RESULT_APPLY);
  g_assert_no_error (error);

  file = g_mapped_file_new (path, FALSE, &error);
  g_assert_no_error (error);
  pdf = g_mapped_file_get_bytes (file);
  *text = paper_read_text (pdf);
  *facts = paper_read_facts (pdf);
}

/* On the paper of the printer's page setup, as many pages as it takes there. */
static void
test_print (gconstpointer data)
{
  const char *paper = data;
  BbPrintOperation *made = bb_print_operation_new_document (make_document (), BB_PAPER_A4);
  GtkPrintOperation *operation = GTK_PRINT_OPERATION (made);
  GtkPageSetup *setup = gtk_page_setup_new ();
  GtkPaperSize *size = gtk_paper_size_new (paper);
  g_autoptr (BbDocument) same = make_document ();
  guint n_pages = bb_document_lay_out (same, gtk_paper_size_get_width (size, GTK_UNIT_POINTS),
                                       gtk_paper_size_get_height (size, GTK_UNIT_POINTS));
  g_autofree char *last = g_strdup_printf ("Page %u of %u", n_pages, n_pages);
  g_autofree char *text = NULL;
  g_autofree char *facts = NULL;

  gtk_page_setup_set_paper_size (setup, size);
  gtk_print_operation_set_default_page_setup (operation, setup);
  print_and_read (operation, "print.pdf", &text, &facts);
  g_assert_nonnull (strstr (text, "row0."));
  g_assert_nonnull (strstr (text, "row119."));
  g_assert_nonnull (strstr (text, last));
  g_assert_nonnull (strstr (facts, strstr (paper, "a4") != NULL ? "595" : "612"));

  gtk_paper_size_free (size);
  g_object_unref (setup);
  g_assert_finalize_object (operation);
}

static BbLabelSheets *
make_sheets (const char *code,
             guint       n)
{
  GPtrArray *labels = g_ptr_array_new_with_free_func ((GDestroyNotify) bb_label_free);

  for (guint i = 0; i < n; i++)
    g_ptr_array_add (labels, bb_label_new (BB_TAG_JOB, code, "Choir", NULL));

  return bb_label_sheets_new (&bb_label_layout_letter, labels, 20);
}

static void
failed_cb (char         **failed,
           const GError  *error)
{
  g_free (*failed);
  *failed = g_strdup (error->message);
}

/* Labels come on the sheets they are laid out for: one on what is left of the first, the other on the second. */
static void
test_labels (void)
{
  BbPrintOperation *operation = bb_print_operation_new_labels (make_sheets ("1042", 2), "Labels");
  g_autofree char *failed = NULL;
  g_autofree char *text = NULL;
  g_autofree char *facts = NULL;

  g_signal_connect_swapped (operation, "failed", G_CALLBACK (failed_cb), &failed);
  print_and_read (GTK_PRINT_OPERATION (operation), "labels.pdf", &text, &facts);
  g_assert_null (failed);
  g_assert_nonnull (strstr (text, "JOB 1042"));
  g_assert_nonnull (strstr (facts, "Pages:           2\n"));
  g_assert_nonnull (strstr (facts, "612 x 792"));
  g_assert_finalize_object (operation);
}

/* A code that no square has room for is said, and not printed without it. */
static void
test_failed (void)
{
  g_autofree char *path = g_build_filename (g_get_user_cache_dir (), "failed.pdf", NULL);
  g_autofree char *code = g_strnfill (3000, 'X');
  BbPrintOperation *operation = bb_print_operation_new_labels (make_sheets (code, 1), "Labels");
  g_autofree char *failed = NULL;

  g_assert_cmpint (g_mkdir_with_parents (g_get_user_cache_dir (), 0700), ==, 0);
  g_signal_connect_swapped (operation, "failed", G_CALLBACK (failed_cb), &failed);
  gtk_print_operation_set_export_filename (GTK_PRINT_OPERATION (operation), path);
  gtk_print_operation_run (GTK_PRINT_OPERATION (operation), GTK_PRINT_OPERATION_ACTION_EXPORT, NULL, NULL);
  g_assert_nonnull (failed);
  g_assert_finalize_object (operation);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, G_TEST_OPTION_ISOLATE_DIRS, NULL);
  gtk_init ();

  g_test_add_data_func ("/print-operation/a4", GTK_PAPER_NAME_A4, test_print);
  g_test_add_data_func ("/print-operation/letter", GTK_PAPER_NAME_LETTER, test_print);
  g_test_add_func ("/print-operation/labels", test_labels);
  g_test_add_func ("/print-operation/failed", test_failed);

  return g_test_run ();
}
