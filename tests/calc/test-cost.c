/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-test"

#include "bb-cost.h"

/* What has to hold for every cost, tried on seeded random jobs. */

#define N_TRIALS 300
#define ROUNDING 1e-12

static BbCostIn *
random_job (GRand *random)
{
  BbCostIn *in = bb_cost_in_new ();
  guint n_inks = (guint) g_rand_int_range (random, 0, 5);

  in->count = g_rand_int_range (random, 1, 2000);
  in->blank_price = g_rand_double_range (random, 0, 20);
  in->pretreat_g = g_rand_double_range (random, 0, 60);
  in->pretreat_price_per_kg = g_rand_double_range (random, 0, 30);
  in->sheets_per_garment = g_rand_int_range (random, 0, 4);
  in->sheet_price = g_rand_double_range (random, 0, 2);
  in->sheet_uses = g_rand_int_range (random, 1, 50);
  in->labour_s = g_rand_double_range (random, 0, 900);
  in->labour_price_per_h = g_rand_double_range (random, 0, 60);
  in->energy_kj = g_rand_double_range (random, 0, 3000);
  in->energy_price_per_kwh = g_rand_double_range (random, 0, 1);
  in->spoilage_fraction = g_rand_double_range (random, 0, 0.2);
  in->inks = g_array_new (FALSE, FALSE, sizeof (BbCostInk));
  for (guint i = 0; i < n_inks; i++)
    {
      BbCostInk ink = { .area_m2 = g_rand_double_range (random, 0, 0.2),
                        .g_per_m2 = g_rand_double_range (random, 0, 300),
                        .price_per_kg = g_rand_double_range (random, 0, 200) };

      g_array_append_val (in->inks, ink);
    }

  return in;
}

static BbCostOut *
cost_of (const BbCostIn *in)
{
  BbCostOut *out = bb_cost_out_new ();
  g_autoptr (GError) error = NULL;

  g_assert_true (bb_calculator_run (&bb_cost_calculator, in, out, &error));
  g_assert_no_error (error);

  return out;
}

static void
assert_close (double actual,
              double expected)
{
  g_assert_cmpfloat_with_epsilon (actual, expected, ROUNDING * fmax (1.0, fabs (expected)));
}

static void
test_parts_make_the_total (void)
{
  g_autoptr (GRand) random = g_rand_new_with_seed (20250314);

  for (guint i = 0; i < N_TRIALS; i++)
    {
      g_autoptr (BbCostIn) in = random_job (random);
      g_autoptr (BbCostOut) out = cost_of (in);
      double count = (double) in->count;
      double per_job = 0;

      for (guint f = 0; f < bb_cost_out_table.n_fields; f++)
        {
          const BbField *field = &bb_cost_out_table.fields[f];
          double value = bb_field_get_number (field, out);

          g_assert_cmpfloat (value, >=, 0);
          if (g_str_has_suffix (field->name, "_per_job") && !g_str_equal (field->name, "total_per_job"))
            per_job += value;
        }
      assert_close (out->total_per_job, per_job);
      assert_close (out->total_per_garment, out->total_per_job / count);
      assert_close (out->ink_per_job, out->ink_per_garment * count);
      assert_close (out->spoilage_per_job, out->spoilage_per_garment * count);
      g_assert_cmpfloat ((double) out->spoiled_garments, >=, count * in->spoilage_fraction * (1 - ROUNDING));
      g_assert_cmpfloat ((double) out->spoiled_garments, <, count * in->spoilage_fraction + 1);
    }
}

static void
test_every_price_counts (void)
{
  g_autoptr (GRand) random = g_rand_new_with_seed (20250314);

  for (guint i = 0; i < N_TRIALS; i++)
    {
      g_autoptr (BbCostIn) in = random_job (random);
      g_autoptr (BbCostOut) out = cost_of (in);
      g_autoptr (BbCostOut) twice = NULL;
      g_autoptr (BbCostOut) none_spoiled = NULL;

      for (guint f = 0; f < bb_cost_in_table.n_fields; f++)
        {
          const BbField *field = &bb_cost_in_table.fields[f];

          if (field->quantity == BB_QUANTITY_MONEY)
            bb_field_set_number (field, in, 2 * bb_field_get_number (field, in));
        }
      for (guint k = 0; k < in->inks->len; k++)
        g_array_index (in->inks, BbCostInk, k).price_per_kg *= 2;
      twice = cost_of (in);
      assert_close (twice->total_per_job, 2 * out->total_per_job);
      assert_close (twice->spoilage_per_garment, 2 * out->spoilage_per_garment);

      in->spoilage_fraction = 0;
      none_spoiled = cost_of (in);
      g_assert_cmpfloat (none_spoiled->total_per_job, <=, twice->total_per_job);
      g_assert_cmpfloat (none_spoiled->spoilage_per_job, ==, 0);
    }
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/cost/parts-make-the-total", test_parts_make_the_total);
  g_test_add_func ("/cost/every-price-counts", test_every_price_counts);

  return g_test_run ();
}
