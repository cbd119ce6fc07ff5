/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-model"

#include "bb-wash-plan.h"

#include "bb-error.h"

BB_DEFINE_CHOICES (bb_drying, "drying", BB_DRYING_CHOICES);
BB_DEFINE_CHOICES (bb_plan_origin, "origin of a plan", BB_PLAN_ORIGIN_CHOICES);

static gboolean
refuse (GError    **error,
        const char *message)
{
  g_set_error_literal (error, BB_MODEL_ERROR, BB_MODEL_ERROR_VALUE, message);
  return FALSE;
}

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
        return refuse (error, _("grade_at: give the cycles in rising order, each once."));
      before = cycles;
    }
  if (self->standard == BB_WASH_SHOP)
    return TRUE;
  if (is_empty (self->publication))
    return refuse (error, _("publication: name the edition of the standard that has to be bought and followed."));
  if (is_empty (self->procedure))
    return refuse (error, _("procedure: name the standard's procedure, like 4N."));

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

BB_DEFINE_TABLE (BbPlanStop, bb_plan_stop, "plan_stop", N_("Reading"), BB_PLAN_STOP_FIELDS, NULL)
BB_DEFINE_TABLE (BbWashPlan, bb_wash_plan, "wash_plan", N_("Wash plan"), BB_WASH_PLAN_FIELDS, check_wash_plan)
