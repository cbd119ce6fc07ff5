/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bb-run.h"
#include "bb-session.h"

G_BEGIN_DECLS

/* What is done to runs: each is written off the main loop, and a refusal is told to the person. */

void bb_run_start    (BbSession      *session,
                      const BbRun    *run);
void bb_run_finish   (BbSession      *session,
                      const BbRun    *run);
void bb_run_annotate (BbSession      *session,
                      gint64          run,
                      const char     *text);
void bb_run_use_lot  (BbSession      *session,
                      gint64          run,
                      const BbLotUse *use);

G_END_DECLS
