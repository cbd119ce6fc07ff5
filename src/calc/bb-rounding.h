/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/*
 * Rounding to whole numbers that decimals survive: 100 · 0.07 is 7.000000000000001 in binary,
 * and a shop that adds seven in a hundred must not get eight. A value within a part in 10¹² of
 * a whole number is that number. Nothing but 0 itself is near 0.
 */

double bb_floor_steady    (double value);
double bb_ceil_steady     (double value);
double bb_round_for_scale (double value);

G_END_DECLS
