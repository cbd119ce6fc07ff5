/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-calc"

#include "bb-worksheet.h"

#include "bb-job.h"
#include "bb-problem.h"

BB_DEFINE_TABLE (BbWorksheetIn, bb_worksheet_in, "worksheet_in", N_("Mix"), BB_WORKSHEET_IN_FIELDS, NULL)

/* Fields of one name mean the same in every table: what a calculator asks for is taken from the sheet by name. */
static void
take (const BbTable       *table,
      gpointer             record,
      const BbWorksheetIn *sheet)
{
  for (guint i = 0; i < table->n_fields; i++)
    {
      const BbField *field = &table->fields[i];
      const BbField *given = bb_table_find_field (&bb_worksheet_in_table, field->name);

      if (given == NULL || !bb_field_is_set (given, sheet))
        continue;
      if (field->kind == BB_KIND_NUMBER)
        bb_field_set_number (field, record, bb_field_get_number (given, sheet));
      else if (field->kind == BB_KIND_CHOICE)
        bb_field_set_choice (field, record, bb_field_get_choice (given, sheet));
    }
}

/**
 * bb_worksheet_box:
 * @in: the sheet
 * @out: (out caller-allocates): its box
 * @error: return location for a #GError in the domain %BB_MODEL_ERROR
 *
 * Computes the box alone, for which the size of the print is enough.
 *
 * Returns: %FALSE if the print's size is not allowed
 */
gboolean
bb_worksheet_box (const BbWorksheetIn *in,
                  BbBoxOut            *out,
                  GError             **error)
{
  g_autoptr (BbBoxIn) box = bb_box_in_new ();

  take (&bb_box_in_table, box, in);
  bb_record_init (&bb_box_out_table, out);

  return bb_calculator_run (&bb_box_calculator, box, out, error);
}

static gboolean
compute_batch (const BbWorksheetIn *in,
               BbWorksheet         *out,
               GError             **error)
{
  g_autoptr (BbBatchIn) batch = bb_batch_in_new ();
  BbBatchLine *line = NULL;

  take (&bb_batch_in_table, batch, in);
  line = bb_field_append_item (bb_table_find_field (&bb_batch_in_table, "lines"), batch);
  line->count = in->count;
  line->used_g = out->laydown.used_g;
  bb_record_init (&bb_batch_out_table, &out->batch);

  return bb_calculator_run (&bb_batch_calculator, batch, &out->batch, error);
}

static gboolean
compute_stretch (const BbWorksheetIn *in,
                 BbWorksheet         *out,
                 GError             **error)
{
  g_autoptr (BbStretchIn) stretch = bb_stretch_in_new ();

  bb_record_init (&bb_stretch_out_table, &out->stretch);
  out->has_stretch = !isnan (in->container_ml);
  if (!out->has_stretch)
    return TRUE;

  take (&bb_stretch_in_table, stretch, in);
  stretch->box_area_m2 = out->box.box_area_m2;
  stretch->concentrate_ml_available = in->container_ml;

  return bb_calculator_run (&bb_stretch_calculator, stretch, &out->stretch, error);
}

/**
 * bb_worksheet_compute:
 * @in: the sheet
 * @out: (out caller-allocates): the results, step by step
 * @error: return location for a #GError in the domain %BB_MODEL_ERROR
 *
 * Runs the bench's sum; see the top of bb-worksheet.h.
 *
 * Returns: %FALSE if a figure is missing or not allowed; the message names it
 */
