/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-test"

#include "bb-chart.h"

#include <math.h>
#include <string.h>

#include "paper.h"

#define WIDTH 400.0
#define HEIGHT 300.0

/* Two series of three points, and a limit. */
static BbChart *
make_chart (void)
{
  BbChart *chart = bb_chart_new ("Laydown by setting", bb_axis_new_numbers ("Setting", NULL, 0, 10, 6),
                                 bb_axis_new_numbers ("Laydown", "g/m²", 100, 200, 6));
  BbSeries *first = bb_series_new ("front", BB_MARKER_CIRCLE, BB_STROKE_SOLID, 0);
  BbSeries *second = bb_series_new ("back", BB_MARKER_SQUARE, BB_STROKE_DASHED, 1);

  bb_series_add (first, 1, 120);
  bb_series_add (first, 5, 150);
  bb_series_add (first, 9, 180)->note = g_strdup ("ran dry");
  bb_series_add (second, 2, 110);
  bb_series_add (second, 6, 140);
  bb_series_add (second, 10, 170);
  g_array_index (second->points, BbPoint, 1).low = 130;
  g_array_index (second->points, BbPoint, 1).high = 150;
  chart->caption = g_strdup ("The front takes more.");
  bb_chart_take_layer (chart, bb_limit_layer_new (160, FALSE, "wanted"));
  bb_chart_take_layer (chart, bb_line_layer_new (first));
  bb_chart_take_layer (chart, bb_line_layer_new (second));

  return chart;
}

static void
test_cursor_keys (void)
{
  g_autoptr (BbChart) chart = make_chart ();
  BbChartSpot spot = BB_CHART_NO_SPOT;
  const struct {
    BbChartStep step;
    gboolean moves;
    int layer;
    int point;
  } rows[] = {
    { BB_CHART_NEXT, TRUE, 1, 0 },
    { BB_CHART_PREVIOUS, FALSE, 1, 0 },
    { BB_CHART_NEXT, TRUE, 1, 1 },
    { BB_CHART_NEXT_SERIES, TRUE, 2, 1 },
    { BB_CHART_NEXT_SERIES, FALSE, 2, 1 },
    { BB_CHART_LAST, TRUE, 2, 2 },
    { BB_CHART_NEXT, FALSE, 2, 2 },
    { BB_CHART_PREVIOUS_SERIES, TRUE, 1, 2 },
    { BB_CHART_PREVIOUS_SERIES, FALSE, 1, 2 },
    { BB_CHART_FIRST, TRUE, 1, 0 },
    { BB_CHART_FIRST, FALSE, 1, 0 },
  };

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_assert_cmpint (bb_chart_step (chart, rows[i].step, &spot), ==, rows[i].moves);
      g_assert_cmpint (spot.layer, ==, rows[i].layer);
      g_assert_cmpint (spot.point, ==, rows[i].point);
    }
}

static void
test_read_out (void)
{
  g_autoptr (BbChart) chart = make_chart ();
  g_autofree char *whole = bb_chart_describe (chart);
  g_autofree char *noted = bb_chart_describe_spot (chart, &(BbChartSpot) { 1, 2 });
  g_autofree char *interval = bb_chart_describe_spot (chart, &(BbChartSpot) { 2, 1 });
  g_autofree char *none = bb_chart_describe_spot (chart, &BB_CHART_NO_SPOT);
  g_autofree char *limit = bb_chart_describe_spot (chart, &(BbChartSpot) { 0, 0 });

  g_assert_cmpstr (whole, ==,
                   "Laydown by setting\nAcross: Setting. Up: Laydown (g/m²).\n"
                   "front, 3 points: from 1.0, 120 g/m² to 9.0, 180 g/m²\n"
                   "back, 3 points: from 2.0, 110 g/m² to 10.0, 170 g/m²\nThe front takes more.");
  g_assert_cmpstr (noted, ==, "front\n9.0\n180 g/m²\nran dry");
  g_assert_cmpstr (interval, ==, "back\n6.0\n140 g/m²\nfrom 130 g/m² to 150 g/m²");
  g_assert_null (none);
  g_assert_null (limit);
}

