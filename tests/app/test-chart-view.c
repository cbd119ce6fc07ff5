/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-test"

#include "bb-chart-view.h"

#include <glib/gstdio.h>
#include <string.h>

#include "app-helpers.h"
#include "bb-chart-keep.h"
#include "bb-save.h"

static BbChart *
make_chart (void)
{
  BbChart *chart = bb_chart_new ("Grades", bb_axis_new_cycles (20), bb_axis_new_grades ("Grade"));
  BbSeries *first = bb_series_new ("S-1", BB_MARKER_CIRCLE, BB_STROKE_SOLID, 0);
  BbSeries *second = bb_series_new ("S-2", BB_MARKER_SQUARE, BB_STROKE_SOLID, 1);

  bb_series_add (first, 1, 5);
  bb_series_add (first, 20, 4);
  bb_series_add (second, 1, 4.5);
  bb_series_add (second, 20, 3);
  bb_chart_take_layer (chart, bb_line_layer_new (first));
  bb_chart_take_layer (chart, bb_line_layer_new (second));

  return chart;
}

/* As GTK finds it when the key is pressed while @widget has the focus. */
static gboolean
press (GtkWidget *widget,
       guint      key)
{
  g_autoptr (GListModel) controllers = gtk_widget_observe_controllers (widget);

  for (guint i = 0; i < g_list_model_get_n_items (controllers); i++)
    {
      g_autoptr (GObject) controller = g_list_model_get_item (controllers, i);

      for (guint s = 0; GTK_IS_SHORTCUT_CONTROLLER (controller) &&
                        s < g_list_model_get_n_items (G_LIST_MODEL (controller)); s++)
        {
          g_autoptr (GtkShortcut) shortcut = g_list_model_get_item (G_LIST_MODEL (controller), s);
          GtkShortcutTrigger *trigger = gtk_shortcut_get_trigger (shortcut);

          if (GTK_IS_KEYVAL_TRIGGER (trigger) && gtk_keyval_trigger_get_keyval (GTK_KEYVAL_TRIGGER (trigger)) == key)
            return gtk_shortcut_action_activate (gtk_shortcut_get_action (shortcut), 0, widget,
                                                 gtk_shortcut_get_arguments (shortcut));
        }
    }

  g_error ("No key %s", gdk_keyval_name (key));
}

static void
assert_heard (GtkWidget  *view,
              const char *label)
{
  g_autofree char *found = gtk_test_accessible_check_property (GTK_ACCESSIBLE (view), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                                               label);

  if (found != NULL)
    g_error ("heard: %s, expected: %s", found, label);
}

static GtkWidget *
show (GtkWidget **window)
{
  GtkWidget *view = bb_chart_view_new ();

  *window = gtk_window_new ();
  gtk_window_set_default_size (GTK_WINDOW (*window), 500, 350);
  gtk_window_set_child (GTK_WINDOW (*window), view);
  gtk_window_present (GTK_WINDOW (*window));
  helper_wait_drawn (view);

  return view;
}

static void
close_window (GtkWidget *window,
              GtkWidget *view)
{
  g_object_ref (view);
  gtk_window_destroy (GTK_WINDOW (window));
  for (guint i = 0; i < 100 && g_main_context_iteration (NULL, FALSE); i++)
    ;
  g_assert_finalize_object (view);
}

