/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <adwaita.h>

#include "bb-session.h"

G_BEGIN_DECLS

/**
 * BbStationView:
 *
 * One station of a recipe's chain: its name, the settings as figures, what differs from the revision before,
 * what to know of them, and the safety note of the step.
 */
#define BB_TYPE_STATION_VIEW (bb_station_view_get_type ())
G_DECLARE_FINAL_TYPE (BbStationView, bb_station_view, BB, STATION_VIEW, AdwBin)

GtkWidget *bb_station_view_new    (BbStation         station);
void       bb_station_view_show   (BbStationView    *self,
                                   BbSession        *session,
                                   const BbRevision *revision,
                                   const BbRevision *before);
void       bb_station_view_advise (BbStationView    *self,
                                   const GPtrArray  *advice);

G_END_DECLS
