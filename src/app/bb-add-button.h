/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <adwaita.h>

#include "bb-session.h"

G_BEGIN_DECLS

/**
 * BbAddButton:
 *
 * Adds the record that is missing in a list, where it is missed. It stands beside the list, and is no more than a sign:
 * its name is in its tooltip.
 */
#define BB_TYPE_ADD_BUTTON (bb_add_button_get_type ())
G_DECLARE_FINAL_TYPE (BbAddButton, bb_add_button, BB, ADD_BUTTON, AdwBin)

GtkWidget *bb_add_button_new (BbSession     *session,
                              const BbTable *table,
                              const char    *title);

G_END_DECLS
