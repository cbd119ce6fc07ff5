/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-calc"

#include "bb-propose.h"

#include "bb-heat-limit.h"

/* Keeps a garment that is the same from drowning all others. */
#define NEARNESS 0.02

/* Choices and references in which a revision has to agree with the nearest to be averaged with it. */
static const char * const alike[] = {
  "pretreat_method", "pretreat_product", "pretreat_basis", "dry_method", "print_mode", "cure_method",
};

static gboolean
is_alike (const BbRevision *a,
          const BbRevision *b)
{
  for (guint i = 0; i < G_N_ELEMENTS (alike); i++)
    if (!bb_field_equal (bb_table_find_field (&bb_revision_table, alike[i]), a, b))
      return FALSE;

  return TRUE;
}

/* What a machine is set to; 0 for what is not rounded. */
static double
step_of (BbQuantity quantity)
{
  switch ((int) quantity)
    {
    case BB_QUANTITY_MASS_PER_AREA:
      return 5;
    case BB_QUANTITY_PRESSURE:
      return 10;
    case BB_QUANTITY_LENGTH:
    case BB_QUANTITY_TEMPERATURE:
    case BB_QUANTITY_TIME:
      return 1;
    default:
      return 0;
    }
}

/* Parts belong together, and are not averaged; neither is what has to be passed. */
static gboolean
is_averaged (const BbField *field)
{
  return field->kind == BB_KIND_NUMBER && field->station != BB_STATION_NONE && field->station != BB_STATION_PROOF &&
         step_of (field->quantity) > 0;
}

static double
mean_of (const BbField       *field,
         const BbProposeFrom *from,
         guint                n_from)
{
  double sum = 0;
  double weights = 0;

  for (guint i = 0; i < n_from; i++)
    if (bb_field_is_set (field, from[i].revision) && is_alike (from[i].revision, from[0].revision))
      {
        double weight = 1.0 / (from[i].distance + NEARNESS);

        sum += weight * bb_field_get_number (field, from[i].revision);
        weights += weight;
      }

  return sum / weights;
}

static void
average (BbRevision          *revision,
         const BbProposeFrom *from,
         guint                n_from)
{
  for (guint i = 0; i < bb_revision_table.n_fields; i++)
    {
      const BbField *field = &bb_revision_table.fields[i];
      double step = step_of (field->quantity);

      if (is_averaged (field) && bb_field_is_set (field, from[0].revision))
        bb_field_set_number (field, revision, round (mean_of (field, from, n_from) / step) * step);
    }
}

static void
hold_laydown (BbRevision          *revision,
              const BbSupply      *pretreat,
              const BbUnitContext *context,
              GPtrArray           *reasons)
{
  double wanted = revision->pretreat_laydown_g_per_m2;
  g_autofree char *least = bb_quantity_format_with_unit (BB_QUANTITY_MASS_PER_AREA, pretreat->laydown_least_g_per_m2,
                                                         context);
  g_autofree char *most = bb_quantity_format_with_unit (BB_QUANTITY_MASS_PER_AREA, pretreat->laydown_most_g_per_m2,
                                                        context);

  /* A comparison with NaN, where an end is not known, is false. */
  if (wanted < pretreat->laydown_least_g_per_m2)
    {
      revision->pretreat_laydown_g_per_m2 = pretreat->laydown_least_g_per_m2;
      g_ptr_array_add (reasons, g_strdup_printf (_("Laydown raised to %s, the least that the supplier advises."),
                                                 least));
    }
  else if (wanted > pretreat->laydown_most_g_per_m2)
    {
      revision->pretreat_laydown_g_per_m2 = pretreat->laydown_most_g_per_m2;
      g_ptr_array_add (reasons, g_strdup_printf (_("Laydown lowered to %s, the most that the supplier advises."),
                                                 most));
    }
}

