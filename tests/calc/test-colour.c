/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <math.h>

#include "bb-colour-difference.h"
#include "bb-fastness-change.h"
#include "bb-fastness-stain.h"
#include "reference.h"

typedef struct {
  double l;
  double a;
  double b;
} Lab;

static GArray *
lab_array (Lab lab)
{
  GArray *array = g_array_new (FALSE, TRUE, sizeof (double));

  g_array_append_val (array, lab.l);
  g_array_append_val (array, lab.a);
  g_array_append_val (array, lab.b);

  return array;
}

static Lab
lab_of_row (const Reference *reference,
            guint            row,
            const char      *l,
            const char      *a,
            const char      *b)
{
  return (Lab) { reference_get_number (reference, row, l), reference_get_number (reference, row, a),
                 reference_get_number (reference, row, b) };
}

static BbColourDifferenceOut
difference (Lab first,
            Lab second)
{
  g_autoptr (BbColourDifferenceIn) in = bb_colour_difference_in_new ();
  BbColourDifferenceOut out;
  g_autoptr (GError) error = NULL;

  in->lab_1 = lab_array (first);
  in->lab_2 = lab_array (second);
  bb_record_init (&bb_colour_difference_out_table, &out);
  bb_calculator_run (&bb_colour_difference_calculator, in, &out, &error);
  g_assert_no_error (error);

  return out;
}

static BbFastnessChangeOut
grade_change (Lab original,
              Lab tested)
{
  g_autoptr (BbFastnessChangeIn) in = bb_fastness_change_in_new ();
  BbFastnessChangeOut out;
  g_autoptr (GError) error = NULL;

  in->lab_original = lab_array (original);
  in->lab_tested = lab_array (tested);
  bb_record_init (&bb_fastness_change_out_table, &out);
  bb_calculator_run (&bb_fastness_change_calculator, in, &out, &error);
  g_assert_no_error (error);

  return out;
}

static BbFastnessStainOut
grade_stain (Lab unstained,
             Lab stained)
{
  g_autoptr (BbFastnessStainIn) in = bb_fastness_stain_in_new ();
  BbFastnessStainOut out;
  g_autoptr (GError) error = NULL;

  in->lab_unstained = lab_array (unstained);
  in->lab_stained = lab_array (stained);
  bb_record_init (&bb_fastness_stain_out_table, &out);
  bb_calculator_run (&bb_fastness_stain_calculator, in, &out, &error);
  g_assert_no_error (error);

  return out;
}

static const char *
grade_text (int grade)
{
  return bb_choices_get_key (&bb_grade_choices, grade);
}

static Lab
random_lab (GRand *random)
{
  return (Lab) { g_rand_double_range (random, 0, 100), g_rand_double_range (random, -90, 90),
                 g_rand_double_range (random, -90, 90) };
}

/* Both ways round: the published table is symmetric. */
static void
test_published_pairs (void)
{
  g_autoptr (Reference) pairs = reference_load ("ciede2000-sharma");

  g_assert_cmpuint (reference_get_length (pairs), ==, 34);
  for (guint i = 0; i < reference_get_length (pairs); i++)
    {
      Lab first = lab_of_row (pairs, i, "L1", "a1", "b1");
      Lab second = lab_of_row (pairs, i, "L2", "a2", "b2");
      double expected = reference_get_number (pairs, i, "dE00");

      g_assert_cmpfloat_with_epsilon (difference (first, second).de_00, expected, 1e-4);
      g_assert_cmpfloat_with_epsilon (difference (second, first).de_00, expected, 1e-4);
    }
}

static void
test_independent_differences (void)
{
  g_autoptr (Reference) pairs = reference_load ("colour-difference-culori");

  for (guint i = 0; i < reference_get_length (pairs); i++)
    {
      BbColourDifferenceOut out = difference (lab_of_row (pairs, i, "L1", "a1", "b1"),
                                              lab_of_row (pairs, i, "L2", "a2", "b2"));

      g_assert_cmpfloat_with_epsilon (out.de_00, reference_get_number (pairs, i, "de_00"), 1e-10);
      g_assert_cmpfloat_with_epsilon (out.de_cmc_2_1, reference_get_number (pairs, i, "de_cmc_2_1"), 1e-10);
    }
}

static void
test_difference_properties (void)
{
  g_autoptr (GRand) random = g_rand_new_with_seed (1);

  for (guint i = 0; i < 2000; i++)
    {
      Lab first = random_lab (random);
      Lab second = random_lab (random);
      BbColourDifferenceOut out = difference (first, second);
      BbColourDifferenceOut back = difference (second, first);

      g_assert_cmpfloat_with_epsilon (out.de_ab * out.de_ab, out.dl * out.dl + out.dc * out.dc + out.dh * out.dh,
                                      1e-9);
      g_assert_cmpfloat_with_epsilon (out.de_00, back.de_00, 1e-9);
      g_assert_cmpfloat (out.dl, ==, -back.dl);
      g_assert_cmpfloat_with_epsilon (out.dh, -back.dh, 1e-9);
      g_assert_cmpfloat (difference (first, first).de_cmc_2_1, ==, 0.0);
      g_assert_cmpfloat (out.de_cmc_2_1, >, 0.0);
    }
}

