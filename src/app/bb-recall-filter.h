/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <adwaita.h>

#include "bb-session.h"

G_BEGIN_DECLS

/**
 * BbRecallFilter:
 *
 * A button that opens what recipes and jobs are narrowed by: fibre, mass, colour, state and day.
 */
#define BB_TYPE_RECALL_FILTER (bb_recall_filter_get_type ())
G_DECLARE_FINAL_TYPE (BbRecallFilter, bb_recall_filter, BB, RECALL_FILTER, AdwBin)

void            bb_recall_filter_set_session (BbRecallFilter *self,
                                              BbSession      *session);
const BbNarrow *bb_recall_filter_get_narrow  (BbRecallFilter *self);
char           *bb_recall_filter_dup_summary (BbRecallFilter *self);
void            bb_recall_filter_clear       (BbRecallFilter *self);

G_END_DECLS