static void
hold_dilution (BbRevision          *revision,
               const BbSupply      *pretreat,
               const BbUnitContext *context,
               GPtrArray           *reasons)
{
  double water = revision->pretreat_parts_water / revision->pretreat_parts_concentrate;
  double held = water < pretreat->water_parts_least ? pretreat->water_parts_least
                : water > pretreat->water_parts_most ? pretreat->water_parts_most : water;
  g_autofree char *text = NULL;

  if (held == water || isnan (water))
    return;
  revision->pretreat_parts_concentrate = 1;
  revision->pretreat_parts_water = held;
  text = bb_dilution_describe (1, held, context);
  g_ptr_array_add (reasons, g_strdup_printf (_("Dilution set to %s, which the supplier allows."), text));
}

static void
hold_heat (BbRevision          *revision,
           const BbBlank       *blank,
           const BbUnitContext *context,
           GPtrArray           *reasons)
{
  g_autoptr (BbHeatLimitOut) heat = bb_heat_limit_out_new ();
  g_autofree char *text = NULL;

  if (!bb_heat_limit_of_blank (blank, heat, NULL))
    return;
  text = bb_quantity_format_with_unit (BB_QUANTITY_TEMPERATURE, heat->limit_c, context);
  if (revision->dry_c > heat->limit_c)
    {
      revision->dry_c = heat->limit_c;
      g_ptr_array_add (reasons, g_strdup_printf (_("Drying lowered to %s: this garment should meet nothing hotter."),
                                                 text));
    }
  if (revision->cure_c > heat->limit_c)
    {
      revision->cure_c = heat->limit_c;
      g_ptr_array_add (reasons, g_strdup_printf (_("Cure lowered to %s: this garment should meet nothing hotter. "
                                                   "Whether the ink cures at that, a wash test says."), text));
    }
}

/* What belongs to the old revision and not to a new one. */
static void
clear_origin (BbRevision *revision)
{
  for (guint i = 0; i < bb_revision_table.n_fields; i++)
    if (bb_revision_table.fields[i].derived)
      bb_field_reset (&bb_revision_table.fields[i], revision);
  g_clear_pointer (&revision->reason, g_free);
  g_clear_pointer (&revision->note, g_free);
}

static char *
name_sources (const BbProposeFrom *from,
              guint                n_from)
{
  g_autoptr (GPtrArray) codes = g_ptr_array_new ();
  g_autofree char *all = NULL;

  for (guint i = 0; i < n_from; i++)
    if (is_alike (from[i].revision, from[0].revision))
      g_ptr_array_add (codes, from[i].revision->code);
  g_ptr_array_add (codes, NULL);
  all = g_strjoinv (", ", (char **) codes->pdata);

  /* Translators: the codes of one or more revisions. */
  return g_strdup_printf (_("Proposed from %s. Not proven on this garment."), all);
}

/**
 * bb_propose_revision:
 * @blank: the garment that is to be printed
 * @from: (array length=n_from): proven revisions, the nearest first
 * @n_from: how many, at least 1
 * @pretreat: (nullable): the pretreat of the nearest
 * @context: the units to write reasons in
 * @reasons: (element-type utf8): where to put what was changed and why, as sentences; the first says what it is from
 *
 * Makes a recipe to start from; see the top of bb-propose.h.
 *
 * Returns: (transfer full): a revision without recipe, number and state, to be saved as a draft
 */
BbRevision *
bb_propose_revision (const BbBlank       *blank,
                     const BbProposeFrom *from,
                     guint                n_from,
                     const BbSupply      *pretreat,
                     const BbUnitContext *context,
                     GPtrArray           *reasons)
{
  BbRevision *revision = NULL;

  g_return_val_if_fail (blank != NULL && from != NULL && n_from > 0 && reasons != NULL, NULL);

  revision = bb_record_copy (&bb_revision_table, from[0].revision);
  clear_origin (revision);
  average (revision, from, n_from);
  revision->reason = name_sources (from, n_from);
  g_ptr_array_add (reasons, g_strdup (revision->reason));
  if (pretreat != NULL && revision->pretreat_method != BB_PRETREAT_NONE)
    {
      hold_laydown (revision, pretreat, context, reasons);
      hold_dilution (revision, pretreat, context, reasons);
    }
  hold_heat (revision, blank, context, reasons);

  return revision;
}
