/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bb-book.h"
#include "bb-run.h"
#include "bb-weigh-in.h"

G_BEGIN_DECLS

/**
 * BbRunAim:
 * @box_area_m2: the rectangle that is sprayed, in m²; NaN where the size of the print is not known
 * @laydown_g_per_m2: the pretreat that a garment of the run shall have, in g/m²; NaN where there is none
 *
 * What a weigh-in of a run is held against. It owns nothing.
 */
typedef struct {
  double box_area_m2;
  double laydown_g_per_m2;
} BbRunAim;

gboolean bb_run_aim_load  (BbBook           *book,
                           const BbRun      *run,
                           BbRunAim         *aim,
                           GError          **error);
gboolean bb_run_aim_judge (const BbRunAim   *self,
                           const BbWeighed  *weighed,
                           BbWeighInOut     *out);

G_END_DECLS