static void
test_keys (void)
{
  GtkWidget *window = NULL;
  GtkWidget *view = show (&window);

  assert_heard (view, "Chart");
  g_assert_false (press (view, GDK_KEY_Right));
  bb_chart_view_set_chart (BB_CHART_VIEW (view), make_chart ());
  assert_heard (view, "Grades");
  g_assert_true (gtk_widget_get_focusable (view));
  g_assert_false (press (view, GDK_KEY_Escape));

  press (view, GDK_KEY_Right);
  assert_heard (view, "S-1\n1 cycle\ngrade 5");
  press (view, GDK_KEY_Right);
  assert_heard (view, "S-1\n20 cycles\ngrade 4");
  /* The focus stays at the end. */
  g_assert_true (press (view, GDK_KEY_Right));
  press (view, GDK_KEY_Down);
  assert_heard (view, "S-2\n20 cycles\ngrade 3");
  press (view, GDK_KEY_Home);
  assert_heard (view, "S-2\n1 cycle\ngrade 4-5");
  press (view, GDK_KEY_Up);
  assert_heard (view, "S-1\n1 cycle\ngrade 5");
  press (view, GDK_KEY_End);
  press (view, GDK_KEY_Left);
  assert_heard (view, "S-1\n1 cycle\ngrade 5");
  g_assert_true (press (view, GDK_KEY_Escape));
  assert_heard (view, "Grades");

  /* Another chart is not looked at yet. */
  press (view, GDK_KEY_Right);
  bb_chart_view_set_chart (BB_CHART_VIEW (view), make_chart ());
  assert_heard (view, "Grades");
  close_window (window, view);
}

static void
test_description (void)
{
  GtkWidget *window = NULL;
  GtkWidget *view = show (&window);
  BbChart *chart = make_chart ();
  g_autofree char *wanted = bb_chart_describe (chart);
  g_autofree char *found = NULL;

  bb_chart_view_set_chart (BB_CHART_VIEW (view), chart);
  found = gtk_test_accessible_check_property (GTK_ACCESSIBLE (view), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, wanted);
  g_assert_cmpstr (found, ==, NULL);
  g_assert_nonnull (strstr (wanted, "S-2, 2 points: from 1 cycle, grade 4-5 to 20 cycles, grade 3"));
  gtk_test_accessible_assert_role (GTK_ACCESSIBLE (view), GTK_ACCESSIBLE_ROLE_IMG);
  close_window (window, view);
}

/* The pictures of a widget as it is drawn, in both themes and with a point looked at. */
static GBytes *
take_picture (GtkWidget *view)
{
  g_autoptr (GdkPaintable) paintable = gtk_widget_paintable_new (view);
  GtkSnapshot *snapshot = gtk_snapshot_new ();
  GskRenderNode *node = NULL;
  GdkTexture *texture = NULL;
  GBytes *bytes = NULL;

  helper_wait_drawn (view);
  gdk_paintable_snapshot (paintable, snapshot, gtk_widget_get_width (view), gtk_widget_get_height (view));
  node = gtk_snapshot_free_to_node (snapshot);
  g_assert_nonnull (node);
  texture = gsk_renderer_render_texture (gtk_native_get_renderer (gtk_widget_get_native (view)), node, NULL);
  bytes = gdk_texture_save_to_png_bytes (texture);
  g_object_unref (texture);
  gsk_render_node_unref (node);

  return bytes;
}

static void
test_drawn (void)
{
  GtkWidget *window = NULL;
  GtkWidget *view = show (&window);
  AdwStyleManager *manager = adw_style_manager_get_default ();
  g_autoptr (GBytes) light = NULL;
  g_autoptr (GBytes) marked = NULL;
  g_autoptr (GBytes) dark = NULL;

  adw_style_manager_set_color_scheme (manager, ADW_COLOR_SCHEME_FORCE_LIGHT);
  bb_chart_view_set_chart (BB_CHART_VIEW (view), make_chart ());
  light = take_picture (view);
  press (view, GDK_KEY_Right);
  marked = take_picture (view);
  adw_style_manager_set_color_scheme (manager, ADW_COLOR_SCHEME_FORCE_DARK);
  dark = take_picture (view);
  adw_style_manager_set_color_scheme (manager, ADW_COLOR_SCHEME_DEFAULT);
  g_assert_false (g_bytes_equal (light, marked));
  g_assert_false (g_bytes_equal (marked, dark));
  close_window (window, view);
}

static void
saved_cb (GObject      *source,
          GAsyncResult *result,
          gpointer      data)
{
  char **said = data;

  (void) source;
  *said = bb_save_run_finish (result);
}

static void
copied_cb (GObject      *source,
           GAsyncResult *result,
           gpointer      data)
{
  char **said = data;

  (void) source;
  *said = bb_chart_copy_finish (result);
}

