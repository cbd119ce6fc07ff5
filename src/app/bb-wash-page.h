/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bb-catalogue-page.h"

G_BEGIN_DECLS

/**
 * BbWashPage:
 *
 * The wash log: specimens by recipe, their readings by cycle, and how each stands.
 */
#define BB_TYPE_WASH_PAGE (bb_wash_page_get_type ())
G_DECLARE_FINAL_TYPE (BbWashPage, bb_wash_page, BB, WASH_PAGE, BbCataloguePage)

G_END_DECLS
