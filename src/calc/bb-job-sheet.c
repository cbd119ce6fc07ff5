/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-calc"

#include "bb-job-sheet-private.h"

#include "bb-cost.h"
#include "bb-laydown.h"
#include "bb-line-rate.h"
#include "bb-mixture.h"
#include "bb-rounding.h"

#define J_PER_KJ 1000.0

/* A figure that is not known takes no part in a sum. */
static double
or_nothing (double value)
{
  return isnan (value) ? 0.0 : value;
}

/* Returns: whether it is known how long the stage takes; one that takes no time is not listed */
static gboolean
add_stage (BbLineSheet       *sheet,
           BbStation          station,
           double             seconds,
           const BbEquipment *machine)
{
  BbStageTime *stage = NULL;

  if (!(seconds > 0))
    return !isnan (seconds);
  stage = bb_field_append_item (bb_table_find_field (&bb_line_sheet_table, "stages"), sheet);
  stage->name = g_strdup (bb_station_get_title (station));
  stage->seconds_s = seconds;
  stage->stations = machine != NULL ? machine->stations : 1;

  return TRUE;
}

/* What hands take at a machine: not known where it is not entered, or nobody said by which machine it is done. */
static double
hands_s (const BbEquipment *machine)
{
  return machine != NULL ? machine->handling_s : (double) NAN;
}

static double
heat_s (double dwell_s,
        gint64 presses)
{
  return dwell_s * (double) (presses != BB_INTEGER_NONE ? presses : 1);
}

static double
print_s (const BbSheetLine *line)
{
  double area_m2 = line->line->print_width_mm * line->line->print_height_mm / 1e6;
  gint64 passes = line->revision->print_passes;

  if (line->printer == NULL)
    return (double) NAN;

  return line->printer->print_s_per_m2 * area_m2 * (double) (passes != BB_INTEGER_NONE ? passes : 1);
}

/* Returns: whether it is known of every stage how long it takes; by hand it is not asked, and not counted */
static gboolean
add_stages (BbLineSheet       *sheet,
            const BbSheetLine *line)
{
  const BbRevision *revision = line->revision;
  gboolean is_known = TRUE;

  if (revision->pretreat_method != BB_PRETREAT_NONE)
    {
      if (line->sprayer != NULL)
        is_known &= add_stage (sheet, BB_STATION_PRETREAT, hands_s (line->sprayer), line->sprayer);
      else if (revision->pretreat_method == BB_PRETREAT_MACHINE)
        is_known = FALSE;
      /* What hangs in the air keeps no station. */
      if (revision->dry_method != BB_HEAT_AIR)
        is_known &= add_stage (sheet, BB_STATION_DRY,
                               heat_s (revision->dry_s, revision->dry_presses) + hands_s (line->dryer), line->dryer);
    }
  is_known &= add_stage (sheet, BB_STATION_PRINT, print_s (line) + hands_s (line->printer), line->printer);
  is_known &= add_stage (sheet, BB_STATION_CURE,
                         heat_s (revision->cure_s, revision->cure_presses) + hands_s (line->curer), line->curer);

  return is_known;
}

/* Without the time of one stage neither the line's is known nor what sets its pace. */
static gboolean
compute_time (BbLineSheet        *sheet,
              const BbSheetLine  *line,
              GError            **error)
{
  g_autoptr (BbLineRateIn) in = bb_line_rate_in_new ();
  g_autoptr (BbLineRateOut) out = bb_line_rate_out_new ();

  if (!add_stages (sheet, line) || sheet->stages == NULL)
    return TRUE;

  in->count = sheet->garments;
  for (guint i = 0; i < sheet->stages->len; i++)
    {
      const BbStageTime *stage = &g_array_index (sheet->stages, BbStageTime, i);
      BbLineStage *item = bb_field_append_item (bb_table_find_field (&bb_line_rate_in_table, "stages"), in);

      item->name = g_strdup (stage->name);
      item->seconds_per_garment = stage->seconds_s;
      item->stations = stage->stations;
    }
  if (!bb_calculator_run (&bb_line_rate_calculator, in, out, error))
    return FALSE;
  sheet->bottleneck = g_steal_pointer (&out->bottleneck);
  sheet->time_s = out->job_s;

  return TRUE;
}

static void
add_ink (BbCostIn *in,
         double    area_m2,
         double    g_per_m2,
         double    price_per_kg)
{
  BbCostInk *ink = NULL;

  if (!(area_m2 * g_per_m2 * price_per_kg > 0))
    return;
  ink = bb_field_append_item (bb_table_find_field (&bb_cost_in_table, "inks"), in);
  ink->area_m2 = area_m2;
  ink->g_per_m2 = g_per_m2;
  ink->price_per_kg = price_per_kg;
}

