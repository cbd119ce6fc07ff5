/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bb-supply.h"

#include "bb-error.h"
#include "bb-hazard-code.h"

BB_DEFINE_CHOICES (bb_supply_kind, "supply kind", BB_SUPPLY_KIND_CHOICES);

static gboolean
check_supply (gconstpointer record,
              GError      **error)
{
  const BbSupply *self = record;

  /* A comparison with NaN, where one end is not known, is false. */
  if (self->water_parts_least > self->water_parts_most)
    return bb_refuse_value (error, _("water_parts_most: the most water is less than the least."));
  if (self->laydown_least_g_per_m2 > self->laydown_most_g_per_m2)
    return bb_refuse_value (error, _("laydown_most_g_per_m2: the most laydown is less than the least."));

  return bb_hazard_codes_check (self->hazards, "hazards", error);
}

BB_DEFINE_TABLE (BbSupply, bb_supply, "supply", N_("Supply"), BB_SUPPLY_FIELDS, check_supply)
