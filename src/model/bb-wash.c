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
    return bb_refuse_value (error, _("wet_g: the garment can't be lighter with pretreat than without."));

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

/**
 * bb_wash_test_is_followed:
 * @plan: a wash plan
 * @field: a field of the table of wash tests
 *
 * Returns: %TRUE if the plan says that value of its specimens, as bb_wash_test_follow() takes it over
 */
gboolean
bb_wash_test_is_followed (const BbWashPlan *plan,
                          const BbField    *field)
{
  g_autoptr (BbWashTest) before = bb_wash_test_new ();
  g_autoptr (BbWashTest) after = NULL;

  g_return_val_if_fail (plan != NULL && field != NULL, FALSE);

  /* A value that is like the default is said as well. */
  bb_field_clear (field, before);
  after = bb_record_copy (&bb_wash_test_table, before);
  bb_wash_test_follow (after, plan);

  return !bb_field_equal (field, before, after);
}

BB_DEFINE_TABLE (BbWashTest, bb_wash_test, "wash_test", N_("Wash test"), BB_WASH_TEST_FIELDS, check_wash_test)
BB_DEFINE_TABLE (BbReading, bb_reading, "reading", N_("Reading"), BB_READING_FIELDS, NULL)
