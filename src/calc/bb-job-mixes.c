/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-calc"

#include "bb-job-sheet-private.h"

#include "bb-batch.h"
#include "bb-mix.h"

/* Grams below which nothing is missing: what no scale of a shop shows. */
#define NOTHING_G 0.05

static double
or_nothing (double value)
{
  return isnan (value) ? 0.0 : value;
}

/* Whether two lines are sprayed from one vessel. */
static gboolean
is_same_mix (const BbRevision *a,
             const BbRevision *b)
{
  return a->pretreat_product == b->pretreat_product && a->pretreat_basis == b->pretreat_basis &&
         a->pretreat_parts_water * b->pretreat_parts_concentrate ==
           b->pretreat_parts_water * a->pretreat_parts_concentrate;
}

static gboolean
takes_pretreat (const BbLineSheet *sheet,
                const BbSheetLine *line)
{
  return sheet->missing == NULL && line->revision->pretreat_method != BB_PRETREAT_NONE && line->pretreat != NULL;
}

static gboolean
compute_batch (const BbJobSheet   *self,
               const BbSheetLine  *lines,
               guint               n_lines,
               guint               first,
               const BbJob        *job,
               const BbShop       *shop,
               BbMixSheet         *mix,
               GError            **error)
{
  g_autoptr (BbBatchIn) in = bb_batch_in_new ();
  g_autoptr (BbBatchOut) out = bb_batch_out_new ();

  for (guint i = first; i < n_lines; i++)
    {
      const BbLineSheet *sheet = &g_array_index (self->lines, BbLineSheet, i);
      BbBatchLine *item = NULL;

      if (!takes_pretreat (sheet, &lines[i]) || !is_same_mix (lines[i].revision, lines[first].revision))
        continue;
      item = bb_field_append_item (bb_table_find_field (&bb_batch_in_table, "lines"), in);
      item->count = lines[i].line->count;
      item->used_g = sheet->used_g;
    }
  in->line_loss_g = or_nothing (shop->line_loss_g);
  in->reserve_fraction = or_nothing (shop->reserve_fraction);
  in->round_up_to_g = or_nothing (shop->round_up_to_g);
  in->spoilage_fraction = or_nothing (job->spoilage_fraction);
  if (!bb_calculator_run (&bb_batch_calculator, in, out, error))
    return FALSE;

  mix->garments = out->garments;
  mix->needed_g = out->needed_g;
  mix->total_g = out->total_g;

  return TRUE;
}

static gboolean
compute_mix (BbMixSheet         *mix,
             const BbSheetLine  *line,
             GError            **error)
{
  g_autoptr (BbMixIn) in = bb_mix_in_new ();
  g_autoptr (BbMixOut) out = bb_mix_out_new ();

  mix->supply = line->pretreat->id;
  mix->product = g_strdup (line->pretreat->name);
  mix->parts_concentrate = line->revision->pretreat_parts_concentrate;
  mix->parts_water = line->revision->pretreat_parts_water;
  mix->basis = line->revision->pretreat_basis;
  in->total_g = mix->total_g;
  in->parts_concentrate = mix->parts_concentrate;
  in->parts_water = mix->parts_water;
  in->basis = mix->basis;
  in->water_temperature_c = BB_SHEET_WATER_C;
  if (!isnan (line->pretreat->density_g_per_ml))
    in->concentrate_density_g_per_ml = line->pretreat->density_g_per_ml;
  if (!bb_calculator_run (&bb_mix_calculator, in, out, error))
    return FALSE;

  mix->concentrate_g = out->concentrate_g;
  mix->concentrate_ml = out->concentrate_ml;
  mix->water_g = out->water_g;
  mix->water_ml = out->water_ml;

  return TRUE;
}

/* What mixes before this one take from a lot is gone. */
static double
left_in (const BbJobSheet *self,
         const BbStock    *lot)
{
  double left_g = lot->left_g;

  for (guint m = 0; self->mixes != NULL && m < self->mixes->len; m++)
    {
      const BbMixSheet *mix = &g_array_index (self->mixes, BbMixSheet, m);

      for (guint t = 0; mix->takes != NULL && t < mix->takes->len; t++)
        if (g_array_index (mix->takes, BbTake, t).lot == lot->id)
          left_g -= g_array_index (mix->takes, BbTake, t).amount_g;
    }

  return left_g;
}

static void
take_from (BbMixSheet    *mix,
           const BbStock *lot,
           double         left_g,
           double         amount_g)
{
  BbTake *take = bb_field_append_item (bb_table_find_field (&bb_mix_sheet_table, "takes"), mix);

  take->lot = lot->id;
  take->code = g_strdup (lot->code);
  take->last_day = g_strdup (lot->last_day);
  take->amount_g = amount_g;
  take->left_g = left_g - amount_g;
}

