/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bb-wash.h"
#include "bb-wash-verdict.h"

G_BEGIN_DECLS

guint    bb_wash_proof_find_faults     (const BbRevision *revision,
                                        const BbReading  *reading);
char    *bb_wash_proof_describe_faults (guint             faults);
char    *bb_wash_proof_name_faults     (guint             faults);
gboolean bb_wash_proof_judge           (const BbRevision *revision,
                                        const BbWashTest *test,
                                        GPtrArray        *readings,
                                        BbWashVerdictOut *out,
                                        GError          **error);

G_END_DECLS
