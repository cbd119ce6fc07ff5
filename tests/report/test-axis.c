/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bb-axis.h"

#include <math.h>

static const BbTick *
get_tick (const BbAxis *axis,
          guint         i)
{
  return &g_array_index (axis->ticks, BbTick, i);
}

static char *
join_labels (const BbAxis *axis)
{
  g_autoptr (GString) out = g_string_new (NULL);

  for (guint i = 0; i < axis->ticks->len; i++)
    g_string_append_printf (out, "%s%s", i > 0 ? " " : "", get_tick (axis, i)->label);

  return g_strdup (out->str);
}

/* By hand. */
static void
test_nice_numbers (void)
{
  const struct {
    double low;
    double high;
    guint n_ticks;
    const char *labels;
  } rows[] = {
    { 0, 10, 6, "0 2 4 6 8 10" },
    { 0, 1, 6, "0.0 0.2 0.4 0.6 0.8 1.0" },
    { 0, 0.3, 4, "0.0 0.1 0.2 0.3" },
    { 103, 187, 6, "100 120 140 160 180 200" },
    { -7, 13, 5, "-10 -5 0 5 10 15" },
    { 1234, 98765, 6, "0 20000 40000 60000 80000 100000" },
    { 0.0011, 0.0019, 5, "0.0010 0.0012 0.0014 0.0016 0.0018 0.0020" },
    { 5, 5, 4, "2 4 6 8" },
    { 0, 0, 3, "-1 0 1" },
  };

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autoptr (BbAxis) axis = bb_axis_new_numbers ("T", NULL, rows[i].low, rows[i].high, rows[i].n_ticks);
      g_autofree char *labels = join_labels (axis);

      g_assert_cmpstr (labels, ==, rows[i].labels);
    }
}

/* Whatever the range: the axis holds it, its ends are marks, and the steps are 1, 2 or 5 of a power of ten. */
static void
test_any_range (void)
{
  for (guint i = 0; i < 2000; i++)
    {
      double range = g_test_rand_double_range (0.01, 1) * pow (10, g_test_rand_int_range (-4, 7));
      /* Far from zero a double has no digits left for the steps of a short range. */
      double middle = g_test_rand_double_range (-1, 1) * range * pow (10, g_test_rand_int_range (-6, 7));
      guint n = (guint) g_test_rand_int_range (2, 12);
      g_autoptr (BbAxis) axis = bb_axis_new_numbers ("T", NULL, middle - range, middle + range, n);
      double step = 0.0;
      double mantissa = 0.0;

      g_assert_cmpuint (axis->ticks->len, >=, 2);
      g_assert_cmpuint (axis->ticks->len, <=, n + 2);
      step = get_tick (axis, 1)->value - get_tick (axis, 0)->value;
      mantissa = step / pow (10, floor (log10 (step * (1 + 1e-9))));
      g_assert_true (fabs (mantissa - 1) < 1e-6 || fabs (mantissa - 2) < 1e-6 || fabs (mantissa - 5) < 1e-6);
      g_assert_cmpfloat (axis->low, <=, middle - range + step * 1e-6);
      g_assert_cmpfloat (axis->high, >=, middle + range - step * 1e-6);
      g_assert_cmpfloat_with_epsilon (get_tick (axis, 0)->value, axis->low, step * 1e-6);
      g_assert_cmpfloat_with_epsilon (get_tick (axis, axis->ticks->len - 1)->value, axis->high, step * 1e-6);
    }
}

static void
test_there_and_back (void)
{
  g_autoptr (BbAxis) axis = bb_axis_new_numbers ("T", "g/m²", 100, 200, 6);

  g_assert_cmpfloat (bb_axis_map (axis, 100), ==, 0);
  g_assert_cmpfloat (bb_axis_map (axis, 150), ==, 0.5);
  g_assert_cmpfloat (bb_axis_map (axis, 200), ==, 1);
  g_assert_cmpfloat (bb_axis_map (axis, 300), ==, 2);
  for (guint i = 0; i < 100; i++)
    {
      double value = g_test_rand_double_range (0, 300);

      g_assert_cmpfloat_with_epsilon (bb_axis_unmap (axis, bb_axis_map (axis, value)), value, 1e-12 * 300);
    }
}

