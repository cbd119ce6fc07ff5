/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bb-catalogue-page.h"

G_BEGIN_DECLS

/**
 * BbBlanksPage:
 *
 * The garments that the shop prints on, and the colours they come in.
 */
#define BB_TYPE_BLANKS_PAGE (bb_blanks_page_get_type ())
G_DECLARE_FINAL_TYPE (BbBlanksPage, bb_blanks_page, BB, BLANKS_PAGE, BbCataloguePage)

G_END_DECLS