static void
add_inks (BbCostIn          *in,
          const BbSheetLine *line,
          const BbShop      *shop)
{
  double area_m2 = line->line->print_width_mm * line->line->print_height_mm / 1e6;
  double white = isnan (line->line->white_fraction) ? 1.0 : line->line->white_fraction;
  double colour = isnan (line->line->colour_fraction) ? 1.0 : line->line->colour_fraction;

  if (line->revision->print_mode != BB_PRINT_COLOUR_ONLY)
    {
      add_ink (in, area_m2 * white, line->revision->print_white_g_per_m2, shop->white_price_per_kg);
      add_ink (in, area_m2 * or_nothing (line->line->highlight_fraction), line->revision->print_highlight_g_per_m2,
               shop->white_price_per_kg);
    }
  add_ink (in, area_m2 * colour, shop->colour_g_per_m2, shop->colour_price_per_kg);
}

/* What a machine draws for one garment: all its stations share it. */
static double
energy_kj (const BbEquipment *machine,
           double             seconds)
{
  if (machine == NULL || isnan (machine->power_w) || isnan (seconds))
    return 0.0;

  return machine->power_w * seconds / (double) machine->stations / J_PER_KJ;
}

static double
labour_s (const BbSheetLine *line)
{
  const BbEquipment *machines[] = { line->sprayer, line->dryer, line->printer, line->curer };
  double sum = 0;

  for (guint i = 0; i < G_N_ELEMENTS (machines); i++)
    sum += or_nothing (hands_s (machines[i]));

  return sum;
}

/* What the uses of a sheet cost for one garment, and how much of a sheet that is. */
static double
share_of_sheet (const BbSupply *sheet)
{
  return sheet != NULL ? 1.0 / (isnan (sheet->sheet_uses) ? 1.0 : sheet->sheet_uses) : 0.0;
}

static double
price_of_sheet (const BbSupply *sheet)
{
  return sheet != NULL ? or_nothing (sheet->sheet_price) * share_of_sheet (sheet) : 0.0;
}

static double
price_as_sprayed (const BbSheetLine *line)
{
  const BbRevision *revision = line->revision;
  double density = line->pretreat == NULL || isnan (line->pretreat->density_g_per_ml)
                     ? 1.0 : line->pretreat->density_g_per_ml;
  double water = 0;

  if (line->pretreat == NULL || revision->pretreat_method == BB_PRETREAT_NONE)
    return 0.0;

  return or_nothing (line->pretreat->price_per_kg) *
         bb_mixture_concentrate_share (revision->pretreat_parts_concentrate, revision->pretreat_parts_water,
                                       (BbBasis) revision->pretreat_basis, density,
                                       bb_water_density_g_per_ml (BB_SHEET_WATER_C), &water);
}

static gboolean
compute_cost (BbLineSheet        *sheet,
              const BbSheetLine  *line,
              const BbJob        *job,
              const BbShop       *shop,
              GError            **error)
{
  g_autoptr (BbCostIn) in = bb_cost_in_new ();
  g_autoptr (BbCostOut) out = bb_cost_out_new ();
  const BbRevision *revision = line->revision;

  in->count = line->line->count;
  in->blank_price = line->line->same_garments == 1 ? 0.0 : or_nothing (line->blank->price);
  in->pretreat_g = or_nothing (sheet->used_g);
  in->pretreat_price_per_kg = price_as_sprayed (line);
  add_inks (in, line, shop);
  in->sheets_per_garment = 1;
  in->sheet_price = price_of_sheet (line->dry_sheet) + price_of_sheet (line->cure_sheet);
  in->labour_s = labour_s (line);
  in->labour_price_per_h = or_nothing (shop->labour_price_per_h);
  in->energy_kj = energy_kj (line->dryer, heat_s (revision->dry_s, revision->dry_presses)) +
                  energy_kj (line->printer, print_s (line) + or_nothing (hands_s (line->printer))) +
                  energy_kj (line->curer, heat_s (revision->cure_s, revision->cure_presses));
  in->energy_price_per_kwh = or_nothing (shop->energy_price_per_kwh);
  in->spoilage_fraction = or_nothing (job->spoilage_fraction);
  if (!bb_calculator_run (&bb_cost_calculator, in, out, error))
    return FALSE;

  sheet->cost = out->total_per_job;
  sheet->cost_per_garment = out->total_per_garment;

  return TRUE;
}

