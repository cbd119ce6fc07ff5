/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-test"

#include <glib/gstdio.h>

#include "app-helpers.h"
#include "art.h"
#include "bb-artwork-panel.h"
#include "bb-mode-switch.h"
#include "bb-print-preview.h"
#include "store-helpers.h"

/* The artwork panel in a window: what it says of the picture of art.h, by numbers that are reckoned by hand. */

typedef struct {
  BbSession *session;
  GtkWindow *window;
  BbArtworkPanel *panel;

  guint n_changed;
  guint n_sized;
  double width_mm;
  double height_mm;
} Scene;

/* The scene */

static void
changed_cb (BbArtworkPanel *panel,
            Scene          *scene)
{
  (void) panel;
  scene->n_changed++;
}

static void
sized_cb (BbArtworkPanel *panel,
          double          width_mm,
          double          height_mm,
          Scene          *scene)
{
  (void) panel;
  scene->n_sized++;
  scene->width_mm = width_mm;
  scene->height_mm = height_mm;
}

static Scene *
set_up (void)
{
  g_autofree char *path = helper_new_path ();
  Scene *scene = g_new0 (Scene, 1);

  helper_close (helper_create (path));
  scene->session = helper_open_session (path);
  scene->window = GTK_WINDOW (gtk_window_new ());
  scene->panel = g_object_new (BB_TYPE_ARTWORK_PANEL, NULL);
  bb_artwork_panel_set_session (scene->panel, scene->session);
  g_signal_connect (scene->panel, "changed", G_CALLBACK (changed_cb), scene);
  g_signal_connect (scene->panel, "sized", G_CALLBACK (sized_cb), scene);
  gtk_window_set_child (scene->window, GTK_WIDGET (scene->panel));
  gtk_window_set_default_size (scene->window, 800, 700);
  gtk_window_present (scene->window);

  return scene;
}

static void
tear_down (Scene *scene)
{
  g_object_add_weak_pointer (G_OBJECT (scene->panel), (gpointer *) &scene->panel);
  gtk_window_destroy (scene->window);
  helper_wait_idle ();
  g_assert_null (scene->panel);
  helper_end_session (scene->session);
  g_free (scene);
}

/* What can be read in the window: every label that is shown, one a line. */
static void
gather_text (GtkWidget *widget,
             GString   *text)
{
  if (!gtk_widget_get_child_visible (widget) || !gtk_widget_get_visible (widget))
    return;
  if (GTK_IS_LABEL (widget))
    g_string_append_printf (text, "%s\n", gtk_label_get_text (GTK_LABEL (widget)));
  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    gather_text (child, text);
}

static gboolean
reads (Scene      *scene,
       const char *wanted)
{
  g_autoptr (GString) text = g_string_new ("\n");

  gather_text (GTK_WIDGET (scene->panel), text);

  return strstr (text->str, wanted) != NULL;
}

static void
assert_reads (Scene      *scene,
              const char *wanted)
{
  g_autoptr (GString) text = g_string_new ("\n");

  gather_text (GTK_WIDGET (scene->panel), text);
  if (strstr (text->str, wanted) == NULL)
    g_error ("“%s” is not among:%s", wanted, text->str);
}

typedef struct {
  Scene *scene;
  const char *text;
} Awaited;

static gboolean
is_read (gpointer data)
{
  const Awaited *awaited = data;

  return reads (awaited->scene, awaited->text);
}

static void
wait_text (Scene      *scene,
           const char *text)
{
  Awaited awaited = { scene, text };

  helper_wait_until (is_read, &awaited);
}

static void
load (Scene      *scene,
      const char *path)
{
  g_autofree char *base = g_path_get_basename (path);
  g_autofree char *line = g_strdup_printf ("\n%s\n", base);

  bb_artwork_panel_load (scene->panel, path);
  wait_text (scene, line);
}

/* As a form with a margin beside the panel would. */
static void
type_size (Scene *scene,
           double width_mm,
           double height_mm)
{
  const double margin_mm = 6;
  BbBoxOut box = { 0 };

  bb_artwork_panel_follow (scene->panel, &width_mm, &height_mm);
  scene->width_mm = width_mm;
  scene->height_mm = height_mm;
  box.box_width_mm = width_mm + 2 * margin_mm;
  box.box_height_mm = height_mm + 2 * margin_mm;
  bb_artwork_panel_set_box (scene->panel, &box);
}

