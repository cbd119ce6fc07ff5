/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib/gi18n-lib.h>

#include "bb-wash-verdict.h"
#include "bb-wash.h"

G_BEGIN_DECLS

/*
 * When a specimen has to be read next. Days of the calendar, as YYYY-MM-DD.
 *
 * The next reading is at the plan's first stop beyond the last reading. It is due once the shop has had time to wash
 * that far, counted from the last reading, or from the print and its rest where there is none: the cycles that are
 * missing, at the plan's cycles a week, rounded up to whole days. It is overdue once the days of grace are over too.
 * A specimen that passed, failed or was withdrawn is done. One that was read at its last cycle without what the
 * verdict needs is due there at once. Without a plan there is one stop, at the planned cycles, and the defaults of a
 * plan hold.
 * Source: common practice, no source.
 */

#define BB_DUE_CHOICES(C) \
  C (BB_DUE_OVERDUE, "overdue", N_("Overdue")) \
  C (BB_DUE_TODAY, "due", N_("Due")) \
  C (BB_DUE_RUNNING, "running", N_("Running")) \
  C (BB_DUE_DONE, "done", N_("Done"))

BB_DECLARE_CHOICES (BbDue, bb_due, BB_DUE_CHOICES);

#define BB_WASH_DUE_FIELDS(F, T) \
  F (T, CHOICE, state, N_("Reading"), .help = N_("Whether a reading is due."), .choices = &bb_due_choices) \
  F (T, INTEGER, cycles, N_("Next at"), .help = N_("After how many washes to read it next.")) \
  F (T, DATE, due_on, N_("Due on"), .help = N_("The day from which that reading is due.")) \
  F (T, INTEGER, days_late, N_("Days late"), .help = N_("How many days ago it was due; below 0 how many are left."))

BB_DECLARE_TABLE (BbWashDue, bb_wash_due, BB_WASH_DUE_FIELDS);

gboolean bb_wash_schedule (const BbWashTest  *test,
                           const BbWashPlan  *plan,
                           GPtrArray         *readings,
                           BbVerdict          verdict,
                           const char        *today,
                           BbWashDue         *out,
                           GError           **error);
char    *bb_wash_due_describe (const BbWashDue *self);

G_END_DECLS
