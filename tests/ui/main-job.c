/* SPDX-License-Identifier: GPL-3.0-or-later */

/*
 * The main job, in a real window on a fresh copy of the demo shop's book: find a recipe, mix for it, weigh in,
 * read a washed specimen, close the window, open it again, and find the reading there. With --screenshot FILE it
 * also prints the worksheet and saves a picture of the window with it.
 */

#include <glib/gstdio.h>

#include "bb-application.h"
#include "bb-editor.h"
#include "bb-exchange.h"
#include "bb-figure.h"
#include "bb-page.h"
#include "bb-readings.h"
#include "bb-recipe-detail.h"
#include "bb-window.h"
#include "bb-worksheet-view.h"
#include "walk.h"

#define SPECIMEN_NOTE "Written by the main job"

static GtkWidget *
open_window (GtkApplication *application,
             const char     *path)
{
  g_autoptr (GFile) file = g_file_new_for_path (path);

  g_application_open (G_APPLICATION (application), &file, 1, "");
  for (guint i = 0; i < 400 && gtk_application_get_active_window (application) == NULL; i++)
    walk_settle (20);
  walk_settle (300);
  g_assert_true (BB_IS_WINDOW (gtk_application_get_active_window (application)));

  return GTK_WIDGET (gtk_application_get_active_window (application));
}

static void
go_to (GtkWidget  *window,
       const char *page)
{
  g_assert_true (gtk_widget_activate_action (window, "win.go", "s", page));
  walk_settle (200);
}

static void
recall (GtkWidget *window)
{
  GtkWidget *page = NULL;
  GtkWidget *search = NULL;
  GtkWidget *detail = NULL;

  go_to (window, "recipes");
  page = walk_find_type (window, BB_TYPE_PAGE);
  search = walk_find_type (page, GTK_TYPE_SEARCH_ENTRY);
  gtk_editable_set_text (GTK_EDITABLE (search), "kiln bla");
  walk_settle (300);
  detail = walk_find_type (page, BB_TYPE_RECIPE_DETAIL);
  walk_expect (detail, "Kilnhood pullover hoodie, black, tunnel cure");
  walk_expect (detail, "Proven");
}

/*
 * The revision lays 175 g/m² on the box, at 1:2 by volume, with a concentrate of 1.142 g/ml (the demo shop's own,
 * invented figures). A print of 300 × 400 mm with a margin of 10 mm makes a box of 320 × 420 mm = 0.1344 m²:
 * 23.52 g a garment, 564.48 g for 24. One part of concentrate to two of water by volume is 1.142 g to
 * 2 · 0.998207 g (Tanaka et al. 2001 at 20 °C): 36.387 % of 564.48 g is 205.4 g, the rest 359.1 g of water.
 */
static void
mix (GtkWidget *window)
{
  GtkWidget *detail = walk_find_type (window, BB_TYPE_RECIPE_DETAIL);

  g_assert_nonnull (detail);
  g_assert_true (gtk_widget_activate_action (detail, "recipe.mix", NULL));
  walk_settle (300);
  walk_type (window, "Print width", "300");
  walk_type (window, "Print height", "400 mm");
  walk_type (window, "Garments", "24");
  walk_expect (window, "205.4");
  walk_expect (window, "359.1");
  walk_expect (window, "564.5");
  walk_expect (window, "23.5");
}

/* 23.52 g are aimed at, ± 10 %. */
static void
weigh_in (GtkWidget *window)
{
  walk_type (window, "Tare", "180");
  walk_type (window, "Wet", "200");
  walk_expect (window, "Low");
  walk_type (window, "Wet", "210");
  walk_expect (window, "High");
  walk_type (window, "Wet", "204");
  walk_expect (window, "OK");
}

