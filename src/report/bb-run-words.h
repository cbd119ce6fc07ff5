/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bb-book.h"
#include "bb-job-sheet.h"
#include "bb-quantity.h"
#include "bb-run.h"
#include "bb-weigh-in.h"

G_BEGIN_DECLS

/* How a line or a run has gone, in words. */

char *bb_words_of_progress         (const BbLineCard    *line);
char *bb_words_of_rest             (const BbLineCard    *line);
char *bb_words_of_counts           (gint64               good,
                                    gint64               spoiled);
char *bb_words_of_departure        (BbBook              *book,
                                    const BbRevision    *revision,
                                    const BbDeparture   *departure,
                                    const BbUnitContext *units);
char *bb_words_of_weighed          (const BbWeighed     *weighed,
                                    double               target_g_per_m2,
                                    const BbUnitContext *units);
char *bb_words_of_weigh_in         (const BbWeighInOut  *out,
                                    const BbUnitContext *units);
char *bb_words_of_entry            (BbBook              *book,
                                    const BbLotEntry    *entry,
                                    const BbUnitContext *units);
char *bb_words_of_unnamed_machines (const BbSheetLine   *line,
                                    const BbRun         *run);

G_END_DECLS
