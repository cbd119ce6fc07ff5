/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <adwaita.h>

#include "bb-placement.h"
#include "bb-session.h"

G_BEGIN_DECLS

/**
 * BbCoverageBars:
 *
 * How much of the art box each part of a print covers: a bar, the share and the area, one line each.
 */
#define BB_TYPE_COVERAGE_BARS (bb_coverage_bars_get_type ())
G_DECLARE_FINAL_TYPE (BbCoverageBars, bb_coverage_bars, BB, COVERAGE_BARS, AdwBin)

void bb_coverage_bars_set (BbCoverageBars      *self,
                           const BbUnitContext *units,
                           const BbCoverage    *coverage,
                           gboolean             has_size);

G_END_DECLS
