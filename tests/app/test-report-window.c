/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-test"

#include "bb-report-window.h"

#include <glib/gstdio.h>
#include <string.h>

#include "app-helpers.h"
#include "bb-document-view.h"
#include "paper.h"
#include "store-helpers.h"

/* A report as a person makes it: chosen, looked at, saved; and what is said where that does not work. */

typedef struct {
  BbSession *session;
  GtkWidget *window;
  BbDocumentView *view;
  char *folder;
  char *said;
  guint n_shown;
} Fixture;

static void
say_cb (Fixture    *self,
        const char *text)
{
  g_free (self->said);
  self->said = g_strdup (text);
}

static void
shown_cb (Fixture *self)
{
  self->n_shown++;
}

static gboolean
has_shown (gpointer data)
{
  return ((Fixture *) data)->n_shown > 0;
}

static gboolean
has_said (gpointer data)
{
  return ((Fixture *) data)->said != NULL;
}

static void
set_up (Fixture       *self,
        gconstpointer  data)
{
  g_autofree char *path = helper_new_path ();
  BbBook *book = helper_create (path);
  Shop *shop = helper_fill (book);
  gint64 revision = shop->revision->id;

  (void) data;
  helper_add_passed (book, revision, 2);
  helper_shop_free (shop);
  helper_close (book);
  self->session = helper_open_session (path);
  self->folder = g_dir_make_tmp ("report-XXXXXX", NULL);
  self->window = bb_report_window_new (NULL, self->session, revision, 0);
  self->view = helper_find_widget (self->window, BB_TYPE_DOCUMENT_VIEW);
  g_signal_connect_swapped (self->view, "say", G_CALLBACK (say_cb), self);
  g_signal_connect_swapped (self->view, "shown", G_CALLBACK (shown_cb), self);
  gtk_window_present (GTK_WINDOW (self->window));
  helper_wait_until (has_shown, self);
}

static void
tear_down (Fixture       *self,
           gconstpointer  data)
{
  g_autoptr (GDir) folder = g_dir_open (self->folder, 0, NULL);
  const char *name = NULL;

  (void) data;
  g_object_ref (self->window);
  gtk_window_destroy (GTK_WINDOW (self->window));
  helper_finalize (self->window);
  helper_end_session (self->session);
  while ((name = g_dir_read_name (folder)) != NULL)
    {
      g_autofree char *path = g_build_filename (self->folder, name, NULL);

      g_unlink (path);
    }
  g_rmdir (self->folder);
  g_free (self->folder);
  g_free (self->said);
}

/* Saves, and waits for what is said of it. */
static const char *
save (Fixture    *self,
      const char *name,
      gboolean    as_pdf)
{
  g_autofree char *path = g_build_filename (self->folder, name, NULL);
  g_autoptr (GFile) file = g_file_new_for_path (path);

  g_clear_pointer (&self->said, g_free);
  bb_document_view_save (self->view, file, as_pdf);
  helper_wait_until (has_said, self);

  return self->said;
}

static char *
read_text (Fixture    *self,
           const char *name)
{
  g_autofree char *path = g_build_filename (self->folder, name, NULL);
  g_autoptr (GError) error = NULL;
  g_autoptr (GMappedFile) file = g_mapped_file_new (path, FALSE, &error);
  g_autoptr (GBytes) pdf = NULL;

  g_assert_no_error (error);
  pdf = g_mapped_file_get_bytes (file);

  return paper_read_text (pdf);
}

