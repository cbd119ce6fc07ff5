/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <adwaita.h>

#include "bb-session.h"
#include "bb-wash-evidence.h"

G_BEGIN_DECLS

/**
 * BbProofBox:
 *
 * What a revision still lacks to be proven, by the shop's rule; the way to sign it, or to overrule the rule; and the
 * signature of one that is proven.
 */
#define BB_TYPE_PROOF_BOX (bb_proof_box_get_type ())
G_DECLARE_FINAL_TYPE (BbProofBox, bb_proof_box, BB, PROOF_BOX, AdwBin)

void          bb_proof_box_show        (BbProofBox           *self,
                                        BbSession            *session,
                                        const BbRevision     *revision,
                                        const BbWashEvidence *evidence);
char         *bb_proof_box_dup_missing (BbProofBox           *self);
GActionGroup *bb_proof_box_get_actions (BbProofBox           *self);

G_END_DECLS
