/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib/gi18n-lib.h>

#include "bb-calculator.h"

G_BEGIN_DECLS

/*
 * How evenly the nozzles of a sprayer give, from what each of them sprays into a cup in the
 * same time. Masses in g; indexes count from 0.
 *
 *     mean_g         = mean of all nozzles
 *     cv             = standard deviation (n − 1) / mean
 *     worst_index    = the nozzle farthest from the mean, the first of equals
 *     worst_fraction = its mass / mean − 1: negative for too little
 *     outside        = indexes of nozzles that differ from the mean by more than limit_fraction of it
 *
 * A nozzle at the limit is not outside, to a part in 10⁹. A blocked nozzle gives 0. Where all
 * give 0 there is nothing to compare: all but the mean is null and outside is empty.
 * Assumes that all nozzles sprayed for the same time at the same pressure.
 * Refused: fewer than two nozzles; each key out of its limits.
 * Source: definitions; the limit of 0.1 is common practice, no source.
 */

#define BB_NOZZLE_BALANCE_IN_FIELDS(F, T) \
  F (T, NUMBERS, masses_g, N_("Masses"), \
     .help = N_("What each nozzle gave in the same time, in the order of nozzles."), \
     .quantity = BB_QUANTITY_MASS, .limits = BB_BETWEEN (0, 1e6), \
     .count = BB_BETWEEN (2, 10000), .required = TRUE) \
  F (T, NUMBER, limit_fraction, N_("Limit"), \
     .help = N_("How far from the mean a nozzle may be, as a share of it."), \
     .quantity = BB_QUANTITY_FRACTION, .limits = BB_BETWEEN (0, 1), \
     .fallback = BB_DEFAULT (0.1))

BB_DECLARE_TABLE (BbNozzleBalanceIn, bb_nozzle_balance_in, BB_NOZZLE_BALANCE_IN_FIELDS);

#define BB_NOZZLE_BALANCE_OUT_FIELDS(F, T) \
  F (T, NUMBER, mean_g, N_("Mean"), .help = N_("Mean of all nozzles."), \
     .quantity = BB_QUANTITY_MASS) \
  F (T, NUMBER, cv, N_("Variation"), .help = N_("Standard deviation as a share of the mean."), \
     .quantity = BB_QUANTITY_FRACTION) \
  F (T, INTEGER, worst_index, N_("Worst nozzle"), \
     .help = N_("The nozzle farthest from the mean, counted from 0.")) \
  F (T, NUMBER, worst_fraction, N_("Its deviation"), \
     .help = N_("From the mean, as a share of it; negative for too little."), \
     .quantity = BB_QUANTITY_FRACTION) \
  F (T, NUMBERS, outside, N_("Outside"), \
     .help = N_("Nozzles beyond the limit, counted from 0."))

BB_DECLARE_TABLE (BbNozzleBalanceOut, bb_nozzle_balance_out, BB_NOZZLE_BALANCE_OUT_FIELDS);

BB_DECLARE_CALCULATOR (NozzleBalance, nozzle_balance);

G_END_DECLS
