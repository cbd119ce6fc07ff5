/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <adwaita.h>

#include "bb-session.h"

G_BEGIN_DECLS

/**
 * BbSignDialog:
 *
 * Signs a revision as proven in the name of the person at the bench: by the shop's rule, or against it with a reason.
 */
#define BB_TYPE_SIGN_DIALOG (bb_sign_dialog_get_type ())
G_DECLARE_FINAL_TYPE (BbSignDialog, bb_sign_dialog, BB, SIGN_DIALOG, AdwWindow)

GtkWidget *bb_sign_dialog_new (GtkWindow        *parent,
                               BbSession        *session,
                               const BbRevision *revision,
                               const char       *rule,
                               gboolean          overrule);

G_END_DECLS
