/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <adwaita.h>

#include "bb-session.h"

G_BEGIN_DECLS

/**
 * BbRecordDialog:
 *
 * Edits one record that has no page of its own. Closes once it is saved or given up.
 */
#define BB_TYPE_RECORD_DIALOG (bb_record_dialog_get_type ())
G_DECLARE_FINAL_TYPE (BbRecordDialog, bb_record_dialog, BB, RECORD_DIALOG, AdwWindow)

BbRecordDialog *bb_record_dialog_new (GtkWindow     *parent,
                                      BbSession     *session,
                                      const char    *title,
                                      const BbTable *table,
                                      gpointer       record);

G_END_DECLS
