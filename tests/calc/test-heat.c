/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-test"

#include <string.h>

#include "bb-cure-profile.h"
#include "bb-drying.h"
#include "bb-heat-limit.h"
#include "bb-line-rate.h"
#include "bb-press-map.h"
#include "bb-tunnel.h"

/* What has to hold for every input of the heat calculators, tried on seeded random ones. */

#define N_TRIALS 300
#define ROUNDING 1e-12

static GRand *
new_random (void)
{
  return g_rand_new_with_seed (20250314);
}

static void
run (const BbCalculator *calculator,
     gconstpointer       in,
     gpointer            out)
{
  g_autoptr (GError) error = NULL;

  bb_record_clear (calculator->out, out);
  g_assert_true (bb_calculator_run (calculator, in, out, &error));
  g_assert_no_error (error);
}

static void
assert_close (double actual,
              double expected)
{
  g_assert_cmpfloat_with_epsilon (actual, expected, ROUNDING * fmax (1.0, fabs (expected)));
}

static void
shuffle (GArray *array,
         GRand  *random)
{
  gsize size = g_array_get_element_size (array);
  g_autofree char *held = g_malloc (size);

  for (guint i = array->len; i > 1; i--)
    {
      char *a = array->data + (i - 1) * size;
      char *b = array->data + (gsize) g_rand_int_range (random, 0, (gint32) i) * size;

      memcpy (held, a, size);
      memmove (a, b, size);
      memcpy (b, held, size);
    }
}

/* One to five different fibres whose shares make 1. */
static GArray *
random_composition (GRand *random)
{
  GArray *composition = g_array_new (FALSE, FALSE, sizeof (BbFibreShare));
  guint n = (guint) g_rand_int_range (random, 1, 6);
  int first = g_rand_int_range (random, 0, BB_N_FIBRES);
  double sum = 0;

  for (guint i = 0; i < n; i++)
    {
      BbFibreShare share = { .fibre = (first + (int) i * 5) % BB_N_FIBRES,
                             .fraction = g_rand_double_range (random, 0.05, 1) };

      sum += share.fraction;
      g_array_append_val (composition, share);
    }
  for (guint i = 0; i < n; i++)
    g_array_index (composition, BbFibreShare, i).fraction /= sum;

  return composition;
}

static BbDryingIn *
random_drying (GRand *random)
{
  BbDryingIn *in = bb_drying_in_new ();

  in->wet_g = g_rand_double_range (random, 0, 200);
  in->solids_fraction = g_rand_double_range (random, 0, 1);
  in->heated_fabric_g = g_rand_double_range (random, 0, 500);
  in->composition = random_composition (random);
  in->start_c = g_rand_double_range (random, 0, 100);
  in->press_c = g_rand_double_range (random, 100, 250);
  in->heat_flux_w = g_rand_double_range (random, 100, 5000);

  return in;
}

static void
test_drying_adds_up (void)
{
  g_autoptr (GRand) random = new_random ();

  for (guint i = 0; i < N_TRIALS; i++)
    {
      g_autoptr (BbDryingIn) in = random_drying (random);
      g_autoptr (BbDryingOut) out = bb_drying_out_new ();
      g_autoptr (BbDryingOut) other = bb_drying_out_new ();

      run (&bb_drying_calculator, in, out);
      assert_close (out->water_g + out->dry_gain_g, in->wet_g);
      assert_close (out->minimum_s * in->heat_flux_w / 1000.0, out->energy_kj);

      shuffle (in->composition, random);
      run (&bb_drying_calculator, in, other);
      assert_close (other->energy_kj, out->energy_kj);
      assert_close (other->regain_g, out->regain_g);

      in->wet_g *= 2;
      in->heated_fabric_g *= 2;
      run (&bb_drying_calculator, in, other);
      assert_close (other->energy_kj, 2 * out->energy_kj);
      assert_close (other->regain_g, 2 * out->regain_g);
    }
}

