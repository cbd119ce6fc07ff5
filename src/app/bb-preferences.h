/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <adwaita.h>

G_BEGIN_DECLS

/**
 * BbPreferences:
 *
 * What a person chooses for this computer: units, currency, light or dark. Each choice holds at once.
 */
#define BB_TYPE_PREFERENCES (bb_preferences_get_type ())
G_DECLARE_FINAL_TYPE (BbPreferences, bb_preferences, BB, PREFERENCES, AdwWindow)

GtkWidget *bb_preferences_new (GtkWindow *parent,
                               GSettings *settings);

G_END_DECLS
