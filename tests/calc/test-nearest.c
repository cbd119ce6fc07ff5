/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-test"

#include "bb-nearest.h"

#include "bb-lab.h"
#include "reference.h"

/* Fifths of a garment, so that every way of turning one into another can be tried. */
#define FIFTHS 5

static cmsCIELab
lab_of (const char *digits)
{
  g_autofree char *srgb = g_strconcat ("#", digits, NULL);
  guint8 rgb[3];

  g_assert_true (bb_srgb_parse (srgb, rgb));

  return bb_lab_from_srgb (rgb);
}

/* CIELAB and CIEDE2000 of sRGB colours against the npm package culori; see the top of the file. Its white point D50 is
 * CSS's, of the chromaticity 0.3457, 0.3585, and ours ICC's, which moves the most vivid colours by 0.02. */
static void
test_colours_of_a_library (void)
{
  g_autoptr (Reference) reference = reference_load ("srgb-lab-culori");

  g_assert_cmpuint (reference_get_length (reference), ==, 60);
  for (guint i = 0; i < reference_get_length (reference); i++)
    {
      cmsCIELab first = lab_of (reference_get_text (reference, i, "srgb1"));
      cmsCIELab second = lab_of (reference_get_text (reference, i, "srgb2"));

      g_assert_cmpfloat_with_epsilon (first.L, reference_get_number (reference, i, "L1"), 3e-2);
      g_assert_cmpfloat_with_epsilon (first.a, reference_get_number (reference, i, "a1"), 3e-2);
      g_assert_cmpfloat_with_epsilon (first.b, reference_get_number (reference, i, "b1"), 3e-2);
      g_assert_cmpfloat_with_epsilon (cmsCIE2000DeltaE (&first, &second, 1, 1, 1),
                                      reference_get_number (reference, i, "de_00"), 1e-2);
    }
}

static void
set_fifths (const BbTable *table,
            gpointer       record,
            const int      fibres[FIFTHS])
{
  const BbField *field = bb_table_find_field (table, "composition");

  bb_field_clear (field, record);
  for (guint i = 0; i < FIFTHS; i++)
    {
      GArray *composition = bb_field_get_array (field, record);
      BbFibreShare *share = NULL;

      for (guint j = 0; composition != NULL && j < composition->len; j++)
        if (g_array_index (composition, BbFibreShare, j).fibre == fibres[i])
          share = &g_array_index (composition, BbFibreShare, j);
      if (share == NULL)
        {
          share = bb_field_append_item (field, record);
          share->fibre = fibres[i];
          share->fraction = 0;
        }
      share->fraction += 1.0 / FIFTHS;
    }
}

static BbNearestIn *
make_in (const int wanted[FIFTHS],
         const int recipe[FIFTHS])
{
  BbNearestIn *in = bb_nearest_in_new ();
  BbCandidate *candidate = bb_field_append_item (bb_table_find_field (&bb_nearest_in_table, "candidates"), in);

  in->mass_g_per_m2 = 185;
  in->knit = BB_KNIT_JERSEY;
  set_fifths (&bb_nearest_in_table, in, wanted);
  candidate->name = g_strdup ("Recipe");
  candidate->mass_g_per_m2 = 185;
  candidate->knit = BB_KNIT_JERSEY;
  candidate->state = BB_STATE_PROVEN;
  set_fifths (&bb_candidate_table, candidate, recipe);

  return in;
}

static double
distance_of (const int wanted[FIFTHS],
             const int recipe[FIFTHS])
{
  g_autoptr (BbNearestIn) in = make_in (wanted, recipe);
  g_autoptr (BbNearestOut) out = bb_nearest_out_new ();
  g_autoptr (GError) error = NULL;

  g_assert_true (bb_calculator_run (&bb_nearest_calculator, in, out, &error));
  g_assert_no_error (error);

  return g_array_index (out->nearest, BbNear, 0).fibre_distance;
}

static gboolean
is_cellulose (int fibre)
{
  return fibre <= BB_FIBRE_HEMP && fibre != BB_FIBRE_POLYESTER;
}

static gboolean
is_protein (int fibre)
{
  return fibre == BB_FIBRE_WOOL || fibre == BB_FIBRE_SILK;
}

/* What turning one fifth into another costs, from the header's words. */
static double
cost_of (int a,
         int b)
{
  if (a == b)
    return 0.0;

  return is_cellulose (a) == is_cellulose (b) && is_protein (a) == is_protein (b) ? 0.35 : 1.0;
}

/* The least over all ways of pairing the fifths from @from on with those that are left. */
static double
least_cost (const int a[FIFTHS],
            int       b[FIFTHS],
            guint     from)
{
  double least = INFINITY;

  if (from == FIFTHS)
    return 0.0;
  for (guint i = from; i < FIFTHS; i++)
    {
      int kept = b[from];

      b[from] = b[i];
      b[i] = kept;
      least = fmin (least, cost_of (a[from], b[from]) / FIFTHS + least_cost (a, b, from + 1));
      b[i] = b[from];
      b[from] = kept;
    }

  return least;
}

/* Against every way of turning one fabric into the other. */
static void
test_fibres_by_brute_force (void)
{
  for (guint n = 0; n < 300; n++)
    {
      int a[FIFTHS];
      int b[FIFTHS];

      for (guint i = 0; i < FIFTHS; i++)
        {
          a[i] = g_test_rand_int_range (0, (gint32) bb_fibre_choices.n_items);
          b[i] = g_test_rand_int_range (0, (gint32) bb_fibre_choices.n_items);
        }
      g_assert_cmpfloat_with_epsilon (distance_of (a, b), least_cost (a, b, 0), 1e-9);
      g_assert_cmpfloat_with_epsilon (distance_of (a, b), distance_of (b, a), 1e-9);
    }
}

