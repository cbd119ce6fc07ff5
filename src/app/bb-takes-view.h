/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <adwaita.h>

#include "bb-job-sheet.h"
#include "bb-session.h"

G_BEGIN_DECLS

/**
 * BbTakesView:
 *
 * Which containers a mix is taken from, what is left in them then, and what to look at before it is poured.
 */
#define BB_TYPE_TAKES_VIEW (bb_takes_view_get_type ())
G_DECLARE_FINAL_TYPE (BbTakesView, bb_takes_view, BB, TAKES_VIEW, GtkBox)

void        bb_takes_view_show   (BbTakesView      *self,
                                  BbSession        *session,
                                  const BbMixSheet *mix);
BbMixSheet *bb_takes_view_reckon (BbTakesView      *self,
                                  BbSession        *session,
                                  gint64            supply,
                                  double            concentrate_g);

G_END_DECLS
