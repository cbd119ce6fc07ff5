/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>
#include <math.h>

G_BEGIN_DECLS

/*
 * A sum that does not lose the small in the large: compensated summation after Neumaier 1974. Six hundred steps of
 * 0.1 s make 60 s, so that a hold of just the required time counts as one.
 */

typedef struct {
  double sum;
  double lost;
} BbSum;

static inline void
bb_sum_add (BbSum *self,
            double value)
{
  double sum = self->sum + value;

  self->lost += fabs (self->sum) >= fabs (value) ? (self->sum - sum) + value : (value - sum) + self->sum;
  self->sum = sum;
}

static inline double
bb_sum_get (const BbSum *self)
{
  return self->sum + self->lost;
}

G_END_DECLS
