/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-test"

#include <glib/gstdio.h>

#include "app-helpers.h"
#include "bb-artwork-panel.h"
#include "bb-entry-row.h"
#include "bb-mix-page.h"
#include "store-helpers.h"

/*
 * The Mix page with an artwork: its size goes into the form, and what is typed there goes back. The artwork is the
 * demo's, whose art box has 1047 × 1115 of 1200 × 1320 pixels, 5906 a metre: 177.28 × 188.79 mm, as ImageMagick 6.9.11
 * found it (`convert demo-artwork.png -alpha extract -trim info:`).
 */

typedef struct {
  BbSession *session;
  GtkWindow *window;
  BbPage *page;
  BbArtworkPanel *panel;
  gint64 revision;
} Scene;

static char *
demo_path (void)
{
  return g_test_build_filename (G_TEST_DIST, "..", "data", "demo-artwork.png", NULL);
}

static void
show_page (Scene      *scene,
           const char *path)
{
  scene->session = helper_open_session (path);
  scene->window = GTK_WINDOW (gtk_window_new ());
  scene->page = g_object_new (BB_TYPE_MIX_PAGE, NULL);
  gtk_window_set_child (scene->window, GTK_WIDGET (scene->page));
  gtk_window_set_default_size (scene->window, 1000, 700);
  gtk_window_present (scene->window);
  bb_page_set_session (scene->page, scene->session);
  helper_wait_drawn (GTK_WIDGET (scene->page));
  scene->panel = helper_find_widget (GTK_WIDGET (scene->page), BB_TYPE_ARTWORK_PANEL);
}

/* A session that closes lets its pages keep what is half typed. */
static void
close_page (Scene *scene)
{
  bb_session_close (scene->session);
  gtk_window_destroy (scene->window);
  helper_finalize (scene->session);
}

static Scene *
set_up (char **path)
{
  Scene *scene = g_new0 (Scene, 1);
  BbBook *book = NULL;
  g_autoptr (Shop) shop = NULL;

  *path = helper_new_path ();
  book = helper_create (*path);
  shop = helper_fill (book);
  scene->revision = shop->revision->id;
  shop->lot = helper_make_lot ("L-1", shop->pretreat->id);
  helper_save (book, &bb_lot_table, shop->lot);
  helper_close (book);
  show_page (scene, *path);

  return scene;
}

static void
tear_down (Scene *scene)
{
  close_page (scene);
  g_free (scene);
}