static void
press_mode (Scene      *scene,
            BbPrintMode mode)
{
  GtkWidget *button = gtk_widget_get_first_child (
    adw_bin_get_child (helper_find_widget (GTK_WIDGET (scene->panel), BB_TYPE_MODE_SWITCH)));

  for (int i = 0; i < (int) mode; i++)
    button = gtk_widget_get_next_sibling (button);
  g_signal_emit_by_name (button, "clicked");
}

/* Tests */

/* The file's own size is taken: 20 × 10 pixels at 10 a mm, 254 an inch. */
static void
test_says_what_it_reads (void)
{
  Scene *scene = set_up ();
  g_autofree char *path = art_write ("fox.png", 1, ART_PIXELS_PER_METRE);

  assert_reads (scene, "Drop the artwork here");
  load (scene, path);
  g_assert_cmpuint (scene->n_sized, ==, 1);
  g_assert_cmpfloat_with_epsilon (scene->width_mm, 2, 1e-9);
  g_assert_cmpfloat_with_epsilon (scene->height_mm, 1, 1e-9);
  g_assert_false (reads (scene, "Drop the artwork here"));

  type_size (scene, 2, 1);
  assert_reads (scene, "\nArt\n2 × 1\302\240mm\nwhole picture 4 × 2 mm\n");
  assert_reads (scene, "\nResolution\n254\302\240pixels/in\nat 100 % of the file's own size\n");
  assert_reads (scene, "\nArt box\n2 × 1 mm\nSpray box\n14 × 13 mm\n");
  assert_reads (scene, "Some pixels are half transparent");
  g_assert_false (reads (scene, "too few pixels"));
  g_assert_false (reads (scene, "larger than it was made for"));
  tear_down (scene);
}

/* Of 200 pixels 180 and 20 × 0.2 are covered: 92 %. Black are 25 %, white 15 %, soft 10 %. The art box has 100 × 50 mm,
 * which is 50 cm². */
static void
test_follows_size_and_mode (void)
{
  Scene *scene = set_up ();
  g_autofree char *path = art_write ("fox.png", 1, ART_PIXELS_PER_METRE);

  load (scene, path);
  /* From here on nothing can be read again. */
  g_assert_cmpint (g_unlink (path), ==, 0);
  type_size (scene, 100, 1);
  g_assert_cmpfloat_with_epsilon (scene->height_mm, 50, 1e-9);
  assert_reads (scene, "\nArt box\n100 × 50 mm\nSpray box\n112 × 62 mm\n");
  assert_reads (scene, "\nColour\n92 %\n46 cm²\nUnderbase\n0 %\n");
  assert_reads (scene, "\nSoft\n10 %\n5 cm²\n");
  /* 40 pixels on 200 mm. */
  assert_reads (scene, "\nResolution\n5\302\240pixels/in\nat 5000 % of the file's own size\n");
  assert_reads (scene, "too few pixels");
  assert_reads (scene, "larger than it was made for");

  press_mode (scene, BB_PRINT_UNDERBASE);
  assert_reads (scene, "\nColour\n77 %\n38.5 cm²\nUnderbase\n92 %\n46 cm²\nWhite\n15 %\n7.5 cm²\nKnocked out\n0 %\n");
  press_mode (scene, BB_PRINT_UNDERBASE_KNOCKOUT);
  assert_reads (scene, "\nColour\n52 %\n26 cm²\nUnderbase\n67 %\n33.5 cm²\nWhite\n15 %\n7.5 cm²\nKnocked out\n25 %\n");
  g_assert_cmpfloat_with_epsilon (bb_artwork_panel_get_coverage (scene->panel)->underbase.fraction, 0.67, 1e-9);

  /* The other side decides as well. */
  type_size (scene, 100, 100);
  g_assert_cmpfloat_with_epsilon (scene->width_mm, 200, 1e-9);
  assert_reads (scene, "\nArt box\n200 × 100 mm\n");
  g_assert_false (reads (scene, "Try Again"));
  tear_down (scene);
}

/* A size that a person typed stands; one that came with the artwork before does not. */
static void
test_takes_the_typed_size (void)
{
  Scene *scene = set_up ();
  g_autofree char *sized = art_write ("sized.png", 1, ART_PIXELS_PER_METRE);
  g_autofree char *larger = art_write ("larger.png", 2, ART_PIXELS_PER_METRE);
  g_autofree char *unsized = art_write ("unsized.png", 1, 0);

  load (scene, unsized);
  g_assert_cmpuint (scene->n_sized, ==, 0);
  assert_reads (scene, "give the print's width");
  assert_reads (scene, "\nColour\n92 %\n–\n");
  assert_reads (scene, "does not say how large");
  g_assert_false (reads (scene, "too few pixels"));

  load (scene, sized);
  g_assert_cmpfloat_with_epsilon (scene->width_mm, 2, 1e-9);
  load (scene, larger);
  g_assert_cmpfloat_with_epsilon (scene->width_mm, 4, 1e-9);
  type_size (scene, 300, 2);
  load (scene, sized);
  g_assert_cmpfloat_with_epsilon (scene->width_mm, 300, 1e-9);
  g_assert_cmpfloat_with_epsilon (scene->height_mm, 150, 1e-9);
  g_assert_cmpuint (scene->n_sized, ==, 3);
  tear_down (scene);
}

