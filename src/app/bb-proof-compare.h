/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <adwaita.h>

#include "bb-session.h"

G_BEGIN_DECLS

/**
 * BbProofCompare:
 *
 * How two revisions washed, side by side: both curves of survival in one chart, and both pass rates with their bounds.
 * Its property `sentence` says whether that shows which is better, by Fisher's exact test. All is loaded off the main
 * loop.
 */
#define BB_TYPE_PROOF_COMPARE (bb_proof_compare_get_type ())
G_DECLARE_FINAL_TYPE (BbProofCompare, bb_proof_compare, BB, PROOF_COMPARE, GtkBox)

GtkWidget *bb_proof_compare_new  (void);
void       bb_proof_compare_show (BbProofCompare *self,
                                  BbSession      *session,
                                  gint64          first,
                                  gint64          second);

G_END_DECLS
