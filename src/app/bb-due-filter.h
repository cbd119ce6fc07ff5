/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <adwaita.h>

#include "bb-session.h"

G_BEGIN_DECLS

/**
 * BbDueFilter:
 *
 * Narrows the wash log to what has to be read today, or to another part of it, and says how many are in each.
 */
#define BB_TYPE_DUE_FILTER (bb_due_filter_get_type ())
G_DECLARE_FINAL_TYPE (BbDueFilter, bb_due_filter, BB, DUE_FILTER, AdwBin)

void     bb_due_filter_set_session (BbDueFilter *self,
                                    BbSession   *session);
void     bb_due_filter_refresh     (BbDueFilter *self);
void     bb_due_filter_narrow      (BbDueFilter *self,
                                    BbQuery     *query);
gboolean bb_due_filter_is_set      (BbDueFilter *self);
void     bb_due_filter_clear       (BbDueFilter *self);

G_END_DECLS
