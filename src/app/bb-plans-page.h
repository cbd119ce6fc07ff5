/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bb-catalogue-page.h"

G_BEGIN_DECLS

/**
 * BbPlansPage:
 *
 * The wash plans: how specimens are washed and where they are graded, after published methods and the shop's own.
 */
#define BB_TYPE_PLANS_PAGE (bb_plans_page_get_type ())
G_DECLARE_FINAL_TYPE (BbPlansPage, bb_plans_page, BB, PLANS_PAGE, BbCataloguePage)

G_END_DECLS