static void
read_specimen (GtkWidget *window)
{
  GtkWidget *readings = NULL;
  GtkWidget *note = NULL;

  go_to (window, "wash");
  readings = walk_find_type (window, BB_TYPE_READINGS);
  g_assert_nonnull (readings);
  g_assert_true (gtk_widget_activate_action (readings, "readings.add", NULL));
  walk_settle (200);
  walk_type (window, "Cycles", "77");
  walk_choose (window, "Change", 2);
  note = walk_find_type (walk_find_row (window, "Note"), GTK_TYPE_TEXT_VIEW);
  gtk_text_buffer_set_text (gtk_text_view_get_buffer (GTK_TEXT_VIEW (note)), SPECIMEN_NOTE, -1);
  g_assert_true (gtk_widget_activate_action (walk_find_type (window, BB_TYPE_EDITOR), "editor.save", NULL));
  walk_expect (window, SPECIMEN_NOTE);
}

/* A half-typed blank is there again after the restart. */
static void
half_type (GtkWidget *window)
{
  go_to (window, "blanks");
  gtk_widget_activate_action (walk_find_type (window, g_type_from_name ("BbCatalogue")), "catalogue.add", NULL);
  walk_settle (200);
  walk_type (window, "Name", "Half-typed tee");
}

static void
expect_all_still_there (GtkWidget *window)
{
  GtkWidget *entry = NULL;

  go_to (window, "wash");
  walk_expect (window, SPECIMEN_NOTE);
  go_to (window, "blanks");
  entry = walk_find_type (walk_find_row (window, "Name"), GTK_TYPE_ENTRY);
  g_assert_cmpstr (gtk_editable_get_text (GTK_EDITABLE (entry)), ==, "Half-typed tee");
}

static void
print_labels (GtkWidget *widget)
{
  if (GTK_IS_LABEL (widget) && gtk_widget_get_mapped (widget))
    g_print ("%s  ", gtk_label_get_label (GTK_LABEL (widget)));
  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    {
      print_labels (child);
      if (BB_IS_FIGURE (child))
        g_print ("\n");
    }
}

/* What the window shows, as a person would read it out. */
static void
print_worksheet (GtkWidget *window)
{
  GtkWidget *recipe = walk_find_label (window, "revision 2");

  g_assert_nonnull (recipe);
  print_labels (recipe);
  g_print ("\n");
  print_labels (walk_find_type (window, BB_TYPE_WORKSHEET_VIEW));
  g_print ("\n");
}

int
main (int   argc,
      char *argv[])
{
  const char *picture = argc == 3 && g_str_equal (argv[1], "--screenshot") ? argv[2] : NULL;
  g_autoptr (BbApplication) application = NULL;
  g_autoptr (GError) error = NULL;
  g_autofree char *folder = g_dir_make_tmp ("blankbook-XXXXXX", NULL);
  g_autofree char *path = g_build_filename (folder, "demo.book", NULL);
  GtkWidget *window = NULL;

  g_setenv ("GSETTINGS_BACKEND", "memory", TRUE);
  g_assert_true (bb_exchange_make_demo (path, NULL, NULL, &error));
  g_assert_no_error (error);

  application = bb_application_new ();
  g_application_set_flags (G_APPLICATION (application), G_APPLICATION_HANDLES_OPEN | G_APPLICATION_NON_UNIQUE);
  g_assert_true (g_application_register (G_APPLICATION (application), NULL, &error));
  g_application_hold (G_APPLICATION (application));
  g_object_set (gtk_settings_get_default (), "gtk-enable-animations", FALSE, NULL);

  window = open_window (GTK_APPLICATION (application), path);
  recall (window);
  mix (window);
  weigh_in (window);
  if (picture != NULL)
    {
      walk_picture (window, picture);
      print_worksheet (window);
    }
  read_specimen (window);
  half_type (window);
  gtk_window_close (GTK_WINDOW (window));
  walk_settle (500);
  g_assert_null (gtk_application_get_active_window (GTK_APPLICATION (application)));

  window = open_window (GTK_APPLICATION (application), path);
  expect_all_still_there (window);
  gtk_window_close (GTK_WINDOW (window));
  walk_settle (500);
  g_unlink (path);

  return 0;
}
