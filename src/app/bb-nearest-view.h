/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <adwaita.h>

#include "bb-session.h"

G_BEGIN_DECLS

/**
 * BbNearestView:
 *
 * What there is to go by for a garment that nobody has printed: the recipes nearest to it, each with its reasons in
 * words, and one to start from.
 */
#define BB_TYPE_NEAREST_VIEW (bb_nearest_view_get_type ())
G_DECLARE_FINAL_TYPE (BbNearestView, bb_nearest_view, BB, NEAREST_VIEW, AdwBin)

void bb_nearest_view_set_session (BbNearestView *self,
                                  BbSession     *session);
void bb_nearest_view_show        (BbNearestView *self,
                                  gint64         blank,
                                  gint64         colourway);
void bb_nearest_view_refresh     (BbNearestView *self);
void bb_nearest_view_focus       (BbNearestView *self);

G_END_DECLS