/* What the garment's colour decides, and how the recipe's mode is held against it. */
static void
test_advises (void)
{
  Scene *scene = set_up ();
  g_autofree char *path = art_write ("fox.png", 1, ART_PIXELS_PER_METRE);
  g_autoptr (BbRecipe) recipe = bb_recipe_new ();
  g_autoptr (BbColourway) black = helper_make_colourway ("TEE/BLACK", 0, "Deep Black");

  recipe->id = 7;
  g_free (black->srgb);
  black->srgb = g_strdup ("#161618");
  load (scene, path);
  assert_reads (scene, "\nWhite\n");
  assert_reads (scene, "\nAdvised print mode\nColour only\n");
  assert_reads (scene, "The garment is white");

  bb_artwork_panel_set_recipe (scene->panel, recipe, black, BB_PRINT_UNDERBASE);
  assert_reads (scene, "\nDeep Black\n");
  assert_reads (scene, "\nAdvised print mode\nUnderbase with knockout\n");
  assert_reads (scene, "\nThe recipe prints as “Underbase”; for this garment and artwork “Underbase with knockout” is "
                       "advised.\n");
  assert_reads (scene, "\nKnocked out\n0 %\n");

  bb_artwork_panel_set_recipe (scene->panel, recipe, black, BB_PRINT_UNDERBASE_KNOCKOUT);
  g_assert_false (reads (scene, "The recipe prints as"));
  assert_reads (scene, "\nKnocked out\n25 %\n");
  gtk_test_accessible_assert_property (helper_find_widget (GTK_WIDGET (scene->panel), BB_TYPE_PRINT_PREVIEW),
                                       GTK_ACCESSIBLE_PROPERTY_DESCRIPTION,
                                       "fox.png on “Deep Black”, printed as “Underbase with knockout”. Art: 2 × 1 mm. "
                                       "Box that is sprayed: size not known.");
  tear_down (scene);
}

/* One line says what is wrong, and the artwork before stays. */
static void
test_refuses (void)
{
  Scene *scene = set_up ();
  g_autofree char *good = art_write ("good.png", 1, ART_PIXELS_PER_METRE);
  g_autofree char *broken = art_write_broken ("broken.png");
  g_autofree char *gone = art_new_path ("gone.png");
  g_autofree char *line = g_strdup_printf ("\n%s: ", broken);

  load (scene, good);
  bb_artwork_panel_load (scene->panel, broken);
  wait_text (scene, line);
  assert_reads (scene, "Try Again");
  assert_reads (scene, "\ngood.png\n");
  g_assert_cmpuint (scene->n_changed, ==, 1);

  g_free (line);
  line = g_strdup_printf ("\n%s: ", gone);
  bb_artwork_panel_load (scene->panel, gone);
  wait_text (scene, line);
  g_assert_false (reads (scene, "broken.png"));

  /* And once the file is there, trying again helps. */
  g_assert_cmpint (g_rename (good, gone), ==, 0);
  g_assert_true (gtk_widget_activate_action (helper_find_widget (GTK_WIDGET (scene->panel), GTK_TYPE_PROGRESS_BAR),
                                             "artwork-reader.again", NULL));
  wait_text (scene, "\ngone.png\n");
  g_assert_false (reads (scene, "Try Again"));
  tear_down (scene);
}

