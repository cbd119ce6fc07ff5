/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bb-book.h"
#include "bb-repeat.h"

G_BEGIN_DECLS

/**
 * BbRepeatPart:
 * @line: a line of a job
 * @since: when it was last printed; when it was ordered, where it never was
 * @run: (nullable): its newest run
 * @revision: (nullable): what it was printed by
 * @standing: (nullable): where that stands now
 * @newer: (nullable): the revision of the same recipe that is proven now, where that is a later one
 * @blank: the garment, as it is described now
 * @colourway: the garment's colour
 * @findings: (element-type BbFinding): what has changed since
 *
 * One line of a job, for who wants to print it again. It owns all.
 */
typedef struct {
  BbJobLine *line;
  char *since;
  BbRun *run;
  BbRevision *revision;
  BbStanding *standing;
  BbRevision *newer;
  BbBlank *blank;
  BbColourway *colourway;
  GPtrArray *findings;
} BbRepeatPart;

void       bb_repeat_part_free (BbRepeatPart        *self);
GPtrArray *bb_repeat_load      (BbBook              *book,
                                gint64               job,
                                const char          *today,
                                const BbUnitContext *units,
                                GError             **error);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (BbRepeatPart, bb_repeat_part_free)

G_END_DECLS