static void
test_computed_changes (void)
{
  g_autoptr (Reference) cases = reference_load ("iso105-a05-examples");

  for (guint i = 0; i < reference_get_length (cases); i++)
    {
      BbFastnessChangeOut out = grade_change (lab_of_row (cases, i, "L_ref", "a_ref", "b_ref"),
                                              lab_of_row (cases, i, "L_test", "a_test", "b_test"));

      /* The file has six decimals. */
      g_assert_cmpfloat_with_epsilon (out.de_f, reference_get_number (cases, i, "dE_F"), 5.1e-7);
      g_assert_cmpfloat_with_epsilon (out.gsc, reference_get_number (cases, i, "GSc_clipped_min1"), 5.1e-7);
      g_assert_cmpstr (grade_text (out.grade), ==, reference_get_text (cases, i, "grade"));
    }
}

/* The chips of the grey scale, as pure differences of lightness, have to come out at their own grade. */
static void
test_grey_scale_of_change (void)
{
  g_autoptr (Reference) steps = reference_load ("iso105-a02-grey-change");

  for (guint i = 0; i < reference_get_length (steps); i++)
    {
      double step = reference_get_number (steps, i, "CIELAB_dE");
      BbFastnessChangeOut out = grade_change ((Lab) { 40, 0, 0 }, (Lab) { 40 + step, 0, 0 });

      g_assert_cmpstr (grade_text (out.grade), ==, reference_get_text (steps, i, "grade"));
      g_assert_cmpfloat_with_epsilon (out.gsc, reference_get_number (steps, i, "grade_numeric"), 0.05);
    }
}

static void
test_classes_of_change (void)
{
  g_autoptr (Reference) classes = reference_load ("iso105-a05");

  for (guint i = 0; i < reference_get_length (classes); i++)
    {
      double least = reference_get_number (classes, i, "dEF_min_inclusive_CIELAB");
      BbFastnessChangeOut at = grade_change ((Lab) { 50, 0, 0 }, (Lab) { 50 + least, 0, 0 });

      g_assert_cmpstr (grade_text (at.grade), ==, reference_get_text (classes, i, "grade"));
      if (i > 0)
        {
          BbFastnessChangeOut below = grade_change ((Lab) { 50, 0, 0 }, (Lab) { 50 + least - 1e-6, 0, 0 });

          g_assert_cmpstr (grade_text (below.grade), ==, reference_get_text (classes, i - 1, "grade"));
        }
    }
}

static Lab
lab_of_hue (double l,
            double chroma,
            double degrees)
{
  return (Lab) { l, chroma * cos (degrees * G_PI / 180), chroma * sin (degrees * G_PI / 180) };
}

/* Two fades of a blue that mirror each other in hue: the blue term tells them apart only if the sign is kept. */
static void
test_hue_difference_is_signed (void)
{
  Lab blue = lab_of_hue (35, 45, 280);
  Lab redder = lab_of_hue (35, 38, 288);
  Lab greener = lab_of_hue (35, 38, 272);

  g_assert_cmpfloat_with_epsilon (difference (blue, redder).de_ab, difference (blue, greener).de_ab, 1e-9);
  g_assert_cmpfloat_with_epsilon (difference (blue, redder).dh, -difference (blue, greener).dh, 1e-9);
  g_assert_cmpfloat (difference (blue, redder).dh, >, 5.0);
  /* dC = -7 and the mean chroma 41.5 make D = -2.9 · exp (-(4/30)²), which adds to one and takes from the other. */
  g_assert_cmpfloat (grade_change (blue, redder).de_f, >, grade_change (blue, greener).de_f + 3.0);
}

static void
test_change_falls_along_a_ray (void)
{
  g_autoptr (GRand) random = g_rand_new_with_seed (1);

  for (guint i = 0; i < 500; i++)
    {
      double l = g_rand_double_range (random, 0, 1);
      double last_gsc = 5.0;
      int last_grade = BB_GRADE_5;

      /* Grey to lighter or darker grey: there the standard's difference is the plain one. */
      for (guint step = 0; step <= 40; step++)
        {
          BbFastnessChangeOut out = grade_change ((Lab) { 50, 0, 0 }, (Lab) { 50 + step * l * (i % 2 ? 1 : -1), 0, 0 });

          g_assert_cmpfloat (out.gsc, <=, last_gsc);
          g_assert_cmpint (out.grade, >=, last_grade);
          last_gsc = out.gsc;
          last_grade = out.grade;
        }
    }
}