static double
least_reach (double a,
             double b)
{
  return isnan (a) ? b : isnan (b) ? a : fmin (a, b);
}

/**
 * bb_sheet_line_find_box:
 * @line: a line with its revision
 * @out: gets the rectangle to spray
 * @error: return location for a #GError in the domain %BB_MODEL_ERROR
 *
 * Reckons the box about the line's print, as wide as the revision's margin and the machines' reach make it.
 *
 * Returns: %FALSE where the size of the print is not said
 */
gboolean
bb_sheet_line_find_box (const BbSheetLine  *line,
                        BbBoxOut           *out,
                        GError            **error)
{
  g_autoptr (BbBoxIn) in = bb_box_in_new ();

  g_return_val_if_fail (line != NULL && line->revision != NULL && out != NULL, FALSE);

  in->print_width_mm = line->line->print_width_mm;
  in->print_height_mm = line->line->print_height_mm;
  in->margin_mm = or_nothing (line->revision->pretreat_margin_mm);
  if (line->sprayer != NULL)
    {
      in->max_width_mm = line->sprayer->reach_width_mm;
      in->max_height_mm = line->sprayer->reach_height_mm;
    }
  if (line->dryer != NULL && line->revision->dry_method == BB_HEAT_PRESS)
    {
      in->max_width_mm = least_reach (in->max_width_mm, line->dryer->reach_width_mm);
      in->max_height_mm = least_reach (in->max_height_mm, line->dryer->reach_height_mm);
    }

  return bb_calculator_run (&bb_box_calculator, in, out, error);
}

static gboolean
compute_box (BbLineSheet        *sheet,
             const BbSheetLine  *line,
             GError            **error)
{
  g_autoptr (BbBoxOut) out = bb_box_out_new ();

  if (!bb_sheet_line_find_box (line, out, error))
    return FALSE;

  sheet->box_width_mm = out->box_width_mm;
  sheet->box_height_mm = out->box_height_mm;
  sheet->box_area_m2 = out->box_area_m2;
  sheet->clipped = out->clipped;

  return TRUE;
}

static gboolean
compute_laydown (BbLineSheet        *sheet,
                 const BbSheetLine  *line,
                 const BbShop       *shop,
                 GError            **error)
{
  g_autoptr (BbLaydownIn) in = bb_laydown_in_new ();
  g_autoptr (BbLaydownOut) out = bb_laydown_out_new ();

  if (!compute_box (sheet, line, error))
    return FALSE;

  in->box_area_m2 = sheet->box_area_m2;
  in->laydown_g_per_m2 = line->revision->pretreat_laydown_g_per_m2;
  in->overspray_fraction = or_nothing (shop->overspray_fraction);
  if (!bb_calculator_run (&bb_laydown_calculator, in, out, error))
    return FALSE;

  sheet->wet_g = out->wet_g;
  sheet->used_g = out->used_g;
  sheet->needed_g = out->used_g * (double) sheet->garments;

  return TRUE;
}

static const char *
find_missing (const BbSheetLine *line)
{
  if (line->revision == NULL)
    return _("This line has no recipe yet.");
  if (isnan (line->line->print_width_mm) || isnan (line->line->print_height_mm))
    return _("This line has no print size yet.");

  return NULL;
}

/**
 * _bb_line_sheet_compute:
 * @self: what a line takes, with nothing in it yet
 * @line: the line
 * @job: its job
 * @shop: what holds for the whole shop
 *
 * Computes one line by itself. What can't be computed is said in `missing`.
 */
void
_bb_line_sheet_compute (BbLineSheet       *self,
                        const BbSheetLine *line,
                        const BbJob       *job,
                        const BbShop      *shop)
{
  const char *missing = find_missing (line);
  g_autoptr (GError) error = NULL;
  double pretreated = 0;

  self->code = g_strdup (line->line->code);
  self->spares = (gint64) bb_ceil_steady ((double) line->line->count * or_nothing (job->spoilage_fraction));
  self->garments = line->line->count + self->spares;
  if (missing != NULL)
    {
      self->missing = g_strdup (missing);
      return;
    }

  pretreated = line->revision->pretreat_method != BB_PRETREAT_NONE ? 1 : 0;
  self->sheets = (double) self->garments * (pretreated * share_of_sheet (line->dry_sheet) +
                                            share_of_sheet (line->cure_sheet));
  if ((pretreated > 0 && !compute_laydown (self, line, shop, &error)) || !compute_time (self, line, &error) ||
      !compute_cost (self, line, job, shop, &error))
    self->missing = g_strdup (error->message);
}
