/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bb-batch.h"
#include "bb-laydown.h"
#include "bb-mix.h"
#include "bb-solids-match.h"
#include "bb-stretch.h"
#include "bb-weigh-in.h"
#include "bb-worksheet.h"

/* What has to hold for any input, tried on random input of a fixed seed. */

#define N_TRIALS 2000
#define SEED 20250314
#define CLOSE 1e-13

static void
run (const BbCalculator *calculator,
     gconstpointer       in,
     gpointer            out)
{
  g_autoptr (GError) error = NULL;

  bb_calculator_run (calculator, in, out, &error);
  g_assert_no_error (error);
}

static void
assert_close (double actual,
              double expected,
              double tolerance)
{
  g_assert_cmpfloat (fabs (actual - expected), <=, tolerance * fabs (expected));
}

static double
between (GRand *rand,
         double low,
         double high)
{
  return g_rand_double_range (rand, low, high);
}

static BbMixIn *
random_mix (GRand *rand)
{
  BbMixIn *in = bb_mix_in_new ();

  in->total_g = between (rand, 1, 1e5);
  in->parts_concentrate = between (rand, 0.1, 20);
  in->parts_water = g_rand_int_range (rand, 0, 5) == 0 ? 0 : between (rand, 0, 100);
  in->basis = g_rand_boolean (rand) ? BB_BASIS_VOLUME : BB_BASIS_MASS;
  in->concentrate_density_g_per_ml = between (rand, 0.7, 1.6);
  in->water_temperature_c = between (rand, 0, 40);
  in->concentrate_solids_fraction = g_rand_double (rand);

  return in;
}

static void
test_mix_adds_up (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (SEED);

  for (guint i = 0; i < N_TRIALS; i++)
    {
      g_autoptr (BbMixIn) in = random_mix (rand);
      BbMixOut out = { 0 };
      double ratio = 0.0;

      run (&bb_mix_calculator, in, &out);
      assert_close (out.concentrate_g + out.water_g, in->total_g, CLOSE);
      assert_close (out.concentrate_ml + out.water_ml, out.total_ml, CLOSE);
      assert_close (out.density_g_per_ml * out.total_ml, in->total_g, CLOSE);
      assert_close (out.concentrate_mass_fraction * in->total_g, out.concentrate_g, CLOSE);
      assert_close (out.solids_fraction * in->total_g, in->concentrate_solids_fraction * out.concentrate_g, CLOSE);
      ratio = in->basis == BB_BASIS_VOLUME ? out.water_ml / out.concentrate_ml : out.water_g / out.concentrate_g;
      assert_close (ratio, in->parts_water / in->parts_concentrate, CLOSE);
    }
}

static void
test_mix_scales (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (SEED + 1);

  for (guint i = 0; i < N_TRIALS; i++)
    {
      g_autoptr (BbMixIn) in = random_mix (rand);
      double factor = between (rand, 0.01, 100);
      BbMixOut once = { 0 };
      BbMixOut scaled = { 0 };

      run (&bb_mix_calculator, in, &once);
      in->total_g *= factor;
      run (&bb_mix_calculator, in, &scaled);
      assert_close (scaled.concentrate_g, once.concentrate_g * factor, CLOSE);
      assert_close (scaled.water_ml, once.water_ml * factor, CLOSE);
      assert_close (scaled.total_ml, once.total_ml * factor, CLOSE);
      g_assert_cmpfloat (scaled.density_g_per_ml, ==, once.density_g_per_ml);
      g_assert_cmpfloat (scaled.solids_fraction, ==, once.solids_fraction);
    }
}

static void
test_mix_bases_agree (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (SEED + 2);

  for (guint i = 0; i < N_TRIALS; i++)
    {
      g_autoptr (BbMixIn) in = random_mix (rand);
      BbMixOut by_volume = { 0 };
      BbMixOut by_mass = { 0 };

      /* Where both liquids weigh the same, a part is a part. */
      in->concentrate_density_g_per_ml = bb_water_density_g_per_ml (in->water_temperature_c);
      in->basis = BB_BASIS_VOLUME;
      run (&bb_mix_calculator, in, &by_volume);
      in->basis = BB_BASIS_MASS;
      run (&bb_mix_calculator, in, &by_mass);
      assert_close (by_volume.concentrate_g, by_mass.concentrate_g, CLOSE);
      assert_close (by_volume.water_ml, by_mass.water_ml, CLOSE);
      assert_close (by_volume.density_g_per_ml, in->concentrate_density_g_per_ml, CLOSE);
    }
}

