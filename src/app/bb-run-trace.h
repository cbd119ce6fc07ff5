/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <adwaita.h>

#include "bb-run.h"
#include "bb-session.h"

G_BEGIN_DECLS

/**
 * BbRunTrace:
 *
 * A button whose menu names what had a part in a run: its revision, containers, machines and person. Each of them opens
 * the trace of what else was made by it. Its action is `trace.open` (name of a table, key).
 */
#define BB_TYPE_RUN_TRACE (bb_run_trace_get_type ())
G_DECLARE_FINAL_TYPE (BbRunTrace, bb_run_trace, BB, RUN_TRACE, AdwBin)

void bb_run_trace_show (BbRunTrace      *self,
                        BbSession       *session,
                        const BbRun     *run,
                        const GPtrArray *entries);

G_END_DECLS
