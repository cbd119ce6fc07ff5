/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "bb-field.h"

G_BEGIN_DECLS

/**
 * BbQuickButtons:
 *
 * The values of a quick field beside each other. A key chooses one and goes on to what comes next; arrows choose the
 * one beside; Delete lets go of it; Enter saves the form that the buttons stand in.
 */
#define BB_TYPE_QUICK_BUTTONS (bb_quick_buttons_get_type ())
G_DECLARE_FINAL_TYPE (BbQuickButtons, bb_quick_buttons, BB, QUICK_BUTTONS, GtkBox)

GtkWidget *bb_quick_buttons_new          (const BbField  *field);
int        bb_quick_buttons_get_chosen   (BbQuickButtons *self);
void       bb_quick_buttons_set_chosen   (BbQuickButtons *self,
                                          int             index);
void       bb_quick_buttons_set_measured (BbQuickButtons *self,
                                          int             index);

G_END_DECLS