/* Every point is found where it is drawn, and nothing where nothing is. */
static void
test_pointing (void)
{
  g_autoptr (BbChart) chart = make_chart ();
  BbChartSpot spot = BB_CHART_NO_SPOT;
  gboolean found[2][3] = { { FALSE } };

  for (double x = 0; x < WIDTH; x += 10)
    for (double y = 0; y < HEIGHT; y += 10)
      if (bb_chart_find_spot (chart, WIDTH, HEIGHT, &bb_chart_style_light, x, y, &spot))
        found[spot.layer - 1][spot.point] = TRUE;
  for (guint s = 0; s < 2; s++)
    for (guint p = 0; p < 3; p++)
      g_assert_true (found[s][p]);
  g_assert_false (bb_chart_find_spot (chart, WIDTH, HEIGHT, &bb_chart_style_light, WIDTH, HEIGHT, &spot));
  g_assert_cmpint (spot.layer, ==, -1);
}

static void
test_png (void)
{
  g_autoptr (BbChart) chart = make_chart ();
  g_autoptr (GError) error = NULL;
  g_autoptr (GBytes) png = bb_chart_to_png (chart, WIDTH, HEIGHT, 2, &error);
  Picture *picture = NULL;

  g_assert_no_error (error);
  picture = picture_read (png);
  g_assert_cmpint (picture_get_width (picture), ==, 800);
  g_assert_cmpint (picture_get_height (picture), ==, 600);
  /* White paper, and something on it: letters in black, series in their inks. */
  g_assert_cmpuint (picture_get (picture, 0, 0), ==, 0xffffff);
  g_assert_cmpuint (picture_count (picture, 0x000000), >, 100);
  g_assert_cmpuint (picture_count (picture, 0x1d6f72), >, 50);
  g_assert_cmpuint (picture_count (picture, 0xb34a1c), >, 50);
  picture_free (picture);
}

static void
test_pdf (void)
{
  g_autoptr (BbChart) chart = make_chart ();
  g_autoptr (GError) error = NULL;
  g_autoptr (GBytes) pdf = bb_chart_to_pdf (chart, WIDTH, HEIGHT, &error);
  g_autofree char *text = NULL;
  g_autofree char *facts = NULL;
  const char *words[] = { "Laydown by setting", "Setting", "Laydown (g/m²)", "front", "back", "wanted", "200",
                          "The front takes more." };

  g_assert_no_error (error);
  text = paper_read_text (pdf);
  facts = paper_read_facts (pdf);
  for (guint i = 0; i < G_N_ELEMENTS (words); i++)
    if (strstr (text, words[i]) == NULL)
      g_error ("“%s” is not in: %s", words[i], text);
  g_assert_nonnull (strstr (facts, "Page size:       400 x 300 pts"));
  g_assert_nonnull (strstr (facts, "Pages:           1"));
  g_assert_nonnull (strstr (facts, "Title:           Laydown by setting"));
}

static Picture *
draw (const BbChart      *chart,
      const BbChartStyle *style,
      const BbChartSpot  *spot,
      double              width,
      double              height)
{
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_RGB24, (int) width, (int) height);
  cairo_t *cr = cairo_create (surface);

  cairo_set_source_rgb (cr, style->paper.red, style->paper.green, style->paper.blue);
  cairo_paint (cr);
  bb_chart_draw (chart, cr, width, height, style, spot);
  cairo_destroy (cr);

  return picture_take (surface);
}

