/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-model"

#include "bb-wash-plan.h"

#include "bb-error.h"

BB_DEFINE_CHOICES (bb_drying, "drying", BB_DRYING_CHOICES);
BB_DEFINE_CHOICES (bb_plan_origin, "origin of a plan", BB_PLAN_ORIGIN_CHOICES);

static gboolean
is_empty (const char *text)
{
  return text == NULL || *text == '\0';
}

static gboolean
check_wash_plan (gconstpointer record,
                 GError      **error)
{
  const BbWashPlan *self = record;
  gint64 before = 0;

  for (guint i = 0; self->grade_at != NULL && i < self->grade_at->len; i++)
    {
      gint64 cycles = g_array_index (self->grade_at, BbPlanStop, i).cycles;

      if (cycles <= before)
        return bb_refuse_value (error, _("grade_at: give the cycles in rising order, each once."));
      before = cycles;
    }
  if (self->standard == BB_WASH_SHOP)
    return self->origin == BB_PLAN_ORIGIN_SHOP ||
           bb_refuse_value (error,
                            _("origin: a method of the shop's own has no standard that its numbers could be from."));
  if (is_empty (self->publication))
    return bb_refuse_value (error,
                            _("publication: name the edition of the standard that has to be bought and followed."));
  if (is_empty (self->procedure))
    return bb_refuse_value (error, _("procedure: name the standard's procedure, like 4N."));
  if (self->origin == BB_PLAN_ORIGIN_SHOP)
    return bb_refuse_value (error, _("origin: the numbers of a published method are not the shop's own: say where they "
                                     "were read."));

  return TRUE;
}

/**
 * bb_wash_plan_get_last:
 * @self: a wash plan
 *
 * Returns: at how many cycles a test to this plan ends; 0 where the plan has none yet
 */
gint64
bb_wash_plan_get_last (const BbWashPlan *self)
{
  g_return_val_if_fail (self != NULL, 0);

  return self->grade_at != NULL && self->grade_at->len > 0
           ? g_array_index (self->grade_at, BbPlanStop, self->grade_at->len - 1).cycles
           : 0;
}

/**
 * bb_wash_plan_is_published:
 * @self: a wash plan
 *
 * Returns: %TRUE if the plan follows a published method; %FALSE if it is the shop's own
 */
gboolean
bb_wash_plan_is_published (const BbWashPlan *self)
{
  g_return_val_if_fail (self != NULL, FALSE);

  return self->standard != BB_WASH_SHOP && self->standard != BB_CHOICE_NONE;
}

/**
 * bb_wash_plan_is_settled:
 * @self: a wash plan as the book has it; a new one has no key
 * @draft: the plan as it shall be
 * @is_used: whether specimens are washed to it
 * @field: a field of the table
 *
 * What past tests rest on stays. What a published method says can be put right before, by whoever has the standard in
 * hand and says so: as checked against it. Everything else is another plan, of the shop's own. The book's triggers hold
 * to the same.
 *
 * Returns: %TRUE if the field can't be changed
 */
gboolean
bb_wash_plan_is_settled (const BbWashPlan *self,
                         const BbWashPlan *draft,
                         gboolean          is_used,
                         const BbField    *field)
{
  g_return_val_if_fail (self != NULL && draft != NULL && field != NULL, TRUE);

  if (self->id == BB_INTEGER_NONE)
    return FALSE;
  if (is_used)
    return field->settled != BB_SETTLED_NEVER;

  return field->settled == BB_SETTLED_BY_METHOD && bb_wash_plan_is_published (self) &&
         draft->origin != BB_PLAN_ORIGIN_STANDARD;
}

/**
 * bb_wash_plan_asks_for:
 * @self: a wash plan, which may be half typed
 * @field: a field of the table
 *
 * Returns: %FALSE if the field says nothing of the shop's own method: only a published one has it
 */
gboolean
bb_wash_plan_asks_for (const BbWashPlan *self,
                       const BbField    *field)
{
  g_return_val_if_fail (self != NULL && field != NULL, TRUE);

  return !field->of_standard || bb_wash_plan_is_published (self) || bb_field_is_set (field, self);
}

static char *
describe_source (const BbWashPlan *self)
{
  g_autofree char *source = bb_wash_plan_is_published (self)
                              /* Translators: the code of a wash plan, a standard and its procedure. */
                              ? g_strdup_printf (_("After %s: %s, %s."), self->code, self->publication, self->procedure)
                              : g_strdup_printf (_("After %s."), self->code);

  return g_strjoin ("\n", source, self->note, NULL);
}

/**
 * bb_wash_plan_dup_as_own:
 * @self: a wash plan
 *
 * Makes a plan of the shop's own that washes as this one does, to be changed at will. It claims no standard, and its
 * note says where it comes from.
 *
 * Returns: (transfer full): a new plan, which has no code yet
 */
BbWashPlan *
bb_wash_plan_dup_as_own (const BbWashPlan *self)
{
  BbWashPlan *own = NULL;

  g_return_val_if_fail (self != NULL, NULL);

  own = bb_record_copy (&bb_wash_plan_table, self);
  own->id = BB_INTEGER_NONE;
  g_clear_pointer (&own->code, g_free);
  g_clear_pointer (&own->publication, g_free);
  g_clear_pointer (&own->procedure, g_free);
  g_clear_pointer (&own->withdrawn_at, g_free);
  own->standard = BB_WASH_SHOP;
  own->origin = BB_PLAN_ORIGIN_SHOP;
  g_free (own->note);
  own->note = describe_source (self);

  return own;
}

BB_DEFINE_TABLE (BbPlanStop, bb_plan_stop, "plan_stop", N_("Reading"), BB_PLAN_STOP_FIELDS, NULL)
BB_DEFINE_TABLE (BbWashPlan, bb_wash_plan, "wash_plan", N_("Wash plan"), BB_WASH_PLAN_FIELDS, check_wash_plan)
