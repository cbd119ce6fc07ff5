/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bb-book.h"

G_BEGIN_DECLS

/* From anything that had a part in a print to the runs, jobs and customers that it touched, and back. */

gboolean bb_book_is_traced     (const BbTable  *table);
GArray  *bb_book_trace_runs    (BbBook         *self,
                                const BbTable  *table,
                                gint64          id,
                                GError        **error);
GArray  *bb_book_list_runs     (BbBook         *self,
                                guint           limit,
                                GError        **error);
GArray  *bb_book_list_run_lots (BbBook         *self,
                                gint64          run,
                                GError        **error);

/**
 * BbRepeatLine:
 * @line: the key of a line of the job that is repeated
 * @revision: the revision that the new line is printed by; 0 for the one that the old line was, %BB_INTEGER_NONE for
 *   none yet
 * @left_out: whether the line is not repeated
 *
 * What a person chose for one line of a repeated job.
 */
typedef struct {
  gint64 line;
  gint64 revision;
  gboolean left_out;
} BbRepeatLine;

/* What was, for who wants to do it again: bb-book-repeat.c */
int        bb_book_find_last_run     (BbBook              *self,
                                      const BbTable       *table,
                                      gint64               id,
                                      BbRun              **run,
                                      GError             **error);
int        bb_book_find_last_print   (BbBook              *self,
                                      gint64               line,
                                      BbRun              **run,
                                      GError             **error);
GPtrArray *bb_book_load_failures     (BbBook              *self,
                                      gint64               revision,
                                      const char          *since,
                                      GError             **error);
int        bb_book_find_text_at_run  (BbBook              *self,
                                      const BbTable       *table,
                                      gint64               id,
                                      gint64               run,
                                      char               **json,
                                      GError             **error);
gboolean   bb_book_repeat_job        (BbBook              *self,
                                      gint64               job,
                                      const char          *day,
                                      const BbRepeatLine  *choices,
                                      guint                n_choices,
                                      gint64              *repeated,
                                      GError             **error);

G_END_DECLS
