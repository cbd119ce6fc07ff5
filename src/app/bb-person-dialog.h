/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <adwaita.h>

#include "bb-session.h"

G_BEGIN_DECLS

/**
 * BbPersonDialog:
 *
 * Writes a new person into the book, who is then the one at the bench.
 */
#define BB_TYPE_PERSON_DIALOG (bb_person_dialog_get_type ())
G_DECLARE_FINAL_TYPE (BbPersonDialog, bb_person_dialog, BB, PERSON_DIALOG, AdwWindow)

GtkWidget *bb_person_dialog_new (GtkWindow *parent,
                                 BbSession *session);

G_END_DECLS
