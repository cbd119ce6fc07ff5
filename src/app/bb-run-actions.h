/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bb-run.h"
#include "bb-session.h"

G_BEGIN_DECLS

/* What is done to runs: each is written off the main loop, and a refusal is told to the person. */

/**
 * BbRunWritten:
 * @data: what came with it
 *
 * Something that was asked for is done, or was refused: the same may be asked for again.
 */
typedef void (*BbRunWritten) (gpointer data);

void bb_run_start    (BbSession      *session,
                      const BbRun    *run);
void bb_run_finish   (BbSession      *session,
                      const BbRun    *run);
void bb_run_annotate (BbSession      *session,
                      gint64          run,
                      const char     *text,
                      BbRunWritten    written,
                      gpointer        data);
void bb_run_use_lot  (BbSession      *session,
                      gint64          run,
                      const BbLotUse *use,
                      BbRunWritten    written,
                      gpointer        data);

G_END_DECLS