static void
test_more_never_needs_less (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (SEED + 3);

  for (guint i = 0; i < N_TRIALS; i++)
    {
      g_autoptr (BbLaydownIn) in = bb_laydown_in_new ();
      BbLaydownOut less = { 0 };
      BbLaydownOut more = { 0 };
      BbLaydownOut wasteful = { 0 };

      in->box_area_m2 = between (rand, 0.001, 1);
      in->laydown_g_per_m2 = between (rand, 1, 400);
      in->overspray_fraction = between (rand, 0, 0.9);
      run (&bb_laydown_calculator, in, &less);
      in->laydown_g_per_m2 += between (rand, 0, 100);
      run (&bb_laydown_calculator, in, &more);
      in->overspray_fraction += between (rand, 0, 0.09);
      run (&bb_laydown_calculator, in, &wasteful);

      g_assert_cmpfloat (more.wet_g, >=, less.wet_g);
      g_assert_cmpfloat (more.used_g, >=, less.used_g);
      g_assert_cmpfloat (less.used_g, >=, less.wet_g);
      g_assert_cmpfloat (wasteful.wet_g, ==, more.wet_g);
      g_assert_cmpfloat (wasteful.used_g, >=, more.used_g);
      assert_close (wasteful.used_g * (1.0 - in->overspray_fraction), wasteful.wet_g, CLOSE);
    }
}

static BbBatchIn *
random_batch (GRand *rand)
{
  BbBatchIn *in = bb_batch_in_new ();
  int n = g_rand_int_range (rand, 1, 12);

  for (int i = 0; i < n; i++)
    {
      BbBatchLine *line = bb_field_append_item (bb_table_find_field (&bb_batch_in_table, "lines"), in);

      line->count = g_rand_int_range (rand, 0, 500);
      line->used_g = between (rand, 0, 60);
    }
  in->spoilage_fraction = g_rand_int_range (rand, 0, 30) / 100.0;
  in->line_loss_g = between (rand, 0, 300);
  in->reserve_fraction = between (rand, 0, 0.3);
  in->round_up_to_g = g_rand_int_range (rand, 1, 200) / 10.0;

  return in;
}

static void
test_batch_counts_in_decimals (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (SEED + 4);

  for (guint i = 0; i < N_TRIALS; i++)
    {
      g_autoptr (BbBatchIn) in = random_batch (rand);
      BbBatchOut out = { 0 };
      gint64 percent = (gint64) round (in->spoilage_fraction * 100.0);
      gint64 garments = 0;

      for (guint l = 0; l < in->lines->len; l++)
        {
          gint64 count = g_array_index (in->lines, BbBatchLine, l).count;

          garments += count + (count * percent + 99) / 100;
        }
      run (&bb_batch_calculator, in, &out);
      g_assert_cmpint (out.garments, ==, garments);
    }
}

static void
test_batch_rounds_up_and_no_further (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (SEED + 5);

  for (guint i = 0; i < N_TRIALS; i++)
    {
      g_autoptr (BbBatchIn) in = random_batch (rand);
      BbBatchOut rounded = { 0 };
      BbBatchOut exact = { 0 };
      BbBatchOut again = { 0 };
      double step = in->round_up_to_g;

      run (&bb_batch_calculator, in, &rounded);
      in->round_up_to_g = 0;
      run (&bb_batch_calculator, in, &exact);
      assert_close (exact.total_g, (exact.needed_g + in->line_loss_g) * (1.0 + in->reserve_fraction), CLOSE);
      g_assert_cmpfloat (rounded.total_g, >=, exact.total_g * (1.0 - 1e-11));
      g_assert_cmpfloat (rounded.total_g, <, exact.total_g + step);
      assert_close (rounded.total_g, round (rounded.total_g / step) * step, CLOSE);

      /* What is already a multiple stays. */
      g_array_set_size (in->lines, 1);
      g_array_index (in->lines, BbBatchLine, 0) = (BbBatchLine) { .count = 1, .used_g = rounded.total_g };
      in->spoilage_fraction = in->line_loss_g = in->reserve_fraction = 0;
      in->round_up_to_g = step;
      run (&bb_batch_calculator, in, &again);
      assert_close (again.total_g, rounded.total_g, CLOSE);
    }
}