static void
test_grades (void)
{
  g_autoptr (BbAxis) axis = bb_axis_new_grades ("Grade");
  g_autofree char *labels = join_labels (axis);
  g_autofree char *half = bb_axis_format (axis, 4.5);
  g_autofree char *whole = bb_axis_format (axis, 2.0);

  g_assert_cmpstr (labels, ==, "1 1-2 2 2-3 3 3-4 4 4-5 5");
  g_assert_cmpstr (half, ==, "grade 4-5");
  g_assert_cmpstr (whole, ==, "grade 2");
  /* A better grade stands higher, and the best not on the edge. */
  g_assert_cmpfloat (bb_axis_map (axis, 5), >, bb_axis_map (axis, 4.5));
  g_assert_cmpfloat (bb_axis_map (axis, 5), <, 1);
  g_assert_cmpfloat (bb_axis_map (axis, 1), >, 0);
}

static void
test_cycles (void)
{
  const struct {
    double last;
    const char *labels;
  } rows[] = {
    { 0, "0 1" }, { 1, "0 1" }, { 5, "0 1 2 3 4 5" }, { 20, "0 5 10 15 20" }, { 161, "0 50 100 150" },
    { 500, "0 100 200 300 400 500" },
  };

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autoptr (BbAxis) axis = bb_axis_new_cycles (rows[i].last);
      g_autofree char *labels = join_labels (axis);

      g_assert_cmpstr (labels, ==, rows[i].labels);
      g_assert_cmpfloat (axis->high, >=, rows[i].last);
      g_assert_cmpfloat (axis->low, ==, 0);
    }
}

static void
test_words (void)
{
  const char * const names[] = { "R.1", "R.2", NULL };
  g_autoptr (BbAxis) cycles = bb_axis_new_cycles (20);
  g_autoptr (BbAxis) shares = bb_axis_new_shares ("Still good");
  g_autoptr (BbAxis) numbers = bb_axis_new_numbers ("Laydown", "g/m²", 100, 200, 6);
  g_autoptr (BbAxis) places = bb_axis_new_names ("Revision", names);
  g_autofree char *one = bb_axis_format (cycles, 1);
  g_autofree char *many = bb_axis_format (cycles, 20);
  g_autofree char *share = bb_axis_format (shares, 0.46415);
  g_autofree char *share_heading = bb_axis_dup_heading (shares);
  g_autofree char *number = bb_axis_format (numbers, 151.23);
  g_autofree char *heading = bb_axis_dup_heading (numbers);
  g_autofree char *second = bb_axis_format (places, 2);
  g_autofree char *none = bb_axis_format (places, 3);

  g_assert_cmpstr (one, ==, "1 cycle");
  g_assert_cmpstr (many, ==, "20 cycles");
  g_assert_cmpstr (share, ==, "46.4 %");
  g_assert_cmpstr (share_heading, ==, "Still good (%)");
  /* Marks are 20 apart: whole 2 can be read off. */
  g_assert_cmpstr (number, ==, "151 g/m²");
  g_assert_cmpstr (heading, ==, "Laydown (g/m²)");
  g_assert_cmpstr (second, ==, "R.2");
  g_assert_cmpstr (none, ==, "");
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/axis/nice-numbers", test_nice_numbers);
  g_test_add_func ("/axis/any-range", test_any_range);
  g_test_add_func ("/axis/there-and-back", test_there_and_back);
  g_test_add_func ("/axis/grades", test_grades);
  g_test_add_func ("/axis/cycles", test_cycles);
  g_test_add_func ("/axis/words", test_words);

  return g_test_run ();
}
