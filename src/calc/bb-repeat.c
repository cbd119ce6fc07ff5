/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-calc"

#include "bb-repeat.h"

#include <string.h>

#include "bb-format.h"

BB_DEFINE_CHOICES (bb_finding, "finding", BB_FINDING_CHOICES);

/* Days in ISO's form are ordered as their texts are; moments are of their day. */
static int
compare_days (const char *a,
              const char *b)
{
  return strncmp (a, b, strlen ("YYYY-MM-DD"));
}

static BbFinding *
add (GPtrArray           *findings,
     const BbRepeatCase  *self,
     BbFindingKind        kind,
     const char          *subject)
{
  BbFinding *finding = bb_finding_new ();

  finding->line = g_strdup (self->line->code);
  finding->kind = (int) kind;
  finding->subject = g_strdup (subject);
  g_ptr_array_add (findings, finding);

  return finding;
}

static void
find_recipe (const BbRepeatCase *self,
             GPtrArray          *findings)
{
  BbFinding *finding = NULL;

  if (self->revision == NULL || self->standing == NULL)
    return;

  if (self->standing->state == BB_STATE_WITHDRAWN)
    {
      finding = add (findings, self, BB_FINDING_WITHDRAWN, self->revision->code);
      finding->at = g_strdup (self->standing->since);
      finding->after = g_strdup (self->standing->reason);
    }
  else if (self->standing->state != BB_STATE_PROVEN)
    {
      finding = add (findings, self, BB_FINDING_UNPROVEN, self->revision->code);
      finding->at = g_strdup (self->standing->since);
      finding->after = g_strdup (bb_choices_get_key (&bb_state_choices, self->standing->state));
    }
  if (self->newer != NULL && self->newer->number > self->revision->number)
    {
      finding = add (findings, self, BB_FINDING_SUPERSEDED, self->revision->code);
      finding->after = g_strdup (self->newer->code);
      finding->at = g_strdup (self->newer->made_at);
    }
}

static void
find_failures (const BbRepeatCase *self,
               GPtrArray          *findings)
{
  for (guint i = 0; i < self->n_failures; i++)
    {
      BbFinding *finding = add (findings, self, BB_FINDING_WASH_FAILED, self->failures[i].specimen);

      finding->cycles = self->failures[i].cycles;
      finding->at = g_strdup (self->failures[i].at);
      finding->before = g_strdup (self->revision != NULL ? self->revision->code : NULL);
    }
}

static gboolean
has_something (const BbStock *stock)
{
  return isnan (stock->left_g) || stock->left_g > 0;
}

/* The first lot of a supply that may be used today; failing that, *past is the first that may not. */
static const BbStock *
find_usable (const BbRepeatCase  *self,
             gint64               supply,
             const BbStock      **past)
{
  *past = NULL;
  for (guint i = 0; i < self->stock->len; i++)
    {
      const BbStock *stock = self->stock->pdata[i];

      if (stock->supply != supply || !has_something (stock))
        continue;
      if (!bb_stock_is_past (stock, self->today))
        return stock;
      if (*past == NULL)
        *past = stock;
    }

  return NULL;
}

static gboolean
was_used (const BbRepeatCase *self,
          gint64              lot)
{
  for (guint i = 0; i < self->lots->len; i++)
    if (((const BbLot *) self->lots->pdata[i])->id == lot)
      return TRUE;

  return FALSE;
}

/* The lots of one supply that were used then, by their codes. */
static char *
dup_codes (const BbRepeatCase *self,
           gint64              supply)
{
  g_autoptr (GPtrArray) codes = g_ptr_array_new ();

  for (guint i = 0; i < self->lots->len; i++)
    {
      const BbLot *lot = self->lots->pdata[i];

      if (lot->supply == supply)
        g_ptr_array_add (codes, lot->code);
    }
  g_ptr_array_add (codes, NULL);

  return g_strjoinv (", ", (char **) codes->pdata);
}

static void
find_lot (const BbRepeatCase *self,
          gint64              supply,
          GPtrArray          *findings)
{
  const BbStock *past = NULL;
  const BbStock *usable = find_usable (self, supply, &past);
  g_autofree char *then = dup_codes (self, supply);
  BbFinding *finding = NULL;

  if (usable != NULL && was_used (self, usable->id))
    return;

  if (usable != NULL)
    {
      finding = add (findings, self, BB_FINDING_LOT_OTHER, usable->name);
      finding->after = g_strdup (usable->code);
    }
  else if (past != NULL)
    {
      finding = add (findings, self, BB_FINDING_LOT_PAST, past->code);
      finding->after = g_strdup (past->name);
      finding->at = g_strdup (past->last_day);
    }
  else
    finding = add (findings, self, BB_FINDING_LOT_NONE, then);
  finding->before = g_steal_pointer (&then);
}

