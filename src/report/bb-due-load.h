/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bb-book.h"
#include "bb-wash-schedule.h"

G_BEGIN_DECLS

/**
 * BbDueLine:
 * @line: the specimen, with what its verdict follows from
 * @verdict: whether it stood its plan
 * @due: when it has to be read next
 *
 * One specimen on the list of a day.
 */
typedef struct {
  BbWashLine *line;
  BbWashVerdictOut verdict;
  BbWashDue due;
} BbDueLine;

gboolean   bb_wash_line_judge (const BbWashLine  *line,
                               const char        *today,
                               BbWashVerdictOut  *verdict,
                               BbWashDue         *due,
                               GError           **error);
GPtrArray *bb_due_load        (BbBook            *book,
                               const char        *today,
                               GError           **error);

const BbReading *bb_wash_line_find_reading     (const BbWashLine *line,
                                                gint64            cycles);
guint            bb_wash_line_find_faults      (const BbWashLine       *line,
                                                const BbWashVerdictOut *verdict);
BbReading       *bb_wash_line_dup_next_reading (const BbWashLine *line,
                                                const BbWashDue  *due);

G_END_DECLS
