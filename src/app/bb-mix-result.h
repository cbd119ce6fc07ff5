/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "bb-session.h"
#include "bb-worksheet.h"

G_BEGIN_DECLS

/**
 * BbMixResult:
 *
 * What the figures of a mix come to: what was changed against the recipe, what to know of it, the worksheet, and the
 * containers that it is taken from.
 */
#define BB_TYPE_MIX_RESULT (bb_mix_result_get_type ())
G_DECLARE_FINAL_TYPE (BbMixResult, bb_mix_result, BB, MIX_RESULT, GtkBox)

void bb_mix_result_show       (BbMixResult   *self,
                               BbSession     *session,
                               BbWorksheetIn *in,
                               gint64         pretreat,
                               const char    *departures,
                               GPtrArray     *advice);
void bb_mix_result_show_empty (BbMixResult   *self,
                               const char    *text);

G_END_DECLS
