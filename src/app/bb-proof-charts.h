/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <adwaita.h>

#include "bb-session.h"
#include "bb-wash-evidence.h"

G_BEGIN_DECLS

/**
 * BbProofCharts:
 *
 * What the wash log has on one revision, as charts: the grades of its specimens by cycles with the limit, and how many
 * are still good by cycles; for one specimen, its grades among those of the others, and how all of them stand. All is
 * loaded off the main loop; charts of a revision without a reading take no place.
 *
 * Signal `loaded`: the evidence is there, or could not be loaded.
 */
#define BB_TYPE_PROOF_CHARTS (bb_proof_charts_get_type ())
G_DECLARE_FINAL_TYPE (BbProofCharts, bb_proof_charts, BB, PROOF_CHARTS, GtkBox)

GtkWidget            *bb_proof_charts_new          (void);
void                  bb_proof_charts_show         (BbProofCharts *self,
                                                    BbSession     *session,
                                                    gint64         revision,
                                                    gint64         wash_test);
const BbWashEvidence *bb_proof_charts_get_evidence (BbProofCharts *self);

G_END_DECLS
