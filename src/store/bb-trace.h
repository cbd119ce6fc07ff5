/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bb-book.h"

G_BEGIN_DECLS

/* From anything that had a part in a print to the runs, jobs and customers that it touched, and back. */

GArray    *bb_book_trace_runs        (BbBook         *self,
                                      const BbTable  *table,
                                      gint64          id,
                                      GError        **error);
GArray    *bb_book_list_run_lots     (BbBook         *self,
                                      gint64          run,
                                      GError        **error);
GPtrArray *bb_book_load_proven_lines (BbBook         *self,
                                      GError        **error);

G_END_DECLS