/* A reading that is stopped, or that another overtakes, tells nothing when its thread is done. */
static void
test_stops (void)
{
  Scene *scene = set_up ();
  g_autofree char *large = art_write ("large.png", 60, ART_PIXELS_PER_METRE);
  g_autofree char *small = art_write ("small.png", 1, ART_PIXELS_PER_METRE);
  GtkWidget *bar = helper_find_widget (GTK_WIDGET (scene->panel), GTK_TYPE_PROGRESS_BAR);

  bb_artwork_panel_load (scene->panel, large);
  g_assert_true (gtk_widget_activate_action (bar, "artwork-reader.stop", NULL));
  assert_reads (scene, "The reading was stopped.");
  g_usleep (G_USEC_PER_SEC / 2);
  helper_wait_idle ();
  assert_reads (scene, "The reading was stopped.");
  assert_reads (scene, "Drop the artwork here");
  g_assert_cmpuint (scene->n_changed, ==, 0);

  bb_artwork_panel_load (scene->panel, large);
  load (scene, small);
  g_usleep (G_USEC_PER_SEC / 2);
  helper_wait_idle ();
  assert_reads (scene, "\nsmall.png\n");
  g_assert_cmpuint (scene->n_changed, ==, 1);

  bb_artwork_panel_load (scene->panel, large);
  bb_artwork_panel_clear (scene->panel);
  g_usleep (G_USEC_PER_SEC / 2);
  helper_wait_idle ();
  assert_reads (scene, "Drop the artwork here");
  g_assert_cmpuint (scene->n_changed, ==, 1);

  /* A window that closes meanwhile does not wait for it. */
  bb_artwork_panel_load (scene->panel, large);
  g_object_add_weak_pointer (G_OBJECT (scene->panel), (gpointer *) &scene->panel);
  gtk_window_destroy (scene->window);
  g_usleep (G_USEC_PER_SEC / 2);
  helper_wait_idle ();
  g_assert_null (scene->panel);
  helper_end_session (scene->session);
  g_free (scene);
}

static GtkDropTarget *
find_drop_target (GtkWidget *widget)
{
  g_autoptr (GListModel) controllers = gtk_widget_observe_controllers (widget);

  for (guint i = 0; i < g_list_model_get_n_items (controllers); i++)
    {
      g_autoptr (GtkEventController) controller = g_list_model_get_item (controllers, i);

      if (GTK_IS_DROP_TARGET (controller))
        return GTK_DROP_TARGET (controller);
    }

  g_error ("Nothing can be dropped on a %s", G_OBJECT_TYPE_NAME (widget));
}

static gboolean
drop (Scene      *scene,
      const char *first,
      const char *second)
{
  g_autoptr (GFile) first_file = g_file_new_for_path (first);
  g_autoptr (GFile) second_file = second != NULL ? g_file_new_for_path (second) : NULL;
  g_autoptr (GSList) files = NULL;
  GValue value = G_VALUE_INIT;
  gboolean taken = FALSE;

  if (second_file != NULL)
    files = g_slist_prepend (files, second_file);
  files = g_slist_prepend (files, first_file);
  g_value_init (&value, GDK_TYPE_FILE_LIST);
  g_value_take_boxed (&value, gdk_file_list_new_from_list (files));
  g_signal_emit_by_name (find_drop_target (GTK_WIDGET (scene->panel)), "drop", &value, 5.0, 5.0, &taken);
  g_value_unset (&value);

  return taken;
}

static void
test_drops (void)
{
  Scene *scene = set_up ();
  g_autofree char *one = art_write ("one.png", 1, ART_PIXELS_PER_METRE);
  g_autofree char *other = art_write ("other.png", 1, ART_PIXELS_PER_METRE);

  g_assert_false (drop (scene, one, other));
  assert_reads (scene, "Drop one picture at a time.");
  g_assert_true (drop (scene, one, NULL));
  wait_text (scene, "\none.png\n");
  g_assert_false (reads (scene, "Drop one picture"));
  tear_down (scene);
}

/* What is kept brings the artwork and the picked colour back; a file that is gone is told of, and not forgotten. */
static void
test_keeps_state (void)
{
  Scene *scene = set_up ();
  g_autofree char *path = art_write ("fox.png", 1, ART_PIXELS_PER_METRE);
  g_autofree char *line = g_strdup_printf ("\n%s: ", path);
  g_autoptr (GVariant) nothing = g_variant_ref_sink (bb_artwork_panel_save_state (scene->panel));
  g_autoptr (GVariant) picked = g_variant_ref_sink (g_variant_new ("(@ayss)", g_variant_new_bytestring (path),
                                                                   "#a8202c", "Brick"));
  g_autoptr (GVariant) kept = NULL;

  bb_artwork_panel_load_state (scene->panel, picked);
  wait_text (scene, "\nfox.png\n");
  assert_reads (scene, "\nBrick\n");
  assert_reads (scene, "\nAdvised print mode\nUnderbase\n");
  kept = g_variant_ref_sink (bb_artwork_panel_save_state (scene->panel));
  g_assert_true (g_variant_equal (kept, picked));

  bb_artwork_panel_clear (scene->panel);
  g_clear_pointer (&kept, g_variant_unref);
  kept = g_variant_ref_sink (bb_artwork_panel_save_state (scene->panel));
  g_assert_true (g_variant_equal (kept, nothing));

  g_assert_cmpint (g_unlink (path), ==, 0);
  bb_artwork_panel_load_state (scene->panel, picked);
  wait_text (scene, line);
  g_clear_pointer (&kept, g_variant_unref);
  kept = g_variant_ref_sink (bb_artwork_panel_save_state (scene->panel));
  g_assert_true (g_variant_equal (kept, picked));
  tear_down (scene);
}

