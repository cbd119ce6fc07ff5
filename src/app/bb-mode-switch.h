/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <adwaita.h>

#include "bb-recipe.h"

G_BEGIN_DECLS

/**
 * BbModeSwitch:
 *
 * The print modes beside each other, in short words, so that one is a key away from the next.
 */
#define BB_TYPE_MODE_SWITCH (bb_mode_switch_get_type ())
G_DECLARE_FINAL_TYPE (BbModeSwitch, bb_mode_switch, BB, MODE_SWITCH, AdwBin)

BbPrintMode bb_mode_switch_get_mode (BbModeSwitch *self);
void        bb_mode_switch_set_mode (BbModeSwitch *self,
                                     BbPrintMode   mode);

G_END_DECLS
