/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <adwaita.h>

#include "bb-session.h"

G_BEGIN_DECLS

/**
 * BbWithdrawnToggle:
 *
 * Whether a list shows what is withdrawn too. It is seen only where something is.
 */
#define BB_TYPE_WITHDRAWN_TOGGLE (bb_withdrawn_toggle_get_type ())
G_DECLARE_FINAL_TYPE (BbWithdrawnToggle, bb_withdrawn_toggle, BB, WITHDRAWN_TOGGLE, AdwBin)

void        bb_withdrawn_toggle_start      (BbWithdrawnToggle *self,
                                            BbSession         *session,
                                            const BbTable     *table);
void        bb_withdrawn_toggle_refresh    (BbWithdrawnToggle *self);
BbWithdrawn bb_withdrawn_toggle_get_wanted (BbWithdrawnToggle *self);
void        bb_withdrawn_toggle_set        (BbWithdrawnToggle *self,
                                            gboolean           shows);

G_END_DECLS
