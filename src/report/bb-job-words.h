/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bb-job-sheet.h"
#include "bb-quantity.h"

G_BEGIN_DECLS

/* What a job takes, in words: the same on the page, on paper and on the command line. */

char      *bb_words_of_mix          (const BbMixSheet    *self,
                                     const BbUnitContext *units);
char      *bb_words_of_surplus      (const BbMixSheet    *self,
                                     const BbUnitContext *units);
char      *bb_words_of_take         (const BbTake        *self,
                                     const BbUnitContext *units);
GPtrArray *bb_words_of_mix_warnings (const BbMixSheet    *self,
                                     const BbUnitContext *units);
char      *bb_words_of_caution      (const BbRevision    *revision,
                                     int                  state,
                                     int                  mode_wanted);
char      *bb_words_of_cautions     (const BbRevision    *revision,
                                     int                  state,
                                     int                  mode_wanted,
                                     const GPtrArray     *advice);
char      *bb_words_of_line_caution (const BbSheetLine   *line,
                                     int                  state,
                                     const BbUnitContext *units);
GPtrArray *bb_words_of_step_cautions (const BbRevision   *revision);
char      *bb_words_of_spares       (gint64               garments,
                                     gint64               spares);

G_END_DECLS
