/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib/gi18n-lib.h>

#include "bb-field.h"

G_BEGIN_DECLS

/**
 * BbLife:
 * @last_good: the last reading at which the specimen was good; 0 where there was none
 * @first_bad: the first reading at which it was bad; infinity where it never was
 *
 * What is known of one specimen's life, in cycles: it ended after @last_good and no later than @first_bad.
 */
typedef struct {
  double last_good;
  double first_bad;
} BbLife;

#define BB_SURVIVAL_STEP_FIELDS(F, T) \
  F (T, NUMBER, cycles, N_("Cycles"), .help = N_("When specimens failed.")) \
  F (T, INTEGER, at_risk, N_("At risk"), .help = N_("Specimens that were still in the test just before.")) \
  F (T, INTEGER, events, N_("Failed"), .help = N_("Specimens that failed here.")) \
  F (T, NUMBER, survival, N_("Survival"), .help = N_("The share that is still good after this."), \
     .quantity = BB_QUANTITY_FRACTION) \
  F (T, NUMBER, low, N_("Low"), .help = N_("Lower end of the 95 % interval."), .quantity = BB_QUANTITY_FRACTION) \
  F (T, NUMBER, high, N_("High"), .help = N_("Upper end of the 95 % interval."), .quantity = BB_QUANTITY_FRACTION)

BB_DECLARE_TABLE (BbSurvivalStep, bb_survival_step, BB_SURVIVAL_STEP_FIELDS);

GArray *bb_survival_estimate (const BbLife *lives,
                              guint         n_lives);

G_END_DECLS