static void
test_batch_order_of_lines (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (SEED + 6);

  for (guint i = 0; i < N_TRIALS; i++)
    {
      g_autoptr (BbBatchIn) in = random_batch (rand);
      BbBatchOut forwards = { 0 };
      BbBatchOut backwards = { 0 };
      guint last = in->lines->len - 1;

      run (&bb_batch_calculator, in, &forwards);
      for (guint l = 0; l < in->lines->len / 2; l++)
        {
          BbBatchLine line = g_array_index (in->lines, BbBatchLine, l);

          g_array_index (in->lines, BbBatchLine, l) = g_array_index (in->lines, BbBatchLine, last - l);
          g_array_index (in->lines, BbBatchLine, last - l) = line;
        }
      run (&bb_batch_calculator, in, &backwards);
      g_assert_cmpint (backwards.garments, ==, forwards.garments);
      assert_close (backwards.needed_g, forwards.needed_g, CLOSE);
      assert_close (backwards.total_g, forwards.total_g, CLOSE);
    }
}

static BbStretchIn *
random_stretch (GRand *rand)
{
  BbStretchIn *in = bb_stretch_in_new ();

  in->concentrate_ml_available = between (rand, 0, 20000);
  in->parts_concentrate = g_rand_int_range (rand, 1, 5);
  in->parts_water = g_rand_int_range (rand, 0, 10);
  in->basis = g_rand_boolean (rand) ? BB_BASIS_VOLUME : BB_BASIS_MASS;
  in->concentrate_density_g_per_ml = between (rand, 0.9, 1.3);
  in->box_area_m2 = between (rand, 0.01, 0.3);
  in->laydown_g_per_m2 = between (rand, 20, 300);
  in->overspray_fraction = between (rand, 0, 0.5);

  return in;
}

static double
concentrate_for_one (const BbStretchIn *in)
{
  g_autoptr (BbMixIn) mix = bb_mix_in_new ();
  BbMixOut out = { 0 };

  mix->total_g = bb_laydown_used_g (in->box_area_m2, in->laydown_g_per_m2, in->overspray_fraction);
  mix->parts_concentrate = in->parts_concentrate;
  mix->parts_water = in->parts_water;
  mix->basis = in->basis;
  mix->concentrate_density_g_per_ml = in->concentrate_density_g_per_ml;
  mix->water_temperature_c = in->water_temperature_c;
  run (&bb_mix_calculator, mix, &out);

  return out.concentrate_ml;
}

/* What mix takes for that many garments is in the container, and for one more it is not. */
static void
test_stretch_is_what_mix_takes (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (SEED + 7);

  for (guint i = 0; i < N_TRIALS; i++)
    {
      g_autoptr (BbStretchIn) in = random_stretch (rand);
      BbStretchOut out = { 0 };
      double one = concentrate_for_one (in);
      gint64 wanted = g_rand_int_range (rand, 0, 5000);

      run (&bb_stretch_calculator, in, &out);
      g_assert_cmpfloat ((double) out.garments * one, <=, in->concentrate_ml_available * (1.0 + CLOSE));
      g_assert_cmpfloat ((double) (out.garments + 1) * one, >, in->concentrate_ml_available);

      in->concentrate_ml_available = (double) wanted * one;
      run (&bb_stretch_calculator, in, &out);
      g_assert_cmpint (out.garments, ==, wanted);
      g_assert_cmpint (out.limited_by, ==, BB_STRETCH_BY_CONCENTRATE);
    }
}

static void
test_stretch_with_a_total (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (SEED + 8);
  guint n_by_total = 0;

  for (guint i = 0; i < N_TRIALS; i++)
    {
      g_autoptr (BbStretchIn) in = random_stretch (rand);
      double used = bb_laydown_used_g (in->box_area_m2, in->laydown_g_per_m2, in->overspray_fraction);
      gint64 in_total = g_rand_int_range (rand, 1, 3000);
      BbStretchOut all = { 0 };
      BbStretchOut some = { 0 };

      run (&bb_stretch_calculator, in, &all);
      in->total_g = (double) in_total * used;
      run (&bb_stretch_calculator, in, &some);
      g_assert_cmpint (some.garments, ==, MIN (all.garments, in_total));
      g_assert_cmpint (some.limited_by, ==,
                       in_total <= all.garments ? BB_STRETCH_BY_TOTAL : BB_STRETCH_BY_CONCENTRATE);
      n_by_total += some.limited_by == BB_STRETCH_BY_TOTAL;
    }
  g_assert_cmpuint (n_by_total, >, 0);
  g_assert_cmpuint (n_by_total, <, N_TRIALS);
}

