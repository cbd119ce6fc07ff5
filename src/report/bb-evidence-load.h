/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bb-book.h"
#include "bb-wash-evidence.h"

G_BEGIN_DECLS

BbWashEvidence *bb_evidence_load      (BbBook      *book,
                                       gint64       revision,
                                       const char  *today,
                                       GError     **error);
BbWashEvidence *bb_evidence_load_test (BbBook      *book,
                                       gint64       wash_test,
                                       const char  *today,
                                       GError     **error);

G_END_DECLS