gboolean
bb_worksheet_compute (const BbWorksheetIn *in,
                      BbWorksheet         *out,
                      GError             **error)
{
  g_autoptr (BbLaydownIn) laydown = bb_laydown_in_new ();
  g_autoptr (BbMixIn) mix = bb_mix_in_new ();

  if (!bb_record_validate (&bb_worksheet_in_table, in, error) || !bb_worksheet_box (in, &out->box, error))
    return FALSE;

  take (&bb_laydown_in_table, laydown, in);
  laydown->box_area_m2 = out->box.box_area_m2;
  bb_record_init (&bb_laydown_out_table, &out->laydown);
  if (!bb_calculator_run (&bb_laydown_calculator, laydown, &out->laydown, error) || !compute_batch (in, out, error))
    return FALSE;

  take (&bb_mix_in_table, mix, in);
  mix->total_g = out->batch.total_g;
  bb_record_init (&bb_mix_out_table, &out->mix);

  return bb_calculator_run (&bb_mix_calculator, mix, &out->mix, error) && compute_stretch (in, out, error);
}

/* A revision's setting of the same meaning has the station before its name. */
static const BbField *
find_setting (const BbField *field)
{
  g_autofree char *name = g_strconcat ("pretreat_", field->name, NULL);

  return bb_table_find_field (&bb_revision_table, name);
}

/**
 * bb_worksheet_take_revision:
 * @in: the sheet
 * @revision: a revision
 * @product: (nullable): its pretreat, from which density and solids are taken where they are known
 *
 * Fills in what the revision says of the pretreat, and leaves print size, count and allowances as they are.
 */
void
bb_worksheet_take_revision (BbWorksheetIn    *in,
                            const BbRevision *revision,
                            const BbSupply   *product)
{
  g_return_if_fail (in != NULL && revision != NULL);

  for (guint i = 0; i < bb_worksheet_in_table.n_fields; i++)
    {
      const BbField *field = &bb_worksheet_in_table.fields[i];
      const BbField *setting = find_setting (field);

      if (setting == NULL || !bb_field_is_set (setting, revision))
        continue;
      if (field->kind == BB_KIND_CHOICE)
        bb_field_set_choice (field, in, bb_field_get_choice (setting, revision));
      else
        bb_field_set_number (field, in, bb_field_get_number (setting, revision));
    }

  if (product != NULL && !isnan (product->density_g_per_ml))
    in->concentrate_density_g_per_ml = product->density_g_per_ml;
  in->concentrate_solids_fraction = product != NULL ? product->solids_fraction : (double) NAN;
}

/* What the shop and a new job say of a field of the sheet; NaN where they say nothing. */
static double
get_usual (const BbField *field,
           const BbShop  *shop)
{
  const BbField *of_shop = bb_table_find_field (&bb_shop_table, field->name);
  const BbField *of_job = bb_table_find_field (&bb_job_table, field->name);
  g_autoptr (BbJob) job = NULL;

  if (field->kind != BB_KIND_NUMBER)
    return (double) NAN;
  if (of_shop != NULL)
    return bb_field_get_number (of_shop, shop);
  if (of_job == NULL)
    return (double) NAN;
  job = bb_job_new ();

  return bb_field_get_number (of_job, job);
}

/**
 * bb_worksheet_take_shop:
 * @in: the sheet
 * @shop: what holds for the whole shop
 *
 * Fills in the losses and the reserve that the shop reckons with, and the spoilage that a new job has: those by which
 * job sheets are made.
 */
void
bb_worksheet_take_shop (BbWorksheetIn *in,
                        const BbShop  *shop)
{
  g_return_if_fail (in != NULL && shop != NULL);

  for (guint i = 0; i < bb_worksheet_in_table.n_fields; i++)
    {
      const BbField *field = &bb_worksheet_in_table.fields[i];
      const double usual = get_usual (field, shop);

      if (!isnan (usual))
        bb_field_set_number (field, in, usual);
    }
}

/**
 * bb_worksheet_take_container:
 * @in: the sheet
 * @mix: the mix, with the containers that it is taken from
 *
 * Fills in what the first of the containers holds before anything is taken from it, unless a person has said how much
 * concentrate there is.
 *
 * Returns: %TRUE if it was filled in; %FALSE too where nobody knows what the container holds
 */