static void
test_drying_more_never_takes_less (void)
{
  g_autoptr (GRand) random = new_random ();

  for (guint i = 0; i < N_TRIALS; i++)
    {
      g_autoptr (BbDryingIn) in = random_drying (random);
      g_autoptr (BbDryingOut) out = bb_drying_out_new ();
      g_autoptr (BbDryingOut) more = bb_drying_out_new ();
      double start_c = in->start_c;

      run (&bb_drying_calculator, in, out);
      in->start_c = g_rand_double_range (random, 0, start_c);
      run (&bb_drying_calculator, in, more);
      g_assert_cmpfloat (more->energy_kj, >=, out->energy_kj);
      in->wet_g += g_rand_double_range (random, 0, 10);
      in->heated_fabric_g += g_rand_double_range (random, 0, 10);
      run (&bb_drying_calculator, in, more);
      g_assert_cmpfloat (more->energy_kj, >=, out->energy_kj);
      g_assert_cmpfloat (more->minimum_s, >=, out->minimum_s);
    }
}

static void
test_map_knows_no_order (void)
{
  g_autoptr (GRand) random = new_random ();

  for (guint i = 0; i < N_TRIALS; i++)
    {
      g_autoptr (BbPressMapIn) in = bb_press_map_in_new ();
      g_autoptr (BbPressMapOut) out = bb_press_map_out_new ();
      g_autoptr (BbPressMapOut) other = bb_press_map_out_new ();
      double coldest = 0;

      in->rows = g_rand_int_range (random, 1, 7);
      in->columns = g_rand_int_range (random, 1, 7);
      in->set_c = 160;
      in->readings_c = g_array_new (FALSE, FALSE, sizeof (double));
      for (gint64 n = 0; n < in->rows * in->columns; n++)
        {
          double reading = g_rand_double_range (random, 140, 180);

          g_array_append_val (in->readings_c, reading);
        }

      run (&bb_press_map_calculator, in, out);
      g_assert_cmpfloat (out->minimum_c, <=, out->mean_c);
      g_assert_cmpfloat (out->mean_c, <=, out->maximum_c);
      g_assert_cmpint (out->cold_row, <, in->rows);
      g_assert_cmpint (out->cold_column, <, in->columns);
      coldest = g_array_index (in->readings_c, double, out->cold_row * in->columns + out->cold_column);
      g_assert_cmpfloat (coldest, ==, out->minimum_c);

      shuffle (in->readings_c, random);
      run (&bb_press_map_calculator, in, other);
      assert_close (other->mean_c, out->mean_c);
      g_assert_cmpfloat (other->spread_c, ==, out->spread_c);
      assert_close (other->offset_c + in->set_c, other->mean_c);
    }
}

static void
test_map_turns_a_line_round (void)
{
  g_autoptr (GRand) random = new_random ();

  for (guint i = 0; i < N_TRIALS; i++)
    {
      g_autoptr (BbPressMapIn) in = bb_press_map_in_new ();
      g_autoptr (BbPressMapOut) out = bb_press_map_out_new ();
      double reading = 150;
      double slope = g_rand_double_range (random, 0.5, 1.2);
      double intercept = g_rand_double_range (random, -30, 30);
      double setting = g_rand_double_range (random, 100, 200);
      guint n = (guint) g_rand_int_range (random, 2, 20);

      in->rows = in->columns = 1;
      in->set_c = 160;
      in->readings_c = g_array_new (FALSE, FALSE, sizeof (double));
      g_array_append_val (in->readings_c, reading);
      in->points = g_array_new (FALSE, FALSE, sizeof (BbPressPoint));
      for (guint p = 0; p < n; p++)
        {
          BbPressPoint point = { .set_c = 100 + 5 * p + g_rand_double (random) };

          point.surface_c = intercept + slope * point.set_c;
          g_array_append_val (in->points, point);
        }
      in->wanted_c = intercept + slope * setting;

      run (&bb_press_map_calculator, in, out);
      g_assert_cmpfloat_with_epsilon (out->setting_for_c, setting, 1e-9);
    }
}

