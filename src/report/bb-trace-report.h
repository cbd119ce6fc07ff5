/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bb-book.h"
#include "bb-document.h"
#include "bb-quantity.h"

G_BEGIN_DECLS

/* From anything that had a part in a print to the runs, jobs and customers that it touched. */

#define BB_TOUCHED_FIELDS(F, T) \
  F (T, TEXT, code, N_("Code of the customer"), .help = N_("By it two customers of one name are told apart.")) \
  F (T, TEXT, customer, N_("Customer"), .help = N_("Who got what was printed.")) \
  F (T, TEXT, contact, N_("Contact"), .help = N_("Whom to ask, and how to reach them.")) \
  F (T, TEXT, jobs, N_("Jobs"), .help = N_("The numbers of the jobs.")) \
  F (T, INTEGER, runs, N_("Runs"), .help = N_("How many runs.")) \
  F (T, INTEGER, good, N_("Good"), .help = N_("How many garments came out well.")) \
  F (T, DATE, first_at, N_("First"), .help = N_("When the first of the runs began.")) \
  F (T, DATE, last_at, N_("Last"), .help = N_("When the last of the runs began."))

BB_DECLARE_TABLE (BbTouched, bb_touched, BB_TOUCHED_FIELDS);

#define BB_TRACE_FIELDS(F, T) \
  F (T, TEXT, kind, N_("Kind"), .help = N_("What the trace starts from.")) \
  F (T, TEXT, code, N_("Code"), .help = N_("Its code.")) \
  F (T, TEXT, name, N_("Name"), .help = N_("What it is.")) \
  F (T, INTEGER, jobs, N_("Jobs"), .help = N_("How many jobs it touched.")) \
  F (T, INTEGER, good, N_("Good"), .help = N_("How many garments came out well.")) \
  F (T, INTEGER, spoiled, N_("Spoiled"), .help = N_("How many garments were spoiled.")) \
  F (T, INTEGER, open, N_("Not finished"), \
     .help = N_("How many runs have not ended yet, and count as far as they have come.")) \
  F (T, LIST, customers, N_("Customers"), .help = N_("Whom it touched, the last one first."), \
     .item = &bb_touched_table) \
  F (T, LIST, runs, N_("Runs"), .help = N_("What it had a part in, the newest first."), .item = &bb_run_card_table)

BB_DECLARE_TABLE (BbTrace, bb_trace, BB_TRACE_FIELDS);

/* bb-trace-load.c */
BbTrace    *bb_trace_load        (BbBook               *book,
                                  const BbTable        *table,
                                  gint64                id,
                                  GError              **error);
char       *bb_trace_dup_title   (const BbTrace        *self);
char       *bb_trace_describe    (const BbTrace        *self);

/* bb-trace-report.c */
BbDocument *bb_trace_report_new  (BbBook               *book,
                                  const BbTable        *table,
                                  gint64                id,
                                  const char           *today,
                                  const BbUnitContext  *units,
                                  GError              **error);

G_END_DECLS
