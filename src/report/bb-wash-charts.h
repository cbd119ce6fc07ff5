/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bb-chart.h"
#include "bb-wash-evidence.h"

G_BEGIN_DECLS

BbChart *bb_wash_chart_grades   (const BbWashEvidence *evidence,
                                 gint64                wash_test);
BbChart *bb_wash_chart_survival (const BbWashEvidence *evidence);
BbChart *bb_wash_chart_lives    (const BbWashEvidence *first,
                                 const BbWashEvidence *second);
BbChart *bb_wash_chart_compare  (const BbWashEvidence *first,
                                 const BbWashEvidence *second);

G_END_DECLS