static BbNearestIn *
make_example (void)
{
  const int cotton[FIFTHS] = { 0 };
  BbNearestIn *in = make_in (cotton, cotton);
  BbCandidate *candidate = &g_array_index (in->candidates, BbCandidate, 0);

  in->colour = g_strdup ("black");
  in->srgb = g_strdup ("#17171a");
  candidate->colour = g_strdup ("navy");
  candidate->srgb = g_strdup ("#1b2a49");
  candidate->mass_g_per_m2 = 225;
  candidate->passed = 3;

  return in;
}

static void
expect_reasons (const BbNearestIn *in,
                BbUnitSystem       system,
                const char        *wanted)
{
  const BbUnitContext context = { .system = system };
  g_autoptr (BbNearestOut) out = bb_nearest_out_new ();
  g_autofree char *reasons = NULL;
  g_autoptr (GError) error = NULL;

  g_assert_true (bb_calculator_run (&bb_nearest_calculator, in, out, &error));
  g_assert_no_error (error);
  reasons = bb_near_dup_reasons (&g_array_index (out->nearest, BbNear, 0), in, &context);
  g_assert_cmpstr (reasons, ==, wanted);
}

static void
test_reasons (void)
{
  const int blend[FIFTHS] = { BB_FIBRE_POLYESTER, BB_FIBRE_POLYESTER };
  g_autoptr (BbNearestIn) in = make_example ();
  BbCandidate *candidate = &g_array_index (in->candidates, BbCandidate, 0);

  expect_reasons (in, BB_UNITS_METRIC, "same fabric; navy instead of black, ΔE 14; 40 g/m² heavier; "
                                       "proven on 3 specimens");
  expect_reasons (in, BB_UNITS_US, "same fabric; navy instead of black, ΔE 14; 1.18 oz/yd² heavier; "
                                   "proven on 3 specimens");

  candidate->finish = BB_FINISH_ENZYME;
  candidate->mass_g_per_m2 = 186;
  candidate->passed = 1;
  g_free (candidate->srgb);
  candidate->srgb = g_strdup ("#17171a");
  expect_reasons (in, BB_UNITS_METRIC, "same fibres; finish: enzyme washed instead of none known; same colour; "
                                       "proven on 1 specimen");

  set_fifths (&bb_candidate_table, candidate, blend);
  candidate->finish = BB_FINISH_NONE;
  candidate->knit = BB_KNIT_RIB;
  candidate->mass_g_per_m2 = 150;
  candidate->state = BB_STATE_ON_TRIAL;
  g_clear_pointer (&candidate->srgb, g_free);
  expect_reasons (in, BB_UNITS_METRIC, "40 % polyester, 60 % cotton instead of 100 % cotton; rib instead of single "
                                       "jersey; for navy; 35 g/m² lighter; on trial");
  g_clear_pointer (&candidate->colour, g_free);
  expect_reasons (in, BB_UNITS_METRIC, "40 % polyester, 60 % cotton instead of 100 % cotton; rib instead of single "
                                       "jersey; its colour is not known; 35 g/m² lighter; on trial");
  g_clear_pointer (&in->srgb, g_free);
  expect_reasons (in, BB_UNITS_METRIC, "40 % polyester, 60 % cotton instead of 100 % cotton; rib instead of single "
                                       "jersey; 35 g/m² lighter; on trial");
}

/* Whatever order they are given in, the same stand nearest. */
static void
test_any_order (void)
{
  const int cotton[FIFTHS] = { 0 };
  g_autoptr (BbNearestIn) in = make_in (cotton, cotton);
  double first[8];

  for (guint i = 0; i < G_N_ELEMENTS (first); i++)
    {
      const BbField *candidates = bb_table_find_field (&bb_nearest_in_table, "candidates");
      BbCandidate *candidate = i > 0 ? bb_field_append_item (candidates, in)
                                     : &g_array_index (in->candidates, BbCandidate, 0);

      g_free (candidate->name);
      candidate->name = g_strdup_printf ("R-%u", i);
      candidate->mass_g_per_m2 = 100 + 30 * ((i * 5) % 8);
      candidate->knit = (int) i;
      candidate->state = BB_STATE_PROVEN;
      set_fifths (&bb_candidate_table, candidate, cotton);
    }
  in->limit = G_N_ELEMENTS (first);
  for (guint turn = 0; turn < 2; turn++)
    {
      g_autoptr (BbNearestOut) out = bb_nearest_out_new ();

      g_assert_true (bb_calculator_run (&bb_nearest_calculator, in, out, NULL));
      for (guint i = 0; i < G_N_ELEMENTS (first); i++)
        {
          const BbNear *near = &g_array_index (out->nearest, BbNear, i);

          if (turn > 0)
            g_assert_cmpfloat (near->distance, ==, first[i]);
          first[i] = near->distance;
          g_assert_cmpfloat (near->distance, >=, 0);
          g_assert_cmpfloat (near->distance, <=, 1);
          if (i > 0)
            g_assert_cmpfloat (first[i - 1], <=, near->distance);
        }
      for (guint i = 0; i < 4; i++)
        {
          BbCandidate kept = g_array_index (in->candidates, BbCandidate, i);

          g_array_index (in->candidates, BbCandidate, i) = g_array_index (in->candidates, BbCandidate, 7 - i);
          g_array_index (in->candidates, BbCandidate, 7 - i) = kept;
        }
    }
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/nearest/colours-of-a-library", test_colours_of_a_library);
  g_test_add_func ("/nearest/fibres-by-brute-force", test_fibres_by_brute_force);
  g_test_add_func ("/nearest/reasons", test_reasons);
  g_test_add_func ("/nearest/any-order", test_any_order);

  return g_test_run ();
}