gboolean
bb_worksheet_take_container (BbWorksheetIn    *in,
                             const BbMixSheet *mix)
{
  const BbTake *take = NULL;

  g_return_val_if_fail (in != NULL && mix != NULL, FALSE);

  if (!isnan (in->container_ml) || mix->takes == NULL || mix->takes->len == 0)
    return FALSE;
  take = &g_array_index (mix->takes, BbTake, 0);
  in->container_ml = (take->left_g + take->amount_g) / in->concentrate_density_g_per_ml;

  return !isnan (in->container_ml);
}

static char *
join_titles (GPtrArray *titles)
{
  if (titles->len == 0)
    return NULL;
  g_ptr_array_add (titles, NULL);

  return g_strjoinv (", ", (char **) titles->pdata);
}

/**
 * bb_worksheet_describe_own_losses:
 * @in: the sheet
 * @shop: what holds for the whole shop
 *
 * Returns: (transfer full) (nullable): the titles of what is not as bb_worksheet_take_shop() fills it in; %NULL if all
 *   is, so that a job sheet for the same garments comes to the same
 */
char *
bb_worksheet_describe_own_losses (const BbWorksheetIn *in,
                                  const BbShop        *shop)
{
  g_autoptr (GPtrArray) titles = g_ptr_array_new ();

  g_return_val_if_fail (in != NULL && shop != NULL, NULL);

  for (guint i = 0; i < bb_worksheet_in_table.n_fields; i++)
    {
      const BbField *field = &bb_worksheet_in_table.fields[i];
      const double usual = get_usual (field, shop);

      /* A figure that is left empty counts as nothing. */
      if (!isnan (usual) && (bb_field_is_set (field, in) ? bb_field_get_number (field, in) : 0.0) != usual)
        g_ptr_array_add (titles, (char *) _(field->title));
    }

  return join_titles (titles);
}

/**
 * bb_worksheet_give_revision:
 * @in: the sheet
 * @revision: the revision that its figures were taken from
 *
 * The other way round of bb_worksheet_take_revision(): writes what the sheet says of the pretreat over the revision's
 * settings, so that what is mixed can be judged as a recipe is. What the sheet leaves empty stays as it is.
 */
void
bb_worksheet_give_revision (const BbWorksheetIn *in,
                            BbRevision          *revision)
{
  g_return_if_fail (in != NULL && revision != NULL);

  for (guint i = 0; i < bb_worksheet_in_table.n_fields; i++)
    {
      const BbField *field = &bb_worksheet_in_table.fields[i];
      const BbField *setting = find_setting (field);

      if (setting == NULL || !bb_field_is_set (field, in))
        continue;
      if (field->kind == BB_KIND_CHOICE)
        bb_field_set_choice (setting, revision, bb_field_get_choice (field, in));
      else
        bb_field_set_number (setting, revision, bb_field_get_number (field, in));
    }
}

static gboolean
departs (const BbField       *field,
         const BbWorksheetIn *in,
         const BbRevision    *revision)
{
  const BbField *setting = find_setting (field);

  if (setting == NULL || !bb_field_is_set (setting, revision))
    return FALSE;
  if (field->kind == BB_KIND_CHOICE)
    return bb_field_get_choice (field, in) != bb_field_get_choice (setting, revision);

  return bb_field_get_number (field, in) != bb_field_get_number (setting, revision);
}

/**
 * bb_worksheet_describe_departures:
 * @in: the sheet
 * @revision: the revision that its figures were taken from
 *
 * Returns: (transfer full) (nullable): the titles of the settings that are not the revision's any more, or %NULL if
 *   all are
 */
char *
bb_worksheet_describe_departures (const BbWorksheetIn *in,
                                  const BbRevision    *revision)
{
  g_autoptr (GPtrArray) titles = g_ptr_array_new ();

  for (guint i = 0; i < bb_worksheet_in_table.n_fields; i++)
    if (departs (&bb_worksheet_in_table.fields[i], in, revision))
      g_ptr_array_add (titles, (char *) _(bb_worksheet_in_table.fields[i].title));

  return join_titles (titles);
}
