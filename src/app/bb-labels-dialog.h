/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <adwaita.h>

#include "bb-session.h"

G_BEGIN_DECLS

/**
 * BbLabelsDialog:
 *
 * Labels of one thing: how many, on which paper, from which place of a used sheet on; looked at, printed, or saved.
 */
#define BB_TYPE_LABELS_DIALOG (bb_labels_dialog_get_type ())
G_DECLARE_FINAL_TYPE (BbLabelsDialog, bb_labels_dialog, BB, LABELS_DIALOG, AdwWindow)

GtkWidget *bb_labels_dialog_new (GtkWindow     *parent,
                                 BbSession     *session,
                                 const BbTable *table,
                                 gint64         id,
                                 GError       **error);

G_END_DECLS
