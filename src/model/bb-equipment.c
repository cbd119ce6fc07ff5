/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bb-equipment.h"

BB_DEFINE_CHOICES (bb_equipment_kind, "equipment kind", BB_EQUIPMENT_KIND_CHOICES);

BB_DEFINE_TABLE (BbEquipment, bb_equipment, "equipment", N_("Machine"), BB_EQUIPMENT_FIELDS, NULL)