static void
test_solids_match_there_and_back (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (SEED + 9);

  for (guint i = 0; i < N_TRIALS; i++)
    {
      g_autoptr (BbSolidsMatchIn) in = bb_solids_match_in_new ();
      double laydown = between (rand, 1, 300);
      BbSolidsMatchOut there = { 0 };
      BbSolidsMatchOut back = { 0 };

      in->laydown_g_per_m2 = laydown;
      in->from_parts_concentrate = between (rand, 0.1, 10);
      in->from_parts_water = between (rand, 0, 10);
      in->to_parts_concentrate = between (rand, 0.1, 10);
      in->to_parts_water = between (rand, 0, 10);
      in->basis = g_rand_boolean (rand) ? BB_BASIS_VOLUME : BB_BASIS_MASS;
      in->concentrate_density_g_per_ml = between (rand, 0.9, 1.3);
      in->concentrate_solids_fraction = g_rand_double (rand);
      run (&bb_solids_match_calculator, in, &there);

      in->laydown_g_per_m2 = there.laydown_g_per_m2;
      {
        double concentrate = in->from_parts_concentrate;
        double water = in->from_parts_water;

        in->from_parts_concentrate = in->to_parts_concentrate;
        in->from_parts_water = in->to_parts_water;
        in->to_parts_concentrate = concentrate;
        in->to_parts_water = water;
      }
      run (&bb_solids_match_calculator, in, &back);
      assert_close (back.laydown_g_per_m2, laydown, CLOSE);
      assert_close (back.solids_g_per_m2, there.solids_g_per_m2, CLOSE);
      g_assert_cmpfloat (fabs (back.water_g_per_m2_change + there.water_g_per_m2_change), <=,
                         CLOSE * (laydown + there.laydown_g_per_m2));
    }
}

/* Whole tenths of a gram and whole percents, so that the verdict is known by whole numbers. */
static void
test_weigh_in_judges_in_decimals (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (SEED + 10);
  guint n_at_bound = 0;

  for (guint i = 0; i < N_TRIALS; i++)
    {
      g_autoptr (BbWeighInIn) in = bb_weigh_in_in_new ();
      int tare = g_rand_int_range (rand, 800, 4000);
      int aimed_at = 10 * g_rand_int_range (rand, 1, 30);
      int percent = 10 * g_rand_int_range (rand, 0, 5);
      int bound = aimed_at * percent / 100 * (g_rand_boolean (rand) ? 1 : -1);
      /* On the bound, or a tenth of a gram to either side of it. */
      int applied = aimed_at + bound + g_rand_int_range (rand, -1, 2);
      int beyond = ABS (applied - aimed_at) * 100 - aimed_at * percent;
      BbWeighVerdict verdict = beyond <= 0 ? BB_WEIGH_OK : applied < aimed_at ? BB_WEIGH_LOW : BB_WEIGH_HIGH;
      BbWeighInOut out = { 0 };

      in->tare_g = tare / 10.0;
      in->wet_g = (tare + applied) / 10.0;
      in->box_area_m2 = 0.1;
      in->target_g_per_m2 = aimed_at;
      in->tolerance_fraction = percent / 100.0;
      run (&bb_weigh_in_calculator, in, &out);
      g_assert_cmpint (out.verdict, ==, verdict);
      /* Half of 0.1 g against a quarter of the tolerance: 0.05 / (aimed_at / 10) > percent / 400. */
      g_assert_cmpint (out.scale_too_coarse, ==, 200 > aimed_at * percent);
      n_at_bound += beyond == 0;
    }
  g_assert_cmpuint (n_at_bound, >, N_TRIALS / 4);
}