static void
gather (GtkWidget *within,
        GType      type,
        GPtrArray *found)
{
  if (g_type_is_a (G_OBJECT_TYPE (within), type))
    g_ptr_array_add (found, within);
  for (GtkWidget *child = gtk_widget_get_first_child (within); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    gather (child, type, found);
}

static gboolean
has_label (Scene      *scene,
           const char *text)
{
  g_autoptr (GPtrArray) labels = g_ptr_array_new ();

  gather (GTK_WIDGET (scene->page), GTK_TYPE_LABEL, labels);
  for (guint i = 0; i < labels->len; i++)
    if (g_str_equal (gtk_label_get_text (labels->pdata[i]), text))
      return TRUE;

  return FALSE;
}

/* The form begins with the width and height of the print, the count and the margin. */
static GtkEditable *
find_entry (Scene *scene,
            guint  position)
{
  g_autoptr (GPtrArray) rows = g_ptr_array_new ();

  gather (GTK_WIDGET (scene->page), BB_TYPE_ENTRY_ROW, rows);
  g_assert_cmpuint (rows->len, >, position);

  return GTK_EDITABLE (helper_find_widget (rows->pdata[position], GTK_TYPE_ENTRY));
}

static gboolean
is_faulty (Scene *scene,
           guint  position)
{
  GtkWidget *entry = GTK_WIDGET (find_entry (scene, position));

  return bb_field_row_is_faulty (BB_FIELD_ROW (gtk_widget_get_ancestor (entry, BB_TYPE_FIELD_ROW)));
}

static void
type_text (Scene      *scene,
           guint       position,
           const char *text)
{
  gtk_editable_set_text (find_entry (scene, position), text);
}

static void
assert_size (Scene      *scene,
             const char *width,
             const char *height)
{
  g_assert_cmpstr (gtk_editable_get_text (find_entry (scene, 0)), ==, width);
  g_assert_cmpstr (gtk_editable_get_text (find_entry (scene, 1)), ==, height);
}

static gboolean
is_shown (gpointer data)
{
  return bb_artwork_panel_get_coverage (((Scene *) data)->panel) != NULL;
}

static gboolean
is_refused (gpointer data)
{
  return has_label (data, "Try Again") && bb_artwork_panel_get_coverage (((Scene *) data)->panel) == NULL;
}

static GtkStack *
find_stack (Scene *scene)
{
  return GTK_STACK (gtk_widget_get_ancestor (GTK_WIDGET (scene->panel), GTK_TYPE_STACK));
}

static void
load (Scene      *scene,
      const char *path)
{
  bb_artwork_panel_load (scene->panel, path);
  helper_wait_until (is_shown, scene);
}

/* Tests */

static void
test_artwork_and_form_agree (void)
{
  g_autofree char *path = NULL;
  g_autofree char *artwork = demo_path ();
  Scene *scene = set_up (&path);

  bb_page_show_record (scene->page, scene->revision);
  g_assert_cmpstr (gtk_stack_get_visible_child_name (find_stack (scene)), ==, "worksheet");
  load (scene, artwork);
  g_assert_cmpstr (gtk_stack_get_visible_child_name (find_stack (scene)), ==, "artwork");
  assert_size (scene, "177.3", "188.8");

  /* 1115 ÷ 1047 × 300 = 319.484; with a margin of 10 mm the box has 320 × 339.48 mm. */
  type_text (scene, 3, "10");
  type_text (scene, 0, "300");
  assert_size (scene, "300", "319.5");
  g_assert_true (has_label (scene, "320 × 339.5 mm"));

  /* 1047 ÷ 1115 × 200 = 187.803. */
  type_text (scene, 1, "200");
  assert_size (scene, "187.8", "200");
  g_assert_true (has_label (scene, "207.8 × 220 mm"));

  /* A size that the artwork has brought is held against the limits as if it had been typed. */
  type_text (scene, 0, "4990");
  assert_size (scene, "4990", "5314.1");
  g_assert_true (is_faulty (scene, 1));
  type_text (scene, 1, "200");
  g_assert_false (is_faulty (scene, 0) || is_faulty (scene, 1));

  /* What makes no sense yet changes nothing. */
  type_text (scene, 0, "-");
  assert_size (scene, "-", "200");
  type_text (scene, 0, "");
  assert_size (scene, "", "200");
  type_text (scene, 0, "18");
  assert_size (scene, "18", "19.2");

  g_assert_true (gtk_widget_activate_action (GTK_WIDGET (scene->panel), "artwork.remove", NULL));
  assert_size (scene, "18", "19.2");
  type_text (scene, 0, "300");
  assert_size (scene, "300", "19.2");
  load (scene, artwork);
  g_assert_true (gtk_widget_activate_action (GTK_WIDGET (scene->page), "mix.clear", NULL));
  assert_size (scene, "", "");
  g_assert_null (bb_artwork_panel_get_coverage (scene->panel));
  tear_down (scene);
}

/* The artwork is there again after a restart, at the size that was typed; if its file is gone, the person is told. */
static void
test_survives_a_restart (void)
{
  g_autofree char *path = NULL;
  g_autofree char *artwork = demo_path ();
  g_autofree char *copy = NULL;
  g_autofree char *contents = NULL;
  gsize length = 0;
  Scene *scene = set_up (&path);

  copy = g_strconcat (path, ".png", NULL);
  g_assert_true (g_file_get_contents (artwork, &contents, &length, NULL));
  g_assert_true (g_file_set_contents (copy, contents, (gssize) length, NULL));
  load (scene, copy);
  type_text (scene, 0, "300");
  close_page (scene);

  show_page (scene, path);
  helper_wait_until (is_shown, scene);
  assert_size (scene, "300", "319.5");
  g_assert_cmpstr (gtk_stack_get_visible_child_name (find_stack (scene)), ==, "worksheet");
  close_page (scene);

  g_assert_cmpint (g_unlink (copy), ==, 0);
  show_page (scene, path);
  helper_wait_until (is_refused, scene);
  assert_size (scene, "300", "319.5");
  tear_down (scene);
}

/* The recipe's pretreat is in the shop, 1000 g of it in L-1: how far that reaches need not be asked. */
static void
test_counts_from_the_shelf (void)
{
  g_autofree char *path = NULL;
  Scene *scene = set_up (&path);

  bb_page_show_record (scene->page, scene->revision);
  type_text (scene, 0, "300");
  type_text (scene, 1, "300");
  type_text (scene, 2, "2");
  g_assert_false (has_label (scene, "say how much concentrate is left"));
  g_assert_true (has_label (scene, "from L-1"));
  tear_down (scene);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, G_TEST_OPTION_ISOLATE_DIRS, NULL);
  adw_init ();

  g_test_add_func ("/mix-page/artwork-and-form-agree", test_artwork_and_form_agree);
  g_test_add_func ("/mix-page/counts-from-the-shelf", test_counts_from_the_shelf);
  g_test_add_func ("/mix-page/survives-a-restart", test_survives_a_restart);

  return g_test_run ();
}