static void
test_tunnel_goes_round (void)
{
  g_autoptr (GRand) random = new_random ();

  for (guint i = 0; i < N_TRIALS; i++)
    {
      g_autoptr (BbTunnelIn) in = bb_tunnel_in_new ();
      g_autoptr (BbTunnelOut) a = bb_tunnel_out_new ();
      g_autoptr (BbTunnelOut) b = bb_tunnel_out_new ();

      in->heated_length_mm = g_rand_double_range (random, 100, 10000);
      in->belt_mm_per_s = g_rand_double_range (random, 1, 500);
      in->pitch_mm = g_rand_double_range (random, 10, 2000);
      run (&bb_tunnel_calculator, in, a);

      in->heated_length_mm = (double) NAN;
      in->dwell_s = a->dwell_s;
      run (&bb_tunnel_calculator, in, b);
      assert_close (b->heated_length_mm, a->heated_length_mm);

      in->heated_length_mm = a->heated_length_mm;
      in->belt_mm_per_s = (double) NAN;
      run (&bb_tunnel_calculator, in, b);
      assert_close (b->belt_mm_per_s, a->belt_mm_per_s);
      assert_close (b->garments_per_hour, a->garments_per_hour);
    }
}

static BbCureProfileIn *
random_cure (GRand *random)
{
  BbCureProfileIn *in = bb_cure_profile_in_new ();
  guint n = (guint) g_rand_int_range (random, 2, 60);
  double t_s = g_rand_double_range (random, -100, 1e6);

  in->samples = g_array_new (FALSE, FALSE, sizeof (BbProbeSample));
  for (guint i = 0; i < n; i++)
    {
      BbProbeSample sample = { .t_s = t_s, .c = g_rand_double_range (random, 20, 200) };

      g_array_append_val (in->samples, sample);
      t_s += g_rand_double_range (random, 0.1, 5);
    }
  in->reference_c = g_rand_double_range (random, 120, 180);
  in->required_s = g_rand_double_range (random, 10, 200);
  in->z_c = g_rand_double_range (random, 5, 60);
  if (g_rand_boolean (random))
    in->credit_above_c = g_rand_double_range (random, 60, 160);
  in->limit_c = g_rand_double_range (random, 100, 200);

  return in;
}

static void
test_cure_knows_no_order (void)
{
  g_autoptr (GRand) random = new_random ();

  for (guint i = 0; i < N_TRIALS; i++)
    {
      g_autoptr (BbCureProfileIn) in = random_cure (random);
      g_autoptr (BbCureProfileOut) out = bb_cure_profile_out_new ();
      g_autoptr (BbCureProfileOut) other = bb_cure_profile_out_new ();
      BbProbeSample again;

      run (&bb_cure_profile_calculator, in, out);
      g_assert_cmpint (out->cured, ==, out->equivalent_s >= in->required_s);

      again = g_array_index (in->samples, BbProbeSample, in->samples->len / 2);
      g_array_append_val (in->samples, again);
      shuffle (in->samples, random);
      run (&bb_cure_profile_calculator, in, other);
      g_assert_cmpfloat (other->equivalent_s, ==, out->equivalent_s);
      g_assert_cmpfloat (other->seconds_above_reference, ==, out->seconds_above_reference);
      g_assert_cmpfloat (other->over_limit_s, ==, out->over_limit_s);
      g_assert_cmpfloat (other->peak_c, ==, out->peak_c);
      g_assert_cmpfloat (other->longest_gap_s, ==, out->longest_gap_s);
      g_assert_true (g_strv_contains ((const char * const *) other->warnings, "repeated"));
      g_assert_false (g_strv_contains ((const char * const *) out->warnings, "unsorted"));
    }
}

