/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-calc"

#include "bb-cost.h"

#include "bb-rounding.h"

#define G_PER_KG 1000.0
#define S_PER_H 3600.0
#define KJ_PER_KWH 3600.0

static double
sum_inks (const GArray *inks)
{
  double sum = 0;

  for (guint i = 0; inks != NULL && i < inks->len; i++)
    {
      const BbCostInk *ink = &g_array_index (inks, BbCostInk, i);

      sum += ink->area_m2 * ink->g_per_m2 / G_PER_KG * ink->price_per_kg;
    }

  return sum;
}

static void
cost_one_garment (const BbCostIn *in,
                  BbCostOut      *out)
{
  out->blank_per_garment = in->blank_price;
  out->pretreat_per_garment = in->pretreat_g / G_PER_KG * in->pretreat_price_per_kg;
  out->ink_per_garment = sum_inks (in->inks);
  out->sheet_per_garment = in->sheets_per_garment * in->sheet_price / in->sheet_uses;
  out->labour_per_garment = in->labour_s / S_PER_H * in->labour_price_per_h;
  out->energy_per_garment = in->energy_kj / KJ_PER_KWH * in->energy_price_per_kwh;
}

static void
multiply_by_count (BbCostOut *out,
                   double     count)
{
  out->blank_per_job = out->blank_per_garment * count;
  out->pretreat_per_job = out->pretreat_per_garment * count;
  out->ink_per_job = out->ink_per_garment * count;
  out->sheet_per_job = out->sheet_per_garment * count;
  out->labour_per_job = out->labour_per_garment * count;
  out->energy_per_job = out->energy_per_garment * count;
}

/**
 * bb_calc_cost:
 * @in: amounts and prices
 * @out: each part per garment and per job
 * @error: return location for a #GError in the domain %BB_MODEL_ERROR
 *
 * Adds up what a job costs; see the top of bb-cost.h.
 *
 * Returns: %TRUE
 */
gboolean
bb_calc_cost (const BbCostIn *in,
              BbCostOut      *out,
              G_GNUC_UNUSED GError **error)
{
  double count = (double) in->count;
  double spoiled = bb_ceil_steady (count * in->spoilage_fraction);
  double one = 0;

  cost_one_garment (in, out);
  multiply_by_count (out, count);

  one = out->blank_per_garment + out->pretreat_per_garment + out->ink_per_garment + out->sheet_per_garment +
        out->labour_per_garment + out->energy_per_garment;
  out->spoiled_garments = (gint64) spoiled;
  out->spoilage_per_job = spoiled * one;
  out->spoilage_per_garment = out->spoilage_per_job / count;
  out->total_per_garment = one + out->spoilage_per_garment;
  out->total_per_job = out->blank_per_job + out->pretreat_per_job + out->ink_per_job + out->sheet_per_job +
                       out->labour_per_job + out->energy_per_job + out->spoilage_per_job;

  return TRUE;
}

BB_DEFINE_TABLE (BbCostInk, bb_cost_ink, "cost_ink", N_("Ink"), BB_COST_INK_FIELDS, NULL)
BB_DEFINE_TABLE (BbCostIn, bb_cost_in, "cost_in", N_("Cost"), BB_COST_IN_FIELDS, NULL)
BB_DEFINE_TABLE (BbCostOut, bb_cost_out, "cost_out", N_("Cost"), BB_COST_OUT_FIELDS, NULL)
BB_DEFINE_CALCULATOR (Cost, cost, "cost", N_("Cost"),
                      .summary = N_("What a job costs, part by part, per garment and in all."),
                      .assumes = N_("A spoiled garment costs as much as a good one."),
                      .source = N_("Plain arithmetic. 1 kWh is 3600 kJ."))