/* What one is told to aim at is what is judged afterwards: a hair inside the bounds is good, a hair outside is not. */
static void
test_weigh_in_aim_is_what_is_judged (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (SEED + 11);

  for (guint i = 0; i < N_TRIALS; i++)
    {
      g_autoptr (BbWeighInIn) in = bb_weigh_in_in_new ();
      BbWeighInOut out = { 0 };
      BbWeighAim aim = { 0 };
      double hair = 0.0;

      in->tare_g = g_rand_double_range (rand, 20, 900);
      in->box_area_m2 = g_rand_double_range (rand, 0.01, 0.3);
      in->target_g_per_m2 = g_rand_double_range (rand, 20, 300);
      in->tolerance_fraction = g_rand_double_range (rand, 0.01, 0.5);
      aim = bb_weigh_in_aim (in);
      hair = (aim.aim_g - in->tare_g) * 1e-4;

      assert_close (aim.aim_g, in->tare_g + in->box_area_m2 * in->target_g_per_m2, CLOSE);
      assert_close (aim.high_g - aim.aim_g, aim.aim_g - aim.low_g, 1e-6);
      in->wet_g = aim.low_g + hair;
      run (&bb_weigh_in_calculator, in, &out);
      g_assert_cmpint (out.verdict, ==, BB_WEIGH_OK);
      in->wet_g = aim.low_g - hair;
      run (&bb_weigh_in_calculator, in, &out);
      g_assert_cmpint (out.verdict, ==, BB_WEIGH_LOW);
      in->wet_g = aim.high_g - hair;
      run (&bb_weigh_in_calculator, in, &out);
      g_assert_cmpint (out.verdict, ==, BB_WEIGH_OK);
      in->wet_g = aim.high_g + hair;
      run (&bb_weigh_in_calculator, in, &out);
      g_assert_cmpint (out.verdict, ==, BB_WEIGH_HIGH);
    }
}

/* 36.4 g of 837 g are taken: the container holds 837 g, at 1.25 g/ml 669.6 ml. What a person says goes first. */
static void
test_worksheet_counts_its_container (void)
{
  g_autoptr (BbWorksheetIn) in = bb_worksheet_in_new ();
  g_autoptr (BbMixSheet) mix = bb_mix_sheet_new ();
  BbTake *take = NULL;

  in->concentrate_density_g_per_ml = 1.25;
  g_assert_false (bb_worksheet_take_container (in, mix));
  take = bb_field_append_item (bb_table_find_field (&bb_mix_sheet_table, "takes"), mix);
  take->amount_g = 36.4;
  take->left_g = (double) NAN;
  g_assert_false (bb_worksheet_take_container (in, mix));
  g_assert_true (isnan (in->container_ml));
  take->left_g = 800.6;
  g_assert_true (bb_worksheet_take_container (in, mix));
  g_assert_cmpfloat_with_epsilon (in->container_ml, 669.6, 1e-9);
  in->container_ml = 5;
  g_assert_false (bb_worksheet_take_container (in, mix));
  g_assert_cmpfloat (in->container_ml, ==, 5);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/pretreat/mix-adds-up", test_mix_adds_up);
  g_test_add_func ("/pretreat/mix-scales", test_mix_scales);
  g_test_add_func ("/pretreat/mix-bases-agree", test_mix_bases_agree);
  g_test_add_func ("/pretreat/more-never-needs-less", test_more_never_needs_less);
  g_test_add_func ("/pretreat/batch-counts-in-decimals", test_batch_counts_in_decimals);
  g_test_add_func ("/pretreat/batch-rounds-up-and-no-further", test_batch_rounds_up_and_no_further);
  g_test_add_func ("/pretreat/batch-order-of-lines", test_batch_order_of_lines);
  g_test_add_func ("/pretreat/stretch-is-what-mix-takes", test_stretch_is_what_mix_takes);
  g_test_add_func ("/pretreat/stretch-with-a-total", test_stretch_with_a_total);
  g_test_add_func ("/pretreat/solids-match-there-and-back", test_solids_match_there_and_back);
  g_test_add_func ("/pretreat/weigh-in-judges-in-decimals", test_weigh_in_judges_in_decimals);
  g_test_add_func ("/pretreat/weigh-in-aim-is-what-is-judged", test_weigh_in_aim_is_what_is_judged);
  g_test_add_func ("/pretreat/worksheet-counts-its-container", test_worksheet_counts_its_container);

  return g_test_run ();
}
