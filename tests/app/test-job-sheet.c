/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-test"

#include <glib/gstdio.h>
#include <string.h>

#include "app-helpers.h"
#include "bb-document-view.h"
#include "bb-job-sheet-window.h"
#include "paper.h"
#include "store-helpers.h"

/* The sheet of a job in its window, and saved from there. */

typedef struct {
  char *said;
  guint n_shown;
} Heard;

static void
say_cb (Heard      *self,
        const char *text)
{
  g_free (self->said);
  self->said = g_strdup (text);
}

static void
shown_cb (Heard *self)
{
  self->n_shown++;
}

static gboolean
has_shown (gpointer data)
{
  return ((Heard *) data)->n_shown > 0;
}

static gboolean
has_said (gpointer data)
{
  return ((Heard *) data)->said != NULL;
}

static BbSession *
open_job (BbJob **job)
{
  g_autofree char *path = helper_new_path ();
  BbBook *book = helper_create (path);
  g_autoptr (Shop) shop = helper_fill (book);

  helper_fill_jobs (book, shop);
  *job = bb_record_copy (&bb_job_table, shop->job);
  helper_close (book);

  return helper_open_session (path);
}

static void
check_saved (const char *path)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GMappedFile) file = g_mapped_file_new (path, FALSE, &error);
  g_autoptr (GBytes) pdf = NULL;
  g_autofree char *text = NULL;

  g_assert_no_error (error);
  pdf = g_mapped_file_get_bytes (file);
  text = paper_read_text (pdf);
  g_assert_nonnull (strstr (text, "Job sheet"));
  g_assert_nonnull (strstr (text, "2503-01.1"));
}

static void
test_saved (void)
{
  g_autoptr (BbJob) job = NULL;
  BbSession *session = open_job (&job);
  g_autofree char *folder = g_dir_make_tmp ("sheet-XXXXXX", NULL);
  g_autofree char *path = g_build_filename (folder, "sheet.pdf", NULL);
  g_autoptr (GFile) file = g_file_new_for_path (path);
  GtkWidget *window = bb_job_sheet_window_new (NULL, session, job);
  BbDocumentView *view = helper_find_widget (window, BB_TYPE_DOCUMENT_VIEW);
  Heard heard = { NULL, 0 };

  g_signal_connect_swapped (view, "say", G_CALLBACK (say_cb), &heard);
  g_signal_connect_swapped (view, "shown", G_CALLBACK (shown_cb), &heard);
  gtk_window_present (GTK_WINDOW (window));
  helper_wait_until (has_shown, &heard);
  g_assert_cmpuint (bb_document_view_get_n_pages (view), >=, 1);
  g_assert_nonnull (strstr (gtk_window_get_title (GTK_WINDOW (window)), "2503-01"));

  bb_document_view_save (view, file, TRUE);
  helper_wait_until (has_said, &heard);
  check_saved (path);

  g_object_ref (window);
  gtk_window_destroy (GTK_WINDOW (window));
  helper_finalize (window);
  helper_end_session (session);
  g_unlink (path);
  g_rmdir (folder);
  g_free (heard.said);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, G_TEST_OPTION_ISOLATE_DIRS, NULL);
  adw_init ();

  g_test_add_func ("/job-sheet/saved", test_saved);

  return g_test_run ();
}
