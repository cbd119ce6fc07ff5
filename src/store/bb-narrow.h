/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bb-job.h"

G_BEGIN_DECLS

/**
 * BbNarrow:
 *
 * What recipes and jobs are narrowed by, beside the words that they are found by. Of a recipe the day is that on which
 * the revision that counts now was made, of a job that on which it was ordered. Which garments are of a colour like
 * @srgb has to be computed: whoever searches tells the book their keys.
 */
#define BB_NARROW_FIELDS(F, T) \
  F (T, CHOICE, fibre, N_("Fibre"), .help = N_("Only on fabrics that have this fibre in them."), \
     .choices = &bb_fibre_choices) \
  F (T, NUMBER, mass_least_g_per_m2, N_("Fabric from"), .help = N_("Only on fabrics of at least this mass."), \
     .quantity = BB_QUANTITY_MASS_PER_AREA, .limits = BB_BETWEEN (0, 1000)) \
  F (T, NUMBER, mass_most_g_per_m2, N_("Fabric to"), .help = N_("Only on fabrics of at most this mass."), \
     .quantity = BB_QUANTITY_MASS_PER_AREA, .limits = BB_BETWEEN (0, 1000)) \
  F (T, TEXT, srgb, N_("Colour like"), \
     .help = N_("Only on garments of a colour like this one, written as #rrggbb: the likest first."), \
     .limits = BB_BETWEEN (7, 7), .colour = TRUE) \
  F (T, CHOICE, state, N_("Recipe is"), .help = N_("Only recipes whose current revision is in this state."), \
     .choices = &bb_state_choices) \
  F (T, CHOICE, job_state, N_("Job is"), .help = N_("Only jobs in this state."), .choices = &bb_job_state_choices) \
  F (T, DATE, since, N_("From"), .help = N_("Only from this day on.")) \
  F (T, DATE, until, N_("To"), .help = N_("Only up to this day."))

BB_DECLARE_TABLE (BbNarrow, bb_narrow, BB_NARROW_FIELDS);

/*
 * Marks stand among the words of a record. Each begins with a character that is for private use, so that no keyboard
 * types it and no text has it, and is one word to the search, which keeps such characters. A fabric's mark is its fibre
 * and the tens of its mass: where both are asked for, few have it, and many have either.
 */
#define BB_MARK "\xee\x80\x80"
#define BB_MARK_FIBRE BB_MARK "f"
#define BB_MARK_MASS BB_MARK "m"
#define BB_MARK_FABRIC BB_MARK "b"
#define BB_MARK_STATE BB_MARK "s"
#define BB_MARK_JOB_STATE BB_MARK "j"
#define BB_MARK_YEAR BB_MARK "y"
#define BB_MARK_MONTH BB_MARK "d"
#define BB_MARK_COLOURWAY BB_MARK "c"

gboolean bb_narrow_is_empty   (const BbNarrow *self);
void     bb_narrow_append     (const BbNarrow *self,
                               const BbTable  *table,
                               GString        *match);

G_END_DECLS