static gboolean
is_set (gpointer data)
{
  return *(char **) data != NULL;
}

static char *
save (const char *path,
      gboolean    as_pdf)
{
  g_autoptr (GFile) file = g_file_new_for_path (path);
  g_autoptr (BbChart) chart = make_chart ();
  char *said = NULL;

  bb_chart_save_async (chart, file, as_pdf, saved_cb, &said);
  helper_wait_until (is_set, &said);

  return said;
}

static char *
copy (GtkWidget *view)
{
  g_autoptr (BbChart) chart = make_chart ();
  char *said = NULL;

  bb_chart_copy_async (view, chart, copied_cb, &said);
  helper_wait_until (is_set, &said);

  return said;
}

static void
test_kept (void)
{
  GtkWidget *window = NULL;
  GtkWidget *view = show (&window);
  g_autofree char *folder = g_dir_make_tmp ("chart-XXXXXX", NULL);
  g_autofree char *png = g_build_filename (folder, "chart.png", NULL);
  g_autofree char *pdf = g_build_filename (folder, "chart.pdf", NULL);
  g_autofree char *nowhere = g_build_filename (folder, "none", "chart.pdf", NULL);
  g_autofree char *saved = save (png, FALSE);
  g_autofree char *printed = save (pdf, TRUE);
  g_autofree char *refused = save (nowhere, TRUE);
  g_autofree char *copied = copy (view);
  g_autoptr (GdkTexture) texture = gdk_texture_new_from_filename (png, NULL);
  g_autofree char *contents = NULL;

  g_assert_nonnull (strstr (saved, png));
  /* As wide as a page's text, 460 pt, at 300 pixels to the inch. */
  g_assert_cmpint (gdk_texture_get_width (texture), ==, 460 * 300 / 72);
  g_assert_nonnull (strstr (printed, pdf));
  g_assert_true (g_file_get_contents (pdf, &contents, NULL, NULL));
  g_assert_true (g_str_has_prefix (contents, "%PDF-1."));
  g_assert_true (g_str_has_prefix (refused, "It was not saved: "));
  g_assert_cmpstr (copied, ==, "The chart was copied as a picture.");
  g_assert_true (gdk_content_formats_contain_gtype (gdk_clipboard_get_formats (gtk_widget_get_clipboard (view)),
                                                    GDK_TYPE_TEXTURE));
  g_unlink (png);
  g_unlink (pdf);
  g_rmdir (folder);
  close_window (window, view);
}

static gboolean
is_open (gpointer popover)
{
  return gtk_widget_get_mapped (popover);
}

/* Made when they are asked for, one at the button and one where the pointer or the keyboard is. */
static void
test_menus (void)
{
  GtkWidget *window = NULL;
  GtkWidget *view = show (&window);
  GtkMenuButton *button = helper_find_widget (view, GTK_TYPE_MENU_BUTTON);
  GtkWidget *menu = NULL;

  g_assert_null (helper_find_widget (view, GTK_TYPE_POPOVER_MENU));
  gtk_menu_button_popup (button);
  helper_wait_until (is_open, gtk_menu_button_get_popover (button));
  gtk_menu_button_popdown (button);
  g_assert_true (press (view, GDK_KEY_Menu));
  menu = gtk_widget_get_first_child (view);
  while (!GTK_IS_POPOVER_MENU (menu))
    menu = gtk_widget_get_next_sibling (menu);
  helper_wait_until (is_open, menu);
  gtk_popover_popdown (GTK_POPOVER (menu));
  close_window (window, view);
}

int
main (int   argc,
      char *argv[])
{
  gtk_test_init (&argc, &argv, NULL);
  adw_init ();
  g_object_set (gtk_settings_get_default (), "gtk-enable-animations", FALSE, NULL);

  g_test_add_func ("/chart-view/keys", test_keys);
  g_test_add_func ("/chart-view/description", test_description);
  g_test_add_func ("/chart-view/drawn", test_drawn);
  g_test_add_func ("/chart-view/kept", test_kept);
  g_test_add_func ("/chart-view/menus", test_menus);

  return g_test_run ();
}
