/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <adwaita.h>

#include "bb-equipment.h"
#include "bb-session.h"

G_BEGIN_DECLS

/**
 * BbCareView:
 *
 * When a machine was calibrated, when it has to be again, and a button that says it is done, by whom.
 */
#define BB_TYPE_CARE_VIEW (bb_care_view_get_type ())
G_DECLARE_FINAL_TYPE (BbCareView, bb_care_view, BB, CARE_VIEW, GtkBox)

GtkWidget *bb_care_view_new  (void);
void       bb_care_view_show (BbCareView        *self,
                              BbSession         *session,
                              const BbEquipment *machine);

G_END_DECLS
