/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bb-book.h"

G_BEGIN_DECLS

/*
 * What a shop does in a day: takes orders, runs them, and uses up its supplies. Customers, machines and lots are
 * records like any other, and saved by bb_book_save().
 */

/* Jobs and their lines: bb-book-jobs.c */
char       *bb_book_dup_next_job_code (BbBook         *self,
                                       const char     *day,
                                       GError        **error);
gboolean    bb_book_save_job_line     (BbBook         *self,
                                       BbJobLine      *line,
                                       GError        **error);
gboolean    bb_book_set_job_state     (BbBook         *self,
                                       gint64          job,
                                       BbJobState      state,
                                       GError        **error);
gboolean    bb_book_undo_cancellation (BbBook         *self,
                                       gint64          job,
                                       GError        **error);

GArray     *bb_book_list_jobs         (BbBook         *self,
                                       BbJobState      state,
                                       guint           limit,
                                       GError        **error);
GArray     *bb_book_list_jobs_by_due  (BbBook         *self,
                                       guint           states,
                                       const char     *before,
                                       GError        **error);
GArray     *bb_book_list_job_lines    (BbBook         *self,
                                       gint64          job,
                                       GError        **error);

/* Runs: bb-book-runs.c */
gboolean    bb_book_start_run         (BbBook         *self,
                                       BbRun          *run,
                                       GError        **error);
gboolean    bb_book_save_run          (BbBook         *self,
                                       BbRun          *run,
                                       GError        **error);
gboolean    bb_book_finish_run        (BbBook         *self,
                                       BbRun          *run,
                                       GError        **error);
gboolean    bb_book_annotate_run      (BbBook         *self,
                                       gint64          run,
                                       const char     *text,
                                       GError        **error);

/* Lots: bb-book-lots.c */
gboolean    bb_book_use_lot           (BbBook         *self,
                                       gint64          lot,
                                       gint64          run,
                                       double          amount_g,
                                       GError        **error);
gboolean    bb_book_weigh_lot         (BbBook         *self,
                                       gint64          lot,
                                       double          scale_g,
                                       const char     *note,
                                       GError        **error);
gboolean    bb_book_waste_lot         (BbBook         *self,
                                       gint64          lot,
                                       double          amount_g,
                                       const char     *note,
                                       GError        **error);
gboolean    bb_book_open_lot          (BbBook         *self,
                                       gint64          lot,
                                       const char     *day,
                                       GError        **error);
gboolean    bb_book_dispose_of_lot    (BbBook         *self,
                                       const BbDisposal *disposal,
                                       GError        **error);
gboolean    bb_book_get_lot_left      (BbBook         *self,
                                       gint64          lot,
                                       double         *left_g,
                                       GError        **error);
GPtrArray  *bb_book_load_stock        (BbBook         *self,
                                       gint64          supply,
                                       GError        **error);

/* Machines, and what happened to a record: bb-book-events.c */
gboolean    bb_book_note_calibration  (BbBook         *self,
                                       gint64          equipment,
                                       const char     *day,
                                       GError        **error);
GPtrArray  *bb_book_load_events       (BbBook         *self,
                                       const BbTable  *table,
                                       gint64          id,
                                       GError        **error);

G_END_DECLS
