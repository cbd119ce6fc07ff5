/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bb-page.h"

G_BEGIN_DECLS

/**
 * BbMixPage:
 *
 * What to pour together: from a recipe or typed figures to grams and millilitres, and the weigh-in that checks
 * the result. It shows a revision by its key.
 */
#define BB_TYPE_MIX_PAGE (bb_mix_page_get_type ())
G_DECLARE_FINAL_TYPE (BbMixPage, bb_mix_page, BB, MIX_PAGE, BbPage)

G_END_DECLS
