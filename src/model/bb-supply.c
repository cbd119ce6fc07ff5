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

  return TRUE;
}

/* What an older book has in words is shown as it stands, beside "not in our list". */
static gboolean
check_written_supply (gconstpointer record,
                      GError      **error)
{
  return bb_hazard_codes_check (((const BbSupply *) record)->hazards, "hazards", error);
}

BB_DEFINE_TABLE_WRITTEN (BbSupply, bb_supply, "supply", N_("Supply"), BB_SUPPLY_FIELDS, check_supply,
                         check_written_supply)
