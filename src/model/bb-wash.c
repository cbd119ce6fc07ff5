/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-model"

#include "bb-wash.h"

#include "bb-error.h"

BB_DEFINE_CHOICES (bb_fault, "fault", BB_FAULT_CHOICES);

static gboolean
check_wash_test (gconstpointer record,
                 GError      **error)
{
  const BbWashTest *self = record;

  if (self->wet_g < self->tare_g)
    {
      g_set_error_literal (error, BB_MODEL_ERROR, BB_MODEL_ERROR_VALUE,
                           _("wet_g: the garment can't be lighter with pretreat than without."));
      return FALSE;
    }

  return TRUE;
}

/**
 * bb_wash_test_follow:
 * @self: a wash test
 * @plan: the plan that its specimen is washed to
 *
 * Takes over what follows from the plan: the method, the temperature where the plan says one, and the last cycle.
 */
void
bb_wash_test_follow (BbWashTest       *self,
                     const BbWashPlan *plan)
{
  g_return_if_fail (self != NULL && plan != NULL);

  self->method = plan->standard;
  self->plan_cycles = bb_wash_plan_get_last (plan);
  if (!isnan (plan->wash_c))
    self->wash_c = plan->wash_c;
}

BB_DEFINE_TABLE (BbWashTest, bb_wash_test, "wash_test", N_("Wash test"), BB_WASH_TEST_FIELDS, check_wash_test)
BB_DEFINE_TABLE (BbReading, bb_reading, "reading", N_("Reading"), BB_READING_FIELDS, NULL)