/* The drop-downs in the order of the window: revision, specimens, paper, units. */
static GtkDropDown *
find_drop_down (GtkWidget *within,
                guint     *n_left)
{
  if (GTK_IS_DROP_DOWN (within))
    return (*n_left)-- == 0 ? GTK_DROP_DOWN (within) : NULL;
  for (GtkWidget *child = gtk_widget_get_first_child (within); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    {
      GtkDropDown *found = find_drop_down (child, n_left);

      if (found != NULL)
        return found;
    }

  return NULL;
}

static void
choose (Fixture *self,
        guint    drop_down,
        guint    position)
{
  gtk_drop_down_set_selected (find_drop_down (self->window, &drop_down), position);
}

/* What is typed is saved at once, also where its pages are not drawn yet. */
static void
test_saved_as_it_is_chosen (Fixture       *self,
                            gconstpointer  data)
{
  GtkEditable *customer = helper_find_widget (self->window, GTK_TYPE_ENTRY);
  GtkTextView *remark = helper_find_widget (self->window, GTK_TYPE_TEXT_VIEW);
  g_autofree char *text = NULL;
  g_autofree char *other = NULL;

  (void) data;
  g_assert_cmpuint (bb_document_view_get_n_pages (self->view), >, 1);
  gtk_editable_set_text (customer, "Fernside <Choir> & Co");
  gtk_text_buffer_set_text (gtk_text_view_get_buffer (remark), "Kept for five years.", -1);
  g_assert_nonnull (strstr (save (self, "all.pdf", TRUE), "all.pdf"));
  text = read_text (self, "all.pdf");
  g_assert_nonnull (strstr (text, "Made for Fernside <Choir> & Co"));
  g_assert_nonnull (strstr (text, "Kept for five years."));
  g_assert_nonnull (strstr (text, "2 of 2 passed"));
  g_assert_nonnull (strstr (text, "g/m²"));

  /* One specimen, on American paper and in American units. */
  self->n_shown = 0;
  choose (self, 1, 1);
  choose (self, 2, 1);
  choose (self, 3, 1);
  helper_wait_until (has_shown, self);
  save (self, "one.pdf", TRUE);
  other = read_text (self, "one.pdf");
  g_assert_nonnull (strstr (other, "specimen W-1"));
  g_assert_null (strstr (other, "2 of 2 passed"));
  g_assert_null (strstr (other, "g/m²"));
}

static void
test_pictures (Fixture       *self,
               gconstpointer  data)
{
  const guint n_pages = bb_document_view_get_n_pages (self->view);
  g_autofree char *taken = g_build_filename (self->folder, "taken-2.png", NULL);
  g_autoptr (GError) error = NULL;

  (void) data;
  g_assert_nonnull (strstr (save (self, "pages.png", FALSE), "pages-1.png"));
  for (guint i = 1; i <= n_pages; i++)
    {
      g_autofree char *name = g_strdup_printf ("pages-%u.png", i);
      g_autofree char *path = g_build_filename (self->folder, name, NULL);

      g_assert_true (g_file_test (path, G_FILE_TEST_IS_REGULAR));
    }

  /* Nobody agreed to replace a file that was not named: none is written. */
  g_assert_true (g_file_set_contents (taken, "mine", -1, &error));
  g_assert_nonnull (strstr (save (self, "taken.png", FALSE), "taken-2.png exists already"));
  g_free (g_steal_pointer (&taken));
  taken = g_build_filename (self->folder, "taken-1.png", NULL);
  g_assert_false (g_file_test (taken, G_FILE_TEST_EXISTS));
}

static void
test_what_fails_is_said (Fixture       *self,
                         gconstpointer  data)
{
  (void) data;
  g_assert_true (g_str_has_prefix (save (self, "no-folder/report.pdf", TRUE), "It was not saved: "));
  g_assert_true (g_str_has_prefix (save (self, "no-folder/report.png", FALSE), "It was not saved: "));
  /* A folder of that name. */
  g_assert_true (g_str_has_prefix (save (self, "", TRUE), "It was not saved: "));
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, G_TEST_OPTION_ISOLATE_DIRS, NULL);
  adw_init ();

#define ADD(path, func) g_test_add (path, Fixture, NULL, set_up, func, tear_down)
  ADD ("/report-window/saved-as-it-is-chosen", test_saved_as_it_is_chosen);
  ADD ("/report-window/pictures", test_pictures);
  ADD ("/report-window/what-fails-is-said", test_what_fails_is_said);
#undef ADD

  return g_test_run ();
}