/* Looks */

/* GdkTexture hands out blue, green, red and alpha, on every machine that we know of. */
static void
assert_colour (GtkWidget  *widget,
               int         x,
               int         y,
               const char *srgb)
{
  const int width = gtk_widget_get_width (widget);
  const int height = gtk_widget_get_height (widget);
  GtkSnapshot *snapshot = gtk_snapshot_new ();
  g_autoptr (GskRenderNode) node = NULL;
  g_autoptr (GdkTexture) texture = NULL;
  g_autofree guint8 *pixels = g_new (guint8, 4 * (gsize) width * (gsize) height);
  g_autofree char *found = NULL;
  const guint8 *pixel = NULL;

  GTK_WIDGET_GET_CLASS (widget)->snapshot (widget, snapshot);
  node = gtk_snapshot_free_to_node (snapshot);
  texture = gsk_renderer_render_texture (gtk_native_get_renderer (gtk_widget_get_native (widget)), node,
                                         &GRAPHENE_RECT_INIT (0, 0, (float) width, (float) height));
  gdk_texture_download (texture, pixels, 4 * (gsize) width);
  pixel = pixels + 4 * ((gsize) y * (gsize) width + (gsize) x);
  found = bb_srgb_format (pixel[2] / 255.0, pixel[1] / 255.0, pixel[0] / 255.0);
  g_assert_cmpstr (found, ==, srgb);
}

/* In the middle of the art is the edge of red and black; a little to the left it is red, wherever red is printed on
 * white, and outside the boxes there is the garment. */
static void
test_looks (void)
{
  Scene *scene = set_up ();
  g_autofree char *path = art_write ("fox.png", 1, ART_PIXELS_PER_METRE);
  GtkWidget *preview = helper_find_widget (GTK_WIDGET (scene->panel), BB_TYPE_PRINT_PREVIEW);
  g_autoptr (GVariant) on_blue = NULL;
  int width = 0;
  int height = 0;

  load (scene, path);
  type_size (scene, 100, 50);
  helper_wait_drawn (preview);
  width = gtk_widget_get_width (preview);
  height = gtk_widget_get_height (preview);
  assert_colour (preview, width / 2 - 20, height / 2, "#ff0000");
  assert_colour (preview, 8, height / 2, "#ffffff");

  /* On blue without an underbase red ink lets nothing through; with one it is red. */
  on_blue = g_variant_ref_sink (g_variant_new ("(@ayss)", g_variant_new_bytestring (""), "#0000ff", "Blue"));
  bb_artwork_panel_load_state (scene->panel, on_blue);
  assert_colour (preview, 8, height / 2, "#0000ff");
  press_mode (scene, BB_PRINT_COLOUR_ONLY);
  assert_colour (preview, width / 2 - 20, height / 2, "#000000");
  press_mode (scene, BB_PRINT_UNDERBASE);
  assert_colour (preview, width / 2 - 20, height / 2, "#ff0000");

  /* Black is printed black, and with knockout it is the garment. */
  assert_colour (preview, width / 2 + 20, height / 2, "#000000");
  press_mode (scene, BB_PRINT_UNDERBASE_KNOCKOUT);
  assert_colour (preview, width / 2 + 20, height / 2, "#0000ff");
  tear_down (scene);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, G_TEST_OPTION_ISOLATE_DIRS, NULL);
  adw_init ();

  g_test_add_func ("/artwork-panel/says-what-it-reads", test_says_what_it_reads);
  g_test_add_func ("/artwork-panel/follows-size-and-mode", test_follows_size_and_mode);
  g_test_add_func ("/artwork-panel/takes-the-typed-size", test_takes_the_typed_size);
  g_test_add_func ("/artwork-panel/advises", test_advises);
  g_test_add_func ("/artwork-panel/refuses", test_refuses);
  g_test_add_func ("/artwork-panel/stops", test_stops);
  g_test_add_func ("/artwork-panel/drops", test_drops);
  g_test_add_func ("/artwork-panel/keeps-state", test_keeps_state);
  g_test_add_func ("/artwork-panel/looks", test_looks);

  return g_test_run ();
}
