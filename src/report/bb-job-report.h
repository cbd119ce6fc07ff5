/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bb-book.h"
#include "bb-document.h"

G_BEGIN_DECLS

BbDocument *bb_job_report_new (BbBook               *book,
                               gint64                job,
                               const char           *today,
                               const BbUnitContext  *units,
                               GError              **error);

G_END_DECLS
