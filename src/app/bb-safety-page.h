/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bb-page.h"

G_BEGIN_DECLS

/**
 * BbSafetyPage:
 *
 * The usual cautions step by step, and the hazard statements of each supply in use.
 */
#define BB_TYPE_SAFETY_PAGE (bb_safety_page_get_type ())
G_DECLARE_FINAL_TYPE (BbSafetyPage, bb_safety_page, BB, SAFETY_PAGE, BbPage)

G_END_DECLS
