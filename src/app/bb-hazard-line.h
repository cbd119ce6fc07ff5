/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <adwaita.h>

#include "bb-session.h"

G_BEGIN_DECLS

/**
 * BbHazardLine:
 *
 * The hazard statements of the supply that is used in a step, to stand beside it. Hidden where it has none.
 */
#define BB_TYPE_HAZARD_LINE (bb_hazard_line_get_type ())
G_DECLARE_FINAL_TYPE (BbHazardLine, bb_hazard_line, BB, HAZARD_LINE, AdwBin)

void bb_hazard_line_show (BbHazardLine *self,
                          BbSession    *session,
                          gint64        supply);

G_END_DECLS