/* Of a chart without points the plot says so; a spot changes what is seen; small and empty sizes draw without harm. */
static void
test_drawing (void)
{
  g_autoptr (BbChart) chart = make_chart ();
  g_autoptr (BbChart) empty = bb_chart_new (NULL, bb_axis_new_cycles (20), bb_axis_new_grades ("Grade"));
  g_autofree char *words = bb_chart_describe (empty);
  BbChartSpot spot = { 1, 1 };
  Picture *plain = draw (chart, &bb_chart_style_light, NULL, WIDTH, HEIGHT);
  Picture *marked = draw (chart, &bb_chart_style_light, &spot, WIDTH, HEIGHT);
  Picture *dark = draw (chart, &bb_chart_style_dark, &spot, WIDTH, HEIGHT);
  Picture *bare = draw (empty, &bb_chart_style_light, NULL, WIDTH, HEIGHT);

  g_assert_false (picture_equal (plain, marked));
  g_assert_false (picture_equal (marked, dark));
  g_assert_true (bb_chart_is_empty (empty));
  g_assert_cmpstr (words, ==, "There is nothing to show yet.");
  g_assert_cmpuint (picture_count (bare, picture_get (bare, 0, 0)), <, (guint) (WIDTH * HEIGHT));
  picture_free (plain);
  picture_free (marked);
  picture_free (dark);
  picture_free (bare);

  for (double side = 1; side < 60; side += 7)
    picture_free (draw (chart, &bb_chart_style_dark, &spot, side, side));
}

/* A field z = x: the contour of 5 is an upright line at 5, and cells get deeper to the right. */
static void
test_heat (void)
{
  const double across[] = { 0, 4, 10 };
  const double up[] = { 0, 10 };
  const double values[] = { 0, 4, 10, 0, 4, (double) NAN };
  const BbGrid grid = { 3, 2, across, up, values };
  const BbLevel level = { 2, "two", TRUE };
  BbChart *chart = bb_chart_new (NULL, bb_axis_new_numbers ("x", NULL, 0, 10, 3),
                                 bb_axis_new_numbers ("y", NULL, 0, 10, 3));
  BbLayer *layer = bb_chart_take_layer (chart, bb_heat_layer_new ("z", &grid, &level, 1));
  g_autofree char *text = bb_chart_describe_spot (chart, &(BbChartSpot) { 0, 1 });
  BbPlot plot = { .width = 100, .height = 100, .across = chart->across, .up = chart->up,
                  .style = &bb_chart_style_print };
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_RGB24, 100, 100);
  cairo_t *cr = cairo_create (surface);
  BbInk paper = bb_chart_style_print.paper;
  Picture *picture = NULL;

  plot.letters = pango_font_map_create_context (pango_cairo_font_map_get_default ());
  bb_ink_set (&paper, 1, cr);
  cairo_paint (cr);
  layer->draw (layer, cr, &plot);
  cairo_destroy (cr);
  picture = picture_take (surface);
  g_assert_cmpstr (text, ==, "z\n4.0\n0.0\nz: 4");
  /* The line, its ground left and right, and nothing where a corner was not found. */
  g_assert_cmpuint (picture_get (picture, 20, 50) & 0xff, <, 0x60);
  g_assert_cmpuint (picture_get (picture, 10, 50), ==, picture_get (picture, 30, 50));
  g_assert_cmpuint (picture_get (picture, 10, 50), !=, 0xffffff);
  g_assert_cmpuint (picture_get (picture, 70, 50), ==, 0xffffff);
  picture_free (picture);
  g_object_unref (plot.letters);
  bb_chart_unref (chart);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, G_TEST_OPTION_ISOLATE_DIRS, NULL);

  g_test_add_func ("/chart/cursor-keys", test_cursor_keys);
  g_test_add_func ("/chart/read-out", test_read_out);
  g_test_add_func ("/chart/pointing", test_pointing);
  g_test_add_func ("/chart/png", test_png);
  g_test_add_func ("/chart/pdf", test_pdf);
  g_test_add_func ("/chart/drawing", test_drawing);
  g_test_add_func ("/chart/heat", test_heat);

  return g_test_run ();
}
