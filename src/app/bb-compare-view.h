/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <adwaita.h>

#include "bb-session.h"

G_BEGIN_DECLS

/**
 * BbCompareView:
 *
 * Two revisions of a recipe side by side: how they washed, and setting by setting, with what differs marked by a sign
 * and in bold.
 */
#define BB_TYPE_COMPARE_VIEW (bb_compare_view_get_type ())
G_DECLARE_FINAL_TYPE (BbCompareView, bb_compare_view, BB, COMPARE_VIEW, GtkBox)

void bb_compare_view_show (BbCompareView *self,
                           BbSession     *session,
                           GPtrArray     *revisions);

G_END_DECLS
