/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bb-calculator.h"

G_BEGIN_DECLS

/* Every calculator that can be asked by its name: those that compute with numbers, and those that read a picture. */

const BbCalculator * const *bb_calculators     (guint      *n_calculators);
const BbCalculator         *bb_calculator_find (const char *name);

G_END_DECLS
