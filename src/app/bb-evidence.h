/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <adwaita.h>

#include "bb-session.h"

G_BEGIN_DECLS

/**
 * BbEvidence:
 *
 * The wash tests of one revision: what "it washes well" rests on. A line opens the test in the wash log.
 */
#define BB_TYPE_EVIDENCE (bb_evidence_get_type ())
G_DECLARE_FINAL_TYPE (BbEvidence, bb_evidence, BB, EVIDENCE, GtkBox)

void          bb_evidence_show         (BbEvidence       *self,
                                        BbSession        *session,
                                        const BbRevision *revision);
char         *bb_evidence_dup_summary  (BbEvidence       *self);
char         *bb_evidence_dup_missing  (BbEvidence       *self);
guint         bb_evidence_get_n_failed (BbEvidence       *self);
GActionGroup *bb_evidence_get_actions  (BbEvidence       *self);

G_END_DECLS
