/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bb-book-jobs.h"
#include "bb-job-sheet.h"

G_BEGIN_DECLS

/**
 * BbJobPapers:
 * @job: the job
 * @lines: (element-type BbSheetLine): its lines in their order, those struck off left out, each with all that its sum
 *   needs
 * @sheet: what it takes, line by line and in all
 *
 * A job as it goes to the bench. Pages, printed sheets and the command line all take their numbers from here. It owns
 * all.
 */
typedef struct {
  BbJob *job;
  GArray *lines;
  BbJobSheet *sheet;

  /*< private >*/
  GHashTable *records;
  GPtrArray *machines;
} BbJobPapers;

BbJobPapers       *bb_job_papers_load        (BbBook             *book,
                                              gint64              job,
                                              const char         *day,
                                              GError            **error);
const BbSheetLine *bb_job_papers_propose_run (const BbJobPapers  *self,
                                              BbBook             *book,
                                              BbRun              *run,
                                              GError            **error);
void               bb_job_papers_free        (BbJobPapers        *self);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (BbJobPapers, bb_job_papers_free)

G_END_DECLS