static void
test_computed_stains (void)
{
  g_autoptr (Reference) cases = reference_load ("iso105-a04-examples");

  for (guint i = 0; i < reference_get_length (cases); i++)
    {
      double de = reference_get_number (cases, i, "dE_ab_CIELAB");
      double dl = reference_get_number (cases, i, "dL_CIELAB");
      BbFastnessStainOut out = grade_stain ((Lab) { 90, 0, 0 }, (Lab) { 90 + dl, sqrt (de * de - dl * dl), 0 });

      g_assert_cmpfloat_with_epsilon (out.de_gs, reference_get_number (cases, i, "dE_GS"), 5.1e-7);
      g_assert_cmpfloat_with_epsilon (out.ssr, reference_get_number (cases, i, "SSR"), 5.1e-7);
      g_assert_cmpstr (grade_text (out.grade), ==, reference_get_text (cases, i, "grade"));
    }
}

static void
test_grey_scale_of_staining (void)
{
  g_autoptr (Reference) steps = reference_load ("iso105-a03-grey-stain");

  for (guint i = 0; i < reference_get_length (steps); i++)
    {
      double step = reference_get_number (steps, i, "CIELAB_dE");
      BbFastnessStainOut out = grade_stain ((Lab) { 94, 0, 0 }, (Lab) { 94 - step, 0, 0 });

      g_assert_cmpstr (grade_text (out.grade), ==, reference_get_text (steps, i, "grade"));
      g_assert_cmpfloat_with_epsilon (out.ssr, reference_get_number (steps, i, "grade_numeric"), 0.05);
    }
}

/* The lowest rating of each class, and a hundredth below it. */
static void
test_classes_of_staining (void)
{
  g_autoptr (Reference) classes = reference_load ("iso105-a04");

  for (guint i = 0; i + 1 < reference_get_length (classes); i++)
    {
      double least = reference_get_number (classes, i, "SSR_min_inclusive");
      gboolean straight = least > 4.0;
      double at = straight ? (5.0 - least) / 0.23 : exp ((6.1 - least) / 1.45);
      double below = straight ? (5.0 - least + 0.01) / 0.23 : exp ((6.1 - least + 0.01) / 1.45);
      BbFastnessStainOut in_class = grade_stain ((Lab) { 94, 0, 0 }, (Lab) { 94 - at, 0, 0 });
      BbFastnessStainOut out_of_class = grade_stain ((Lab) { 94, 0, 0 }, (Lab) { 94 - below, 0, 0 });

      g_assert_cmpstr (grade_text (in_class.grade), ==, reference_get_text (classes, i, "grade"));
      g_assert_cmpstr (grade_text (out_of_class.grade), ==, reference_get_text (classes, i + 1, "grade"));
    }
}

/* Up to the step of 0.02 that the standard's own formula takes where its branches meet. */
static void
test_stain_falls_along_a_ray (void)
{
  g_autoptr (GRand) random = g_rand_new_with_seed (1);

  for (guint i = 0; i < 500; i++)
    {
      Lab direction = { -g_rand_double_range (random, 0, 1), g_rand_double_range (random, -1, 1),
                        g_rand_double_range (random, -1, 1) };
      double last_de = -1.0;
      double last_ssr = 5.0;
      int last_grade = BB_GRADE_5;

      for (guint step = 0; step <= 60; step++)
        {
          BbFastnessStainOut out = grade_stain ((Lab) { 94, -1, 2 }, (Lab) { 94 + step * direction.l,
                                                                            -1 + step * direction.a,
                                                                            2 + step * direction.b });

          g_assert_cmpfloat (out.de_gs, >, last_de);
          g_assert_cmpfloat (out.ssr, <=, last_ssr);
          g_assert_cmpint (out.grade, >=, last_grade);
          last_de = out.de_gs;
          last_ssr = out.ssr;
          last_grade = out.grade;
        }
    }
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/colour/difference/published-pairs", test_published_pairs);
  g_test_add_func ("/colour/difference/independent", test_independent_differences);
  g_test_add_func ("/colour/difference/properties", test_difference_properties);
  g_test_add_func ("/colour/change/computed", test_computed_changes);
  g_test_add_func ("/colour/change/grey-scale", test_grey_scale_of_change);
  g_test_add_func ("/colour/change/classes", test_classes_of_change);
  g_test_add_func ("/colour/change/hue-difference-is-signed", test_hue_difference_is_signed);
  g_test_add_func ("/colour/change/falls-along-a-ray", test_change_falls_along_a_ray);
  g_test_add_func ("/colour/stain/computed", test_computed_stains);
  g_test_add_func ("/colour/stain/grey-scale", test_grey_scale_of_staining);
  g_test_add_func ("/colour/stain/classes", test_classes_of_staining);
  g_test_add_func ("/colour/stain/falls-along-a-ray", test_stain_falls_along_a_ray);

  return g_test_run ();
}
