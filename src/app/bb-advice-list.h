/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <adwaita.h>

G_BEGIN_DECLS

/**
 * BbAdviceList:
 *
 * Sentences below each other, each with a sign before it: a warning or a reason.
 */
#define BB_TYPE_ADVICE_LIST (bb_advice_list_get_type ())
G_DECLARE_FINAL_TYPE (BbAdviceList, bb_advice_list, BB, ADVICE_LIST, AdwBin)

void bb_advice_list_clear       (BbAdviceList *self);
void bb_advice_list_add_reason  (BbAdviceList *self,
                                 const char   *sentence);
void bb_advice_list_add_warning (BbAdviceList *self,
                                 const char   *sentence);

G_END_DECLS
