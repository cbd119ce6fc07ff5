/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bb-row.h"
#include "bb-session.h"

G_BEGIN_DECLS

void bb_job_card_fill (BbRow         *row,
                       BbSession     *session,
                       gconstpointer  record);

G_END_DECLS
