/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bb-wash.h"
#include "bb-wash-verdict.h"

G_BEGIN_DECLS

gboolean bb_wash_proof_fails (const BbRevision *revision,
                              const BbWashTest *test,
                              const BbReading  *reading);
gboolean bb_wash_proof_judge (const BbRevision *revision,
                              const BbWashTest *test,
                              GPtrArray        *readings,
                              BbWashVerdictOut *out,
                              GError          **error);

G_END_DECLS