static void
choose_lots (const BbJobSheet *self,
             BbMixSheet       *mix,
             const BbSupply   *product,
             const GPtrArray  *stock,
             const char       *day)
{
  g_autoptr (GStrvBuilder) past = g_strv_builder_new ();
  g_autoptr (GPtrArray) rest = g_ptr_array_new_with_free_func (bb_stock_table.free_record);
  double wanted_g = mix->concentrate_g;

  for (guint i = 0; i < stock->len; i++)
    {
      const BbStock *lot = stock->pdata[i];
      double left_g = left_in (self, lot);
      double amount_g = isnan (left_g) ? wanted_g : fmin (wanted_g, left_g);

      if (lot->supply != mix->supply)
        continue;
      if (bb_stock_is_past (lot, day))
        {
          g_strv_builder_add (past, lot->code);
          continue;
        }
      if (wanted_g > NOTHING_G && amount_g > NOTHING_G)
        {
          take_from (mix, lot, left_g, amount_g);
          wanted_g -= amount_g;
          left_g -= amount_g;
        }
      g_ptr_array_add (rest, bb_record_copy (&bb_stock_table, lot));
      ((BbStock *) rest->pdata[rest->len - 1])->left_g = left_g;
    }
  mix->short_g = wanted_g > NOTHING_G ? wanted_g : 0.0;
  mix->past = g_strv_builder_end (past);
  mix->low = bb_supply_is_low (product, bb_stock_sum_left (rest, day)) ? 1 : 0;
}

/**
 * bb_mix_sheet_choose_lots:
 * @self: a mix whose supply and concentrate are set
 * @product: the supply
 * @stock: (element-type BbStock): the lots in the shop, in the order in which they are to be used up
 * @day: the day of the mix, as `YYYY-MM-DD`
 *
 * Says which containers a mix that stands alone is taken from, and sets what is short, past its day, or low then.
 */
void
bb_mix_sheet_choose_lots (BbMixSheet      *self,
                          const BbSupply  *product,
                          const GPtrArray *stock,
                          const char      *day)
{
  g_autoptr (BbJobSheet) alone = bb_job_sheet_new ();

  g_return_if_fail (self != NULL && product != NULL && stock != NULL && day != NULL);

  choose_lots (alone, self, product, stock, day);
}

static gboolean
is_mixed (const BbJobSheet  *self,
          const BbSheetLine *lines,
          guint              nth)
{
  for (guint i = 0; i < nth; i++)
    if (takes_pretreat (&g_array_index (self->lines, BbLineSheet, i), &lines[i]) &&
        is_same_mix (lines[i].revision, lines[nth].revision))
      return TRUE;

  return FALSE;
}

/**
 * _bb_job_sheet_add_mixes:
 * @self: what a job takes, whose lines are computed
 * @job: the job
 * @lines: (array length=n_lines): its lines
 * @n_lines: how many
 * @shop: what holds for the whole shop
 * @stock: (element-type BbStock): the lots in the shop, in the order in which they are to be used up
 * @day: the day of the mix, as `YYYY-MM-DD`
 *
 * Adds what is poured together, one mix for each pretreat and dilution, and what it is taken from.
 */
void
_bb_job_sheet_add_mixes (BbJobSheet        *self,
                         const BbJob       *job,
                         const BbSheetLine *lines,
                         guint              n_lines,
                         const BbShop      *shop,
                         const GPtrArray   *stock,
                         const char        *day)
{
  for (guint i = 0; i < n_lines; i++)
    {
      BbLineSheet *sheet = &g_array_index (self->lines, BbLineSheet, i);
      g_autoptr (BbMixSheet) mix = bb_mix_sheet_new ();
      g_autoptr (GError) error = NULL;

      if (!takes_pretreat (sheet, &lines[i]) || is_mixed (self, lines, i))
        continue;
      if (!compute_batch (self, lines, n_lines, i, job, shop, mix, &error) || !compute_mix (mix, &lines[i], &error))
        {
          sheet->missing = g_strdup (error->message);
          continue;
        }
      choose_lots (self, mix, lines[i].pretreat, stock, day);
      /* What the mix holds moves into the list. */
      *(BbMixSheet *) bb_field_append_item (bb_table_find_field (&bb_job_sheet_table, "mixes"), self) = *mix;
      bb_record_init (&bb_mix_sheet_table, mix);
    }
}
