/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bb-catalogue-page.h"

G_BEGIN_DECLS

/**
 * BbEquipmentPage:
 *
 * The machines of the shop: what they reach and take, and when they have to be calibrated.
 */
#define BB_TYPE_EQUIPMENT_PAGE (bb_equipment_page_get_type ())
G_DECLARE_FINAL_TYPE (BbEquipmentPage, bb_equipment_page, BB, EQUIPMENT_PAGE, BbCataloguePage)

G_END_DECLS
