/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-model"

#include "bb-equipment.h"

#include <string.h>

#include "bb-day.h"

/**
 * bb_equipment_dup_due_day:
 * @self: a machine
 *
 * Returns: (transfer full) (nullable): the day on which it has to be calibrated again, as `YYYY-MM-DD`; %NULL where
 *   nobody said how often, or when it was done last
 */
char *
bb_equipment_dup_due_day (const BbEquipment *self)
{
  g_return_val_if_fail (self != NULL, NULL);

  if (self->calibrate_days == BB_INTEGER_NONE || self->calibrated_at == NULL)
    return NULL;

  return bb_day_after (self->calibrated_at, self->calibrate_days);
}

/**
 * bb_equipment_is_due:
 * @self: a machine
 * @day: a day as `YYYY-MM-DD`
 *
 * Returns: %TRUE if it has to be calibrated on @day: because it is time, or because it never was
 */
gboolean
bb_equipment_is_due (const BbEquipment *self,
                     const char        *day)
{
  g_autofree char *due = bb_equipment_dup_due_day (self);

  if (self->calibrate_days == BB_INTEGER_NONE)
    return FALSE;

  return due == NULL || strcmp (due, day) <= 0;
}

/**
 * bb_equipment_compare_due:
 * @self: a machine
 * @other: another one
 * @day: a day as `YYYY-MM-DD`
 *
 * Compares what to see to first on @day: of machines that have to be calibrated those that never were, then those that
 * have waited longest. All others are alike.
 *
 * Returns: less than 0 if @self comes first, more than 0 if @other does, 0 if neither
 */
int
bb_equipment_compare_due (const BbEquipment *self,
                          const BbEquipment *other,
                          const char        *day)
{
  const gboolean is_due = bb_equipment_is_due (self, day);
  g_autofree char *due = bb_equipment_dup_due_day (self);
  g_autofree char *other_due = bb_equipment_dup_due_day (other);

  if (is_due != bb_equipment_is_due (other, day))
    return is_due ? -1 : 1;

  return is_due ? g_strcmp0 (due, other_due) : 0;
}

BB_DEFINE_CHOICES (bb_equipment_kind, "equipment kind", BB_EQUIPMENT_KIND_CHOICES);

BB_DEFINE_TABLE (BbEquipment, bb_equipment, "equipment", N_("Machine"), BB_EQUIPMENT_FIELDS, NULL)
