/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <adwaita.h>

#include "bb-session.h"
#include "bb-wash-plan.h"

G_BEGIN_DECLS

/**
 * BbPlanView:
 *
 * What stands behind a wash plan: how far its numbers can be trusted, which standard to buy, and what rests on it.
 */
#define BB_TYPE_PLAN_VIEW (bb_plan_view_get_type ())
G_DECLARE_FINAL_TYPE (BbPlanView, bb_plan_view, BB, PLAN_VIEW, GtkBox)

GtkWidget *bb_plan_view_new  (void);
void       bb_plan_view_show (BbPlanView       *self,
                              BbSession        *session,
                              const BbWashPlan *plan);

G_END_DECLS