static void
find_lots (const BbRepeatCase *self,
           GPtrArray          *findings)
{
  for (guint i = 0; i < self->lots->len; i++)
    {
      gint64 supply = ((const BbLot *) self->lots->pdata[i])->supply;
      gboolean seen = FALSE;

      for (guint j = 0; j < i; j++)
        seen = seen || ((const BbLot *) self->lots->pdata[j])->supply == supply;
      if (!seen)
        find_lot (self, supply, findings);
    }
}

static char *
format_value (const BbField       *field,
              const BbBlank       *blank,
              const BbUnitContext *context)
{
  if (field->kind == BB_KIND_LIST)
    return bb_composition_dup_text (blank->composition);

  return bb_field_format (&bb_blank_table, field, blank, context);
}

/* What a recipe rests on: the garment's name may change, its fabric not unseen. */
static void
find_fabric (const BbRepeatCase  *self,
             const BbUnitContext *context,
             GPtrArray           *findings)
{
  const char * const names[] = { "composition", "mass_g_per_m2", "knit", "finish" };

  for (guint i = 0; self->blank_then != NULL && i < G_N_ELEMENTS (names); i++)
    {
      const BbField *field = bb_table_find_field (&bb_blank_table, names[i]);
      BbFinding *finding = NULL;

      if (bb_field_equal (field, self->blank_then, self->blank))
        continue;
      finding = add (findings, self, BB_FINDING_FABRIC, _(field->title));
      finding->before = format_value (field, self->blank_then, context);
      finding->after = format_value (field, self->blank, context);
    }
}

static void
find_garment (const BbRepeatCase *self,
              GPtrArray          *findings)
{
  const char *gone = self->blank->withdrawn_at != NULL ? self->blank->withdrawn_at : self->colourway->withdrawn_at;
  BbFinding *finding = NULL;

  if (gone == NULL)
    return;
  finding = add (findings, self, BB_FINDING_GARMENT_GONE, self->blank->name);
  finding->before = g_strdup (self->colourway->name);
  finding->at = g_strdup (gone);
}

static void
find_machines (const BbRepeatCase *self,
               GPtrArray          *findings)
{
  for (guint i = 0; i < self->machines->len; i++)
    {
      const BbEquipment *machine = self->machines->pdata[i];
      BbFinding *finding = NULL;

      if (machine->withdrawn_at != NULL)
        {
          finding = add (findings, self, BB_FINDING_MACHINE_GONE, machine->name);
          finding->at = g_strdup (machine->withdrawn_at);
        }
      else if (machine->calibrated_at != NULL && compare_days (machine->calibrated_at, self->since) > 0)
        {
          finding = add (findings, self, BB_FINDING_CALIBRATED, machine->name);
          finding->at = g_strdup (machine->calibrated_at);
        }
    }
}

/**
 * bb_repeat_find:
 * @self: then and now
 * @context: the units to write values in
 * @findings: (element-type BbFinding): what was found so far, to which this is added
 *
 * Finds what has changed since a line was last printed: recipe and proof first, then lots, fabric and machines.
 */
void
bb_repeat_find (const BbRepeatCase  *self,
                const BbUnitContext *context,
                GPtrArray           *findings)
{
  g_return_if_fail (self != NULL && self->line != NULL && self->blank != NULL && self->colourway != NULL);
  g_return_if_fail (self->lots != NULL && self->stock != NULL && self->machines != NULL && findings != NULL);

  find_recipe (self, findings);
  find_failures (self, findings);
  find_lots (self, findings);
  find_fabric (self, context, findings);
  find_garment (self, findings);
  find_machines (self, findings);
}

