/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <adwaita.h>

#include "bb-session.h"

G_BEGIN_DECLS

/**
 * BbTraceDialog:
 *
 * A trace in a window of its own, for places that have no room for one.
 */
#define BB_TYPE_TRACE_DIALOG (bb_trace_dialog_get_type ())
G_DECLARE_FINAL_TYPE (BbTraceDialog, bb_trace_dialog, BB, TRACE_DIALOG, AdwWindow)

void bb_trace_dialog_present (GtkWidget     *parent,
                              BbSession     *session,
                              const BbTable *table,
                              gint64         id);

G_END_DECLS
