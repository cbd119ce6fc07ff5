/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <adwaita.h>

#include "bb-session.h"

G_BEGIN_DECLS

/**
 * BbRecipePicker:
 *
 * A button that opens a search over all recipes, however many there are.
 */
#define BB_TYPE_RECIPE_PICKER (bb_recipe_picker_get_type ())
G_DECLARE_FINAL_TYPE (BbRecipePicker, bb_recipe_picker, BB, RECIPE_PICKER, AdwBin)

void bb_recipe_picker_set_session (BbRecipePicker *self,
                                   BbSession      *session);
void bb_recipe_picker_set_label   (BbRecipePicker *self,
                                   const char     *label);
void bb_recipe_picker_popup       (BbRecipePicker *self);

G_END_DECLS
