/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bb-quantity.h"
#include "bb-wash-schedule.h"

G_BEGIN_DECLS

/* What a wash plan follows, and what may be done with it, in words. */

char *bb_plan_words_of_standard (const BbWashPlan    *plan);
char *bb_plan_words_of_method   (const BbWashPlan    *plan,
                                 const BbUnitContext *units);
char *bb_plan_words_of_source   (const BbWashPlan    *plan);
char *bb_plan_words_of_use      (const BbWashPlan    *plan,
                                 gint64               n_specimens);
char *bb_plan_words_of_next     (const BbWashPlan    *plan,
                                 const BbWashDue     *due,
                                 const BbUnitContext *units);

G_END_DECLS