static void
test_cure_hotter_never_cures_less (void)
{
  g_autoptr (GRand) random = new_random ();

  for (guint i = 0; i < N_TRIALS; i++)
    {
      g_autoptr (BbCureProfileIn) in = random_cure (random);
      g_autoptr (BbCureProfileOut) out = bb_cure_profile_out_new ();
      g_autoptr (BbCureProfileOut) hotter = bb_cure_profile_out_new ();
      g_autoptr (BbCureProfileOut) stricter = bb_cure_profile_out_new ();

      run (&bb_cure_profile_calculator, in, out);
      g_assert_cmpfloat (out->equivalent_s, >=, 0);
      g_assert_cmpfloat (out->seconds_above_reference, >=, 0);

      for (guint s = 0; s < in->samples->len; s++)
        g_array_index (in->samples, BbProbeSample, s).c += g_rand_double_range (random, 0, 20);
      run (&bb_cure_profile_calculator, in, hotter);
      g_assert_cmpfloat (hotter->equivalent_s, >=, out->equivalent_s);
      g_assert_cmpfloat (hotter->seconds_above_reference, >=, out->seconds_above_reference);
      g_assert_cmpfloat (hotter->over_limit_s, >=, out->over_limit_s);

      in->credit_above_c = isnan (in->credit_above_c) ? 90 : in->credit_above_c + 20;
      in->limit_c += 10;
      run (&bb_cure_profile_calculator, in, stricter);
      g_assert_cmpfloat (stricter->equivalent_s, <=, hotter->equivalent_s);
      g_assert_cmpfloat (stricter->over_limit_s, <=, hotter->over_limit_s);

      in->reference_c += 10;
      run (&bb_cure_profile_calculator, in, out);
      g_assert_cmpfloat (out->equivalent_s, <=, stricter->equivalent_s);
      g_assert_cmpfloat (out->seconds_above_reference, <=, stricter->seconds_above_reference);
    }
}

/* A log that is cut in two is worth its two parts. */
static void
test_cure_is_a_sum (void)
{
  g_autoptr (GRand) random = new_random ();

  for (guint i = 0; i < N_TRIALS; i++)
    {
      g_autoptr (BbCureProfileIn) in = random_cure (random);
      g_autoptr (BbCureProfileIn) head = bb_record_copy (&bb_cure_profile_in_table, in);
      g_autoptr (BbCureProfileOut) out = bb_cure_profile_out_new ();
      g_autoptr (BbCureProfileOut) part = bb_cure_profile_out_new ();
      guint cut = 0;
      double sum = 0;
      double above = 0;

      if (in->samples->len < 3)
        continue;
      run (&bb_cure_profile_calculator, in, out);
      cut = (guint) g_rand_int_range (random, 1, (gint32) in->samples->len - 1);
      g_array_set_size (head->samples, cut + 1);
      run (&bb_cure_profile_calculator, head, part);
      sum = part->equivalent_s;
      above = part->seconds_above_reference;
      g_array_remove_range (in->samples, 0, cut);
      run (&bb_cure_profile_calculator, in, part);
      assert_close (sum + part->equivalent_s, out->equivalent_s);
      assert_close (above + part->seconds_above_reference, out->seconds_above_reference);
    }
}

