/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bb-survival.h"

G_BEGIN_DECLS

#define BB_WEIBULL_GAP_CHOICES(C) \
  C (BB_WEIBULL_NO_FAILURE, "no-failure", N_("No specimen has failed yet.")) \
  C (BB_WEIBULL_NEVER_GOOD, "never-good", N_("No specimen was read as good after a wash.")) \
  C (BB_WEIBULL_NO_SPREAD, "no-spread", \
     N_("All lives may be the same: every failure was seen after the last good reading of every specimen.")) \
  C (BB_WEIBULL_NO_TREND, "no-trend", N_("Specimens that were read later have not failed more often.")) \
  C (BB_WEIBULL_NO_FIT, "no-fit", N_("No Weibull distribution within reach fits these readings."))

/* Why readings carry no Weibull distribution. */
BB_DECLARE_CHOICES (BbWeibullGap, bb_weibull_gap, BB_WEIBULL_GAP_CHOICES);

int    bb_weibull_fit      (const BbLife *lives,
                            guint         n_lives,
                            double       *shape,
                            double       *scale);
double bb_weibull_survival (double        shape,
                            double        scale,
                            double        cycles);
double bb_weibull_median   (double        shape,
                            double        scale);

G_END_DECLS
