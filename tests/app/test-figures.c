/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-test"

#include <adwaita.h>

#include "bb-figures.h"

/* Columns of figures: as many as fit, and none of them alone in the last row where that can be helped. */

#define WIDE 100
#define HIGH 40
#define GAP 12

static GtkWidget *
make_figures (guint n)
{
  GtkWidget *figures = g_object_ref_sink (g_object_new (BB_TYPE_FIGURES, "least", 1, "most", 5, "column-spacing", GAP,
                                                        "row-spacing", GAP, NULL));

  for (guint i = 0; i < n; i++)
    {
      GtkWidget *figure = adw_bin_new ();

      gtk_widget_set_size_request (figure, WIDE, HIGH);
      bb_figures_append (BB_FIGURES (figures), figure);
    }

  return figures;
}

static int
width_of (int columns)
{
  return columns * WIDE + (columns - 1) * GAP;
}

static void
test_columns (void)
{
  static const struct {
    guint n;
    int fit;
    int columns;
    int rows;
  } cases[] = {
    { 1, 5, 1, 1 }, { 2, 1, 1, 2 }, { 2, 2, 2, 1 }, { 3, 3, 3, 1 }, { 3, 2, 2, 2 }, { 4, 4, 4, 1 }, { 4, 3, 2, 2 },
    { 4, 2, 2, 2 }, { 5, 5, 5, 1 }, { 5, 4, 3, 2 }, { 5, 3, 3, 2 }, { 5, 2, 2, 3 }, { 6, 5, 3, 2 }, { 6, 4, 3, 2 },
    { 7, 4, 4, 2 }, { 8, 9, 4, 2 }, { 9, 4, 3, 3 }, { 10, 3, 2, 5 },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      GtkWidget *figures = make_figures (cases[i].n);
      int height = 0;

      g_assert_cmpint (bb_figures_get_columns (BB_FIGURES (figures), width_of (cases[i].fit)), ==, cases[i].columns);
      gtk_widget_measure (figures, GTK_ORIENTATION_VERTICAL, width_of (cases[i].fit), NULL, &height, NULL, NULL);
      g_assert_cmpint (height, ==, cases[i].rows * HIGH + (cases[i].rows - 1) * GAP);
      bb_figures_drop_from (BB_FIGURES (figures), 0);
      g_assert_finalize_object (figures);
    }
}

/* What is hidden takes no place, and nothing takes no height. */
static void
test_hidden (void)
{
  GtkWidget *figures = make_figures (5);
  int height = -1;

  gtk_widget_set_visible (gtk_widget_get_first_child (figures), FALSE);
  g_assert_cmpint (bb_figures_get_columns (BB_FIGURES (figures), width_of (3)), ==, 2);
  bb_figures_drop_from (BB_FIGURES (figures), 2);
  g_assert_nonnull (bb_figures_get (BB_FIGURES (figures), 1));
  g_assert_null (bb_figures_get (BB_FIGURES (figures), 2));
  bb_figures_drop_from (BB_FIGURES (figures), 0);
  gtk_widget_measure (figures, GTK_ORIENTATION_VERTICAL, 500, NULL, &height, NULL, NULL);
  g_assert_cmpint (height, ==, 0);
  g_assert_finalize_object (figures);
}

static void
expect_place (GtkWidget *figures,
              GtkWidget *figure,
              int        x,
              int        y)
{
  graphene_rect_t bounds;

  g_assert_true (gtk_widget_compute_bounds (figure, figures, &bounds));
  g_assert_cmpint ((int) bounds.origin.x, ==, x);
  g_assert_cmpint ((int) bounds.origin.y, ==, y);
  g_assert_cmpint ((int) bounds.size.width, ==, WIDE);
}

static void
test_places (void)
{
  static const GtkTextDirection directions[] = { GTK_TEXT_DIR_LTR, GTK_TEXT_DIR_RTL };

  for (guint i = 0; i < G_N_ELEMENTS (directions); i++)
    {
      GtkWidget *figures = make_figures (4);
      GtkWidget *first = gtk_widget_get_first_child (figures);
      const int start = i == 0 ? 0 : WIDE + GAP;

      gtk_widget_set_direction (figures, directions[i]);
      gtk_widget_size_allocate (figures, &(GtkAllocation) { 0, 0, width_of (2), 2 * HIGH + GAP }, -1);
      expect_place (figures, first, start, 0);
      expect_place (figures, gtk_widget_get_next_sibling (first), WIDE + GAP - start, 0);
      expect_place (figures, gtk_widget_get_last_child (figures), WIDE + GAP - start, HIGH + GAP);
      bb_figures_drop_from (BB_FIGURES (figures), 0);
      g_assert_finalize_object (figures);
    }
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, G_TEST_OPTION_ISOLATE_DIRS, NULL);
  adw_init ();

  g_test_add_func ("/figures/columns", test_columns);
  g_test_add_func ("/figures/hidden", test_hidden);
  g_test_add_func ("/figures/places", test_places);

  return g_test_run ();
}
