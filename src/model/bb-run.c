/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-model"

#include "bb-run.h"

#include "bb-error.h"

BB_DEFINE_CHOICES (bb_spoilt, "spoilage", BB_SPOILT_CHOICES);
BB_DEFINE_CHOICES (bb_lot_deed, "lot deed", BB_LOT_DEED_CHOICES);

static gboolean
check_weighed (gconstpointer record,
               GError      **error)
{
  const BbWeighed *self = record;

  if (self->wet_g < self->tare_g)
    return bb_refuse_value (error, _("wet_g: the garment can't be lighter with pretreat than without."));

  return TRUE;
}

static gboolean
check_departure (gconstpointer record,
                 GError      **error)
{
  const BbDeparture *self = record;
  const BbField *setting = self->setting != NULL ? bb_table_find_field (&bb_revision_table, self->setting) : NULL;

  if (setting == NULL || setting->station == BB_STATION_NONE)
    return bb_refuse_value (error, _("setting: a revision has no such setting."));

  return TRUE;
}

static gboolean
check_run (gconstpointer record,
           GError      **error)
{
  const BbRun *self = record;

  if (self->finished_at == NULL)
    return TRUE;
  if (self->good == BB_INTEGER_NONE)
    return bb_refuse_value (error, _("good: say how many garments came out well before the run ends."));
  if (self->spoiled == BB_INTEGER_NONE)
    return bb_refuse_value (error, _("spoiled: say how many garments were spoiled before the run ends; 0 for none."));
  if (self->spoiled > 0 && self->spoilt_by == BB_CHOICE_NONE)
    return bb_refuse_value (error, _("spoilt_by: say what spoiled them."));

  return TRUE;
}

static gboolean
check_entry (gconstpointer record,
             GError      **error)
{
  const BbLotEntry *self = record;

  if (self->deed == BB_LOT_WEIGHED && (isnan (self->change_g) || isnan (self->scale_g)))
    return bb_refuse_value (error, _("scale_g: a weighing needs what the scale showed."));
  if (self->deed != BB_LOT_WEIGHED && self->change_g > 0)
    return bb_refuse_value (error, _("change_g: what is used or poured away makes less, not more."));
  if (self->deed != BB_LOT_USED && self->run != 0)
    return bb_refuse_value (error, _("run: only what is used belongs to a run."));

  return TRUE;
}

BB_DEFINE_TABLE (BbWeighed, bb_weighed, "weighed", N_("Weigh-in"), BB_WEIGHED_FIELDS, check_weighed)
BB_DEFINE_TABLE (BbDeparture, bb_departure, "departure", N_("Set otherwise"), BB_DEPARTURE_FIELDS, check_departure)
BB_DEFINE_TABLE (BbRun, bb_run, "run", N_("Run"), BB_RUN_FIELDS, check_run)
BB_DEFINE_TABLE (BbAnnotation, bb_annotation, "annotation", N_("Remark"), BB_ANNOTATION_FIELDS, NULL)
BB_DEFINE_TABLE (BbLotEntry, bb_lot_entry, "lot_entry", N_("Entry of a lot"), BB_LOT_ENTRY_FIELDS, check_entry)
BB_DEFINE_TABLE (BbLotUse, bb_lot_use, "lot_use", N_("Taken from a container"), BB_LOT_USE_FIELDS, NULL)

/* A value as it is written on labels and in files, into a record. */
static gboolean
read_value (const BbField *field,
            const char    *text,
            gpointer       record)
{
  char *end = NULL;
  double number = 0;
  int choice = 0;

  if (text == NULL)
    return FALSE;

  switch ((int) field->kind)
    {
    case BB_KIND_NUMBER:
    case BB_KIND_INTEGER:
      number = g_ascii_strtod (text, &end);
      if (end == text || *end != '\0')
        return FALSE;
      if (field->kind == BB_KIND_NUMBER)
        bb_field_set_number (field, record, number);
      else
        bb_field_set_integer (field, record, (gint64) number);
      return TRUE;
    case BB_KIND_CHOICE:
      choice = bb_choices_find (field->choices, text);
      if (choice == BB_CHOICE_NONE)
        return FALSE;
      bb_field_set_choice (field, record, choice);
      return TRUE;
    default:
      return FALSE;
    }
}

/**
 * bb_departure_apply:
 * @self: what was set otherwise
 * @revision: a revision; gets the setting as it was done
 *
 * Returns: %FALSE where what was done is no value of the setting: it was left out, or told in words
 */
gboolean
bb_departure_apply (const BbDeparture *self,
                    BbRevision        *revision)
{
  const BbField *field = NULL;

  g_return_val_if_fail (self != NULL && revision != NULL, FALSE);

  field = self->setting != NULL ? bb_table_find_field (&bb_revision_table, self->setting) : NULL;

  return field != NULL && field->station != BB_STATION_NONE && read_value (field, self->done, revision);
}
