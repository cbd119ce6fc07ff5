/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <adwaita.h>

#include "bb-session.h"

G_BEGIN_DECLS

/**
 * BbTraceView:
 *
 * What a lot, revision, machine, person or anything else had a part in: the customers that it touched and the runs, to
 * be opened, and to be saved as a table or as a fault report.
 */
#define BB_TYPE_TRACE_VIEW (bb_trace_view_get_type ())
G_DECLARE_FINAL_TYPE (BbTraceView, bb_trace_view, BB, TRACE_VIEW, GtkBox)

GtkWidget *bb_trace_view_new  (void);
void       bb_trace_view_show (BbTraceView   *self,
                               BbSession     *session,
                               const BbTable *table,
                               gint64         id);
void       bb_trace_view_save (BbTraceView   *self,
                               GFile         *file,
                               gboolean       as_pdf);

G_END_DECLS
