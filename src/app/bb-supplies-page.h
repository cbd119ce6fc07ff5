/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bb-catalogue-page.h"

G_BEGIN_DECLS

/**
 * BbSuppliesPage:
 *
 * The shop's pretreats, inks, cover sheets and cleaners, with the hazard statements of their data sheets.
 */
#define BB_TYPE_SUPPLIES_PAGE (bb_supplies_page_get_type ())
G_DECLARE_FINAL_TYPE (BbSuppliesPage, bb_supplies_page, BB, SUPPLIES_PAGE, BbCataloguePage)

G_END_DECLS