static void
test_limit_never_rises (void)
{
  g_autoptr (GRand) random = new_random ();

  for (guint i = 0; i < N_TRIALS; i++)
    {
      g_autoptr (BbHeatLimitIn) in = bb_heat_limit_in_new ();
      g_autoptr (BbHeatLimitOut) out = bb_heat_limit_out_new ();
      g_autoptr (BbHeatLimitOut) other = bb_heat_limit_out_new ();

      in->composition = random_composition (random);
      run (&bb_heat_limit_calculator, in, out);
      for (guint f = 0; f < in->composition->len; f++)
        {
          int fibre = g_array_index (in->composition, BbFibreShare, f).fibre;

          g_assert_cmpfloat (out->limit_c, <=, bb_fibre_data_get ((BbFibre) fibre)->heat_limit_c);
        }
      g_assert_true (bb_composition_has (in->composition, (BbFibre) out->limiting_fibre));
      g_assert_cmpint (strstr (out->reason, "migrate") != NULL, ==,
                       bb_composition_has (in->composition, BB_FIBRE_POLYESTER));

      shuffle (in->composition, random);
      run (&bb_heat_limit_calculator, in, other);
      g_assert_true (bb_record_equal (&bb_heat_limit_out_table, out, other));

      in->finish = g_rand_int_range (random, 0, (gint32) bb_finish_choices.n_items);
      run (&bb_heat_limit_calculator, in, other);
      g_assert_cmpfloat (other->limit_c, <=, out->limit_c);
    }
}

static BbLineRateIn *
random_line (GRand *random)
{
  BbLineRateIn *in = bb_line_rate_in_new ();
  guint n = (guint) g_rand_int_range (random, 1, 9);

  in->count = g_rand_int_range (random, 1, 500);
  in->stages = g_array_new (FALSE, FALSE, sizeof (BbLineStage));
  for (guint i = 0; i < n; i++)
    {
      BbLineStage stage = { .name = g_strdup_printf ("stage %u", i),
                            .seconds_per_garment = g_rand_double_range (random, 1, 400),
                            .stations = g_rand_int_range (random, 1, 6) };

      g_array_append_val (in->stages, stage);
    }

  return in;
}

static void
test_line_grows (void)
{
  g_autoptr (GRand) random = new_random ();

  for (guint i = 0; i < N_TRIALS; i++)
    {
      g_autoptr (BbLineRateIn) in = random_line (random);
      g_autoptr (BbLineRateOut) out = bb_line_rate_out_new ();
      g_autoptr (BbLineRateOut) other = bb_line_rate_out_new ();
      guint chosen = (guint) g_rand_int_range (random, 0, (gint32) in->stages->len);

      run (&bb_line_rate_calculator, in, out);
      shuffle (in->stages, random);
      run (&bb_line_rate_calculator, in, other);
      assert_close (other->job_s, out->job_s);
      g_assert_cmpfloat (other->garments_per_hour, ==, out->garments_per_hour);
      g_assert_cmpstr (other->bottleneck, ==, out->bottleneck);

      in->count += 7;
      run (&bb_line_rate_calculator, in, other);
      assert_close (other->job_s, out->job_s + 7 * 3600 / out->garments_per_hour);
      in->count -= 7;

      g_array_index (in->stages, BbLineStage, chosen).stations++;
      run (&bb_line_rate_calculator, in, other);
      g_assert_cmpfloat (other->garments_per_hour, >=, out->garments_per_hour);
      g_assert_cmpfloat (other->job_s, <=, out->job_s * (1 + ROUNDING));
    }
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/heat/drying/adds-up", test_drying_adds_up);
  g_test_add_func ("/heat/drying/more-never-takes-less", test_drying_more_never_takes_less);
  g_test_add_func ("/heat/press-map/knows-no-order", test_map_knows_no_order);
  g_test_add_func ("/heat/press-map/turns-a-line-round", test_map_turns_a_line_round);
  g_test_add_func ("/heat/tunnel/goes-round", test_tunnel_goes_round);
  g_test_add_func ("/heat/cure-profile/knows-no-order", test_cure_knows_no_order);
  g_test_add_func ("/heat/cure-profile/hotter-never-cures-less", test_cure_hotter_never_cures_less);
  g_test_add_func ("/heat/cure-profile/is-a-sum", test_cure_is_a_sum);
  g_test_add_func ("/heat/heat-limit/never-rises", test_limit_never_rises);
  g_test_add_func ("/heat/line-rate/grows", test_line_grows);

  return g_test_run ();
}