static char *
describe_recipe (const BbFinding *self,
                 const char      *day)
{
  if (self->kind == BB_FINDING_SUPERSEDED)
    /* Translators: the codes of two revisions of a recipe. */
    return g_strdup_printf (_("%s has been followed by %s, which is proven."), self->subject, self->after);
  if (self->kind == BB_FINDING_UNPROVEN && bb_choices_find (&bb_state_choices, self->after) == BB_STATE_ON_TRIAL)
    /* Translators: the code of a revision, and a day. */
    return g_strdup_printf (_("%s is on trial since %s."), self->subject, day);
  if (self->kind == BB_FINDING_UNPROVEN)
    /* Translators: the code of a revision, and a day. */
    return g_strdup_printf (_("%s is a draft since %s."), self->subject, day);
  if (self->after != NULL)
    /* Translators: the code of a revision, a day, and the reason that somebody gave. */
    return g_strdup_printf (_("%s was withdrawn on %s: %s"), self->subject, day, self->after);

  return g_strdup_printf (_("%s was withdrawn on %s."), self->subject, day);
}

static char *
describe_failure (const BbFinding *self,
                  const char      *day)
{
  gulong cycles = self->cycles > 0 ? (gulong) self->cycles : 0;

  /* Translators: the code of a specimen, that of its revision, a number of washes, and a day. */
  return g_strdup_printf (ngettext ("Specimen %s of %s failed after %lu wash, on %s.",
                                    "Specimen %s of %s failed after %lu washes, on %s.", cycles),
                          self->subject, self->before != NULL ? self->before : "", cycles, day);
}

static char *
describe_lot (const BbFinding *self,
              const char      *day)
{
  if (self->kind == BB_FINDING_LOT_OTHER)
    /* Translators: the name of a supply, the codes of the lots that were used then, and that of today's. */
    return g_strdup_printf (_("%s: then from %s, now from %s."), self->subject, self->before, self->after);
  if (self->kind == BB_FINDING_LOT_PAST)
    /* Translators: the code of a lot, the name of what is in it, and its last day of use. */
    return g_strdup_printf (_("Lot %s of %s is past its date, %s, and there is no other."), self->subject, self->after,
                            day);

  /* Translators: the codes of lots. */
  return g_strdup_printf (_("Nothing is left of what %s held."), self->subject);
}

static char *
describe_things (const BbFinding *self,
                 const char      *day)
{
  switch ((int) self->kind)
    {
    case BB_FINDING_FABRIC:
      /* Translators: what was edited in a garment's description, its value then, and its value now. */
      return g_strdup_printf (_("The garment's description was edited. %s: then %s, now %s."), self->subject,
                              self->before, self->after);
    case BB_FINDING_GARMENT_GONE:
      /* Translators: a garment, its colour, and a day. */
      return g_strdup_printf (_("%s in %s is out of use since %s."), self->subject, self->before, day);
    case BB_FINDING_MACHINE_GONE:
      /* Translators: a machine, and a day. */
      return g_strdup_printf (_("%s is out of use since %s."), self->subject, day);
    case BB_FINDING_CALIBRATED:
    default:
      /* Translators: a machine, and a day. */
      return g_strdup_printf (_("%s was calibrated on %s."), self->subject, day);
    }
}

/**
 * bb_finding_describe:
 * @self: what has changed
 * @day: (nullable): its date as it is written where the sentence stands; %NULL for `YYYY-MM-DD`
 *
 * Returns: (transfer full): the finding, as one sentence
 */
char *
bb_finding_describe (const BbFinding *self,
                     const char      *day)
{
  g_autofree char *iso = NULL;
  const char *written = day;

  g_return_val_if_fail (self != NULL, NULL);

  if (written == NULL)
    written = iso = self->at != NULL ? g_strndup (self->at, strlen ("YYYY-MM-DD")) : g_strdup ("");

  switch ((BbFindingKind) self->kind)
    {
    case BB_FINDING_SUPERSEDED:
    case BB_FINDING_WITHDRAWN:
    case BB_FINDING_UNPROVEN:
      return describe_recipe (self, written);
    case BB_FINDING_WASH_FAILED:
      return describe_failure (self, written);
    case BB_FINDING_LOT_OTHER:
    case BB_FINDING_LOT_PAST:
    case BB_FINDING_LOT_NONE:
      return describe_lot (self, written);
    case BB_FINDING_FABRIC:
    case BB_FINDING_GARMENT_GONE:
    case BB_FINDING_CALIBRATED:
    case BB_FINDING_MACHINE_GONE:
    default:
      return describe_things (self, written);
    }
}

BB_DEFINE_TABLE (BbFinding, bb_finding, "finding", N_("Finding"), BB_FINDING_FIELDS, NULL)
